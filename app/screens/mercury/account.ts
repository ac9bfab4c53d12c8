/**
 * The account of a period as rows that open to their working. Every figure is the core's (`accountOf`); the workings name the movements it is the sum
 * of, chosen by the same rule.
 */
import { type Account, detectableFactor, levelOf, perTonne, wasThere, zOf } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { type Movement, stocksAt } from '../../core/book/movements/gathering.ts';
import { inPeriod, isBefore } from '../../core/book/period.ts';
import { foundPlace, isStock, lossPlace, outside, placeParts } from '../../core/book/places.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { added, type Measured, scaled, total, uOf } from '../../core/measured.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { accountReasons, accountWords } from '../../words/account.ts';
import { decimalText, massText, placesFor, withU } from '../../words/figures.ts';
import { placeText } from '../../words/places.ts';
import { mercuryRoom as words } from '../../words/screens-mercury.ts';
import { figureSources } from '../../words/trace.ts';
import { movementsHref } from './address.ts';
import { type FigureRow, figureOf, figureText, isNothing } from './figures.ts';
import { linesOf } from './stocks.ts';

/** Places told one by one in a working; the others stand in one sum. */
const placesTold = 40;

/** Stock of a moment place by place, each leading to its movements. */
function stockLines(book: Book, stocks: ReadonlyMap<string, Measured>): WorkingLine[] {
  const all = [...stocks].filter(([place, mercury]) => isStock(place) && !isNothing(mercury));
  const rest = all.slice(placesTold).map(([, mercury]) => mercury);
  const told = all.slice(0, placesTold).map(
    ([place, mercury]): WorkingLine => ({
      sort: 'reading',
      text: placeText(book, place),
      figure: figureText(mercury),
      href: movementsHref(place),
    }),
  );
  return rest.length === 0
    ? told
    : [...told, { sort: 'formula', text: words.otherPlaces(rest.length), figure: figureText(total(rest)) }];
}

const result = (text: string, mercury: Measured): WorkingLine => ({ sort: 'result', text, figure: figureText(mercury) });
const none = accountWords.notComputable;
const same = (m: Movement): Measured => m.mercury;

/** The lines of the account, opening to closing, and what is not accounted for. */
export function accountRows(book: Book, account: Account): readonly FigureRow[] {
  const { period } = account;
  const own = book.movements.all.filter((m) => inPeriod(m.at, period));
  const before = book.movements.all.filter((m) => isBefore(m.at, period));
  const here = wasThere(book);
  const spill = lossPlace('spill');
  const some = (chosen: (m: Movement) => boolean) => own.filter(chosen);
  const row = (
    key: 'opening' | 'receipts' | 'invoiced' | 'found' | 'removals' | 'released' | 'closing',
    movements: readonly Movement[],
    lines: () => readonly WorkingLine[],
  ): FigureRow => ({
    key,
    label: accountWords.rows[key],
    ...figureOf(account[key]),
    note: movements.length > 0 ? words.lines(movements.length) : '',
    negative: Math.round(account[key].ug) < 0,
    lines,
  });
  const came = (m: Movement) => m.basis === 'invoice-against-weighed' || !here.has(m.entry);
  const already = some((m) => m.from === outside && !came(m));
  const receipts = some((m) => m.from === outside && came(m));
  const opened = some((m) => m.basis === 'invoice-against-weighed');
  const found = some((m) => m.from === foundPlace);
  const removals = some((m) => m.to === outside);
  const isGone = (place: string) => place !== spill && placeParts(place).kind === 'loss';
  // told outward, whichever way it was written: a count that finds less takes from the loss a negative amount
  const gone = some((m) => isGone(m.to) !== isGone(m.from)).map((m) =>
    isGone(m.to) ? m : { ...m, from: m.to, to: m.from, mercury: scaled(m.mercury, -1) },
  );
  const released = some((m) => m.to === spill || m.from === spill);
  return [
    row('opening', already, () => [
      ...stockLines(book, stocksAt(before, null)),
      ...linesOf(book, already, same).slice(0, -1),
      result(accountWords.rows.opening, account.opening),
    ]),
    row('receipts', receipts, () => linesOf(book, receipts, same, { sum: accountWords.rows.receipts })),
    ...(opened.length === 0
      ? []
      : [
          row('invoiced', opened, () =>
            linesOf(book, opened, (m) => (m.from === outside ? m.mercury : scaled(m.mercury, -1)), {
              sum: accountWords.rows.invoiced,
            }),
          ),
        ]),
    row('found', found, () => linesOf(book, found, same, { sum: accountWords.rows.found })),
    row('removals', removals, () => linesOf(book, removals, same, { sum: accountWords.rows.removals })),
    row('released', released, () =>
      linesOf(book, released, (m) => (m.to === spill ? m.mercury : scaled(m.mercury, -1)), { sum: accountWords.rows.released }),
    ),
    row('closing', [], () => [
      ...stockLines(book, stocksAt(book.movements.all, period.to)),
      result(accountWords.rows.closing, account.closing),
    ]),
    {
      key: 'unaccounted',
      label: accountWords.rows.unaccounted,
      ...figureOf(account.unaccounted),
      note: '',
      negative: Math.round(account.unaccounted.ug) < 0,
      total: true,
      lines: () => [
        ...(['opening', 'receipts', 'found', 'removals', 'released', 'closing'] as const).map(
          (key): WorkingLine => ({ sort: 'reading', text: accountWords.rows[key], figure: figureText(account[key]) }),
        ),
        { sort: 'formula', text: accountWords.sum },
        { sort: 'note', text: words.lostTo },
        ...linesOf(book, gone, same).slice(0, -1),
        {
          sort: 'formula',
          text: words.uFormula,
          figure: `u = ${withU(decimalFromNumber(uOf(account.unaccounted) / 1e6), null)}`,
        },
        { sort: 'source', text: figureSources.sum },
        result(accountWords.rows.unaccounted, account.unaccounted),
      ],
    },
  ];
}

/** The smallest loss the account would show, or why it cannot be told. */
export function detectableText({ unaccounted }: Pick<Account, 'unaccounted'>): string {
  const u = uOf(unaccounted);
  return u > 0
    ? massText(decimalFromNumber((detectableFactor * u) / 1e6), placesFor((2 * u) / 1e6))
    : none(accountReasons.noUncertainty);
}

export interface Verdict {
  readonly level: 'none' | 'warn' | 'act' | null;
  /** More is there than the book brought in. */
  readonly gain: boolean;
  readonly rows: readonly { readonly label: string; readonly figure: string; readonly lines: readonly WorkingLine[] }[];
}

/** What the account says: |z| with its level, the detectable loss, per tonne. What cannot be computed is said in words. */
export function verdictOf(account: Account): Verdict {
  const { unaccounted, ore } = account;
  const z = zOf(unaccounted);
  const per = perTonne(unaccounted, ore);
  const lost = added(unaccounted, account.released);
  const uLine: WorkingLine = { sort: 'reading', text: accountWords.rows.unaccounted, figure: figureText(unaccounted) };
  const zFigure = z === null ? none(accountReasons.noUncertainty) : words.zText(decimalText(decimalFromNumber(Math.abs(z)), 2));
  return {
    level: z === null ? null : levelOf(z),
    gain: Math.round(unaccounted.ug) < 0,
    rows: [
      {
        label: words.z,
        figure: zFigure,
        lines: [uLine, { sort: 'formula', text: words.zFormula, figure: zFigure }, { sort: 'source', text: figureSources.z }],
      },
      {
        label: words.detectable,
        figure: detectableText(account),
        lines: [uLine, { sort: 'formula', text: words.detectableFormula }, { sort: 'source', text: figureSources.detectable }],
      },
      {
        label: words.lost,
        figure: figureText(lost),
        lines: [
          uLine,
          { sort: 'reading', text: accountWords.rows.released, figure: figureText(account.released) },
          result(words.lost, lost),
        ],
      },
      {
        label: words.perTonne,
        figure: per ? withU(decimalFromNumber(per.g), per.uG) : none(accountReasons.noOre),
        lines:
          per && ore
            ? [
                uLine,
                { sort: 'reading', text: words.ore, figure: `${decimalText(decimalFromNumber(ore.ug / 1e12), 2)}\u00a0t` },
                { sort: 'formula', text: figureSources.perTonne },
                { sort: 'source', text: figureSources.perTonneSource },
              ]
            : [{ sort: 'note', text: accountReasons.noOre }],
      },
    ],
  };
}
