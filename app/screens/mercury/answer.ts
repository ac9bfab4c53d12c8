/**
 * The answer of an account in one look: five figures that add up, and the two questions, both always answered: is there a loss (against nothing), and is
 * it more than this site's usual rate. What cannot be computed says why. Usual is never called acceptable. Method: methods.md 1.1 to 1.3.
 */
import { type Account, detectableFactor, levelOf, zOf } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { type Excess, excessOf } from '../../core/book/usual.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { type Measured, total, uOf } from '../../core/measured.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { accountWords, noUsualText } from '../../words/account.ts';
import { dayText } from '../../words/dates.ts';
import { decimalText } from '../../words/figures.ts';
import { mercuryRoom as words } from '../../words/screens-mercury.ts';
import { detectableText } from './account.ts';
import { daysOf, periodHref } from './address.ts';
import { figureText } from './figures.ts';

export type Level = 'none' | 'warn' | 'act';

export interface SumPart {
  readonly key: keyof typeof words.sum;
  readonly sign: '' | '+' | '−' | '=';
  readonly figure: string;
}

/** Opening, what came, what went, closing, and what is left over: the same figures as the lines of the account, taken together. */
export function sumOf({ opening, receipts, found, removals, released, closing, unaccounted }: Account): readonly SumPart[] {
  return [
    { key: 'there', sign: '', figure: figureText(opening) },
    { key: 'came', sign: '+', figure: figureText(total([receipts, found])) },
    { key: 'went', sign: '−', figure: figureText(total([removals, released])) },
    { key: 'left', sign: '−', figure: figureText(closing) },
    { key: 'unaccounted', sign: '=', figure: figureText(unaccounted) },
  ];
}

export interface UsualRow {
  readonly label: string;
  readonly figure: string;
  readonly lines: readonly WorkingLine[];
}

export interface UsualAnswer {
  /** Null where it cannot be told; `text` says why. */
  readonly level: Level | null;
  readonly text: string;
  readonly rows: readonly UsualRow[];
  readonly excess: Excess | null;
}

const reading = (text: string, value: Measured): WorkingLine => ({ sort: 'reading', text, figure: figureText(value) });

function rowsOf({ unaccounted }: Account, { usual, amount, expected, excess }: Excess): readonly UsualRow[] {
  const rate = `${figureText(usual.rate)} ${words.usualPer[usual.basis]}`;
  const z = zOf(excess);
  const periods = usual.periods.map(
    (p): WorkingLine => ({
      sort: 'source',
      text: words.counted(p.period.from === null ? null : dayText(p.period.from), dayText(p.closing.happened)),
      href: periodHref(daysOf(p.period)),
    }),
  );
  return [
    { label: words.usualRate, figure: rate, lines: [{ sort: 'note', text: words.usualFrom }, ...periods] },
    {
      label: words.expected,
      figure: figureText(expected),
      lines: [
        { sort: 'reading', text: words.usualRate, figure: rate },
        { sort: 'reading', text: words.amount[usual.basis], figure: decimalText(decimalFromNumber(amount), 2) },
        { sort: 'formula', text: words.expectedFormula },
      ],
    },
    {
      label: words.beyond,
      figure: figureText(excess),
      lines: [
        reading(accountWords.rows.unaccounted, unaccounted),
        reading(words.expected, expected),
        { sort: 'formula', text: words.beyondFormula },
      ],
    },
    ...(z === null
      ? []
      : [{ label: words.zUsual, figure: words.zText(decimalText(decimalFromNumber(Math.abs(z)), 2)), lines: [] }]),
  ];
}

/** The second question. */
export function usualAnswer(book: Book, account: Account): UsualAnswer {
  const got = excessOf(book, account);
  if ('why' in got) return { level: null, text: accountWords.noExcess(noUsualText(got)), rows: [], excess: null };
  const z = zOf(got.excess);
  return {
    level: z === null ? null : levelOf(z),
    text: z === null ? words.noLevel : accountWords.excess[levelOf(z)],
    rows: rowsOf(account, got),
    excess: got,
  };
}

/** What the drawing of the answer shows, in micrograms: value and expanded uncertainty. */
export interface Scale {
  readonly foundUg: number;
  readonly foundUUg: number;
  readonly detectableUg: number;
  readonly usual: { readonly ug: number; readonly UUg: number } | null;
  readonly says: string;
}

/** The drawing's figures; null where nothing is known to be uncertain, for then there is nothing to hold against one another. */
export function scaleOf(account: Account, excess: Excess | null): Scale | null {
  const { unaccounted } = account;
  const u = uOf(unaccounted);
  if (!(u > 0)) return null;
  const detectable = detectableFactor * u;
  return {
    foundUg: unaccounted.ug,
    foundUUg: 2 * u,
    detectableUg: detectable,
    usual: excess ? { ug: excess.expected.ug, UUg: 2 * uOf(excess.expected) } : null,
    says: words.scale.says(figureText(unaccounted), detectableText(account), excess ? figureText(excess.expected) : null),
  };
}
