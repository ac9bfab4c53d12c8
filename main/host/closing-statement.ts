/**
 * The statement of a closed period: everything its account says, as canonical JSON that can be read and hashed without this program. Amounts are exact
 * decimal grams. It is drawn up from the entries the end marks cover and is never written anew.
 */
import { type Account, detectableFactor, levelOf, perTonne, stockKind, zOf } from '../../app/core/book/account.ts';
import type { Book } from '../../app/core/book/book.ts';
import { type Carried, type Ends, everyClosing, type Figures, onClosedBasisUg } from '../../app/core/book/closings.ts';
import { standingAt } from '../../app/core/book/site.ts';
import { excessOf } from '../../app/core/book/usual.ts';
import { decimalFromNumber, rounded, toText } from '../../app/core/decimal.ts';
import type { Draft } from '../../app/core/entry.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { gramsText } from '../../app/core/mass.ts';
import { uOf } from '../../app/core/measured.ts';
import { accountReasons, accountWords } from '../../app/words/account.ts';
import { closingReasons } from '../../app/words/closing.ts';
import { entryLine } from '../../app/words/daybook-line.ts';
import { entryName, writerOf } from '../../app/words/daybook-naming.ts';
import { flagText } from '../../app/words/flags.ts';
import { placeNames } from '../../app/words/places.ts';
import { canonicalText } from './canonical.ts';

/** The form of the statement. A file with a higher number comes from a newer program. */
export const statementFormat = 1;

/** The closing as far as it is known before its files are made. */
export type ClosingDraft = Omit<Draft, 'body' | 'kind'> & { readonly body: Omit<Body<'closing'>, 'statement' | 'paper'> };

const grams = (ug: number): string => gramsText(Math.round(ug));
/** Six decimals, half-even: figures that are quotients. */
const ratio = (value: number): string => toText(rounded(decimalFromNumber(value), 6));
const not = (why: string) => ({ not_computable: why });

function standingOf(book: Book, to: string): string {
  const told = standingAt(book.current, to) ?? book.current.of('standing')[0];
  return told ? entryLine(book, told) : accountWords.noStanding;
}

function reservationsOf(book: Book, account: Account) {
  const wanted = new Set(account.reservations.map((r) => `${r.entry} ${r.code}`));
  const flags = [...book.flags.values()].flat().filter((f) => wanted.has(`${f.entry} ${f.code}`));
  return flags.map((f) => ({ entry: f.entry, named: entryName(book, f.entry), code: f.code, text: flagText(f) }));
}

function carriedOf(book: Book, carried: readonly Carried[]) {
  const closings = new Map(everyClosing(book).map((c) => [c.id, c]));
  return carried.map(({ of, ug, steps }) => ({
    of,
    to: closings.get(of)?.to ?? null,
    version: closings.get(of)?.body.version ?? null,
    g: grams(ug),
    entries: steps.map(({ entry, changes }) => ({
      entry: entry.id,
      named: entryName(book, entry.id),
      // what was put down there and has been found different: the other way round than the account changed
      g: grams(-(changes.unaccounted_g ?? 0)),
    })),
  }));
}

/** What it lost beyond the site's usual rate, or why that is not computable. */
function beyondUsual(book: Book, account: Account) {
  const got = excessOf(book, account);
  if ('why' in got) return not(closingReasons[got.why]);
  const { usual, expected, excess } = got;
  return {
    per: usual.basis,
    rate_g: grams(usual.rate.ug),
    rate_u_g: grams(uOf(usual.rate)),
    from_periods: usual.periods.map((p) => ({ opening: p.opening?.id ?? null, closing: p.closing.id })),
    expected_g: grams(expected.ug),
    excess_g: grams(excess.ug),
    excess_u_g: grams(uOf(excess)),
  };
}

/** What a period's account says beyond its lines. */
function judged({ unaccounted, ore }: Account) {
  const z = zOf(unaccounted);
  const rate = perTonne(unaccounted, ore);
  return {
    z: z === null ? not(accountReasons.noUncertainty) : ratio(z),
    detectable_g: grams(detectableFactor * uOf(unaccounted)),
    loss_level: z === null ? not(accountReasons.noUncertainty) : levelOf(z),
    ore_g: ore === null ? not(accountReasons.noOre) : grams(ore.ug),
    per_tonne_g: rate === null ? not(accountReasons.noOre) : ratio(rate.g),
    per_tonne_u_g: rate === null ? not(accountReasons.noOre) : ratio(rate.uG),
  };
}

/** The canonical text of the statement. `book` holds the entries that the end marks cover and no others. */
export function statementText(
  book: Book,
  draft: ClosingDraft,
  drawn: {
    readonly account: Account;
    readonly figures: Figures;
    readonly carried: readonly Carried[];
    readonly ends: Ends;
    readonly daybook: { readonly id: string; readonly name: string };
    readonly program: string;
  },
): string {
  const { account, figures, carried, ends, daybook, program } = drawn;
  const { opening, closing, version, replaces, note, falseAlarm } = draft.body;
  const at = (id: string) => ({ stock_take: id, at: book.current.byId.get(id)?.happened ?? null });
  const before = replaces === undefined ? undefined : book.current.byId.get(replaces);
  const names = placeNames(
    book,
    account.stocks.map((line) => line.place),
  );
  return canonicalText({
    statement: 'closing of a period of the mercury account',
    format: statementFormat,
    program,
    daybook,
    closing: draft.id,
    version,
    ...(replaces === undefined
      ? {}
      : { replaces, replaces_statement: (before?.body as Body<'closing'> | undefined)?.statement ?? null }),
    closed: draft.happened,
    by: draft.by,
    by_name: writerOf(book, draft.by, draft.happened),
    ...(note === undefined ? {} : { note }),
    ...(falseAlarm === undefined ? {} : { false_alarm: ratio(falseAlarm) }),
    period: { opening: opening === undefined ? null : at(opening), closing: at(closing) },
    end_marks: ends.map(({ desk, entries, endMark }) => ({ desk, entries, end_mark: endMark })),
    standing: standingOf(book, account.period.to ?? draft.happened),
    reservations: reservationsOf(book, account),
    figures,
    ...judged(account),
    usual: beyondUsual(book, account),
    stocks: account.stocks.map((line) => ({
      place: line.place,
      named: names.get(line.place) ?? line.place,
      kind: stockKind(line),
      g: grams(line.mercury.ug),
      u_g: grams(uOf(line.mercury)),
      basis: line.basis,
    })),
    paths: account.paths.map((p) => ({
      path: p.path,
      posted_g: grams(p.posted.ug),
      low_g: grams(p.lowUg),
      high_g: grams(p.highUg),
    })),
    adjustments: carriedOf(book, carried),
    unaccounted_as_closed_before_g: grams(onClosedBasisUg(Math.round(account.unaccounted.ug), carried)),
  });
}
