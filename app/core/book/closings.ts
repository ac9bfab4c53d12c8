/**
 * Closed periods: which closings stand, what each of them rests on, and what later entries have made of its figures. A closed figure is never
 * recomputed into something else: the difference is told beside it, with the entries that made it, and is carried as a line by the next period, so that
 * the sums over both agree on either basis (cases.md 1). Method: methods.md 8.1, 10.18; telescoping sums of 1.4.
 */
import { decimalFromText, rounded, shifted } from '../decimal.ts';
import type { Entry } from '../entry.ts';
import type { Body } from '../kinds/index.ts';
import { gramsText } from '../mass.ts';
import { uOf } from '../measured.ts';
import { compareMoments } from '../time.ts';
import { type Account, accountOf, type Period } from './account.ts';
import { type Book, readBook } from './book.ts';
import { byWriting, type Reading } from './current.ts';

/** The lines of a closed account, grams as exact decimal text. */
export type Figures = Body<'closing'>['figures'];
export type FigureName = keyof Figures;
/** How far the journals had come. */
export type Ends = Body<'closing'>['ends'];

/** A closing with the period it closes, as its two stock-takes stand in this book. */
export interface Closing {
  readonly id: string;
  readonly reading: Reading<'closing'>;
  readonly body: Body<'closing'>;
  readonly period: Period;
  /** The moment of the stock-take it ends with. */
  readonly to: string;
}

/** What one later entry changed in a closed period: micrograms by line; lines that stayed are left out. */
export interface Step {
  readonly entry: Entry;
  readonly changes: Readonly<Partial<Record<FigureName, number>>>;
}

/** What later entries have made of a closed period. */
export interface Adjustment {
  readonly closing: Closing;
  /** Not accounted for as closed, less the same on today's knowledge: what the period after it takes over. Micrograms. */
  readonly ug: number;
  /** The account of the period on today's knowledge. */
  readonly today: Account;
  /** Later entries that changed a line, in the order they were written; together they make up the whole difference. */
  readonly steps: readonly Step[];
}

/** A line that a period prints for one closed before it. */
export interface Carried {
  /** The closing it comes from. */
  readonly of: string;
  /** Micrograms; above nothing where less was lost in the closed period than was put down there. */
  readonly ug: number;
  readonly steps: readonly Step[];
}

/** Micrograms of a figure's text. */
export const ugOf = (text: string): number => {
  const grams = decimalFromText(text);
  if (!grams) throw new Error('a closed figure is decimal text');
  return Number(rounded(shifted(grams, 6), 0).digits);
};

/** The lines of an account as a closing holds them: whole micrograms, as grams. */
export function figuresOf(account: Account): Figures {
  const text = (ug: number): string => gramsText(Math.round(ug));
  return {
    opening_g: text(account.opening.ug),
    receipts_g: text(account.receipts.ug),
    found_g: text(account.found.ug),
    removals_g: text(account.removals.ug),
    released_g: text(account.released.ug),
    closing_g: text(account.closing.ug),
    unaccounted_g: text(account.unaccounted.ug),
    u_g: text(uOf(account.unaccounted)),
  };
}

/** The period after one stock-take, up to and with another; null where one of them is not on this book. */
export function periodBetween(book: Book, { opening, closing }: Pick<Body<'closing'>, 'opening' | 'closing'>): Period | null {
  const to = book.current.byId.get(closing)?.happened;
  const from = opening === undefined ? null : book.current.byId.get(opening)?.happened;
  if (to === undefined || from === undefined) return null;
  return { from, to, ...(from === null ? {} : { after: true }) };
}

function closingFrom(book: Book, reading: Reading<'closing'>): Closing | null {
  const period = periodBetween(book, reading.body);
  return period === null || period.to === null ? null : { id: reading.id, reading, body: reading.body, period, to: period.to };
}

/** Every closing that was not struck, all versions, by the end of its period and then by version. */
export const everyClosing = (book: Book): readonly Closing[] =>
  book.current
    .of('closing')
    .flatMap((reading) => closingFrom(book, reading) ?? [])
    .sort((a, b) => compareMoments(a.to, b.to) || a.body.version - b.body.version || byWriting(a.reading.entry, b.reading.entry));

/** The latest version of every closing, by the end of its period. */
export function closingsOf(book: Book): readonly Closing[] {
  const all = everyClosing(book);
  const replaced = new Set(all.map((c) => c.body.replaces));
  return all.filter((c) => !replaced.has(c.id));
}

/** Whether two periods have a moment in common; neighbours share only the stock-take between them. */
export const overlap = (a: Period, b: Period): boolean =>
  (a.to === null || b.from === null || compareMoments(a.to, b.from) > 0) &&
  (b.to === null || a.from === null || compareMoments(b.to, a.from) > 0);

/** Whether the chain of that desk holds this end mark where it was. */
export const holdsMark = (entries: readonly Entry[], end: Ends[number]): boolean =>
  entries.some((e) => e.desk === end.desk && e.n === end.entries && e.hash === end.endMark);

/** The entries that the end marks cover, and those after them in the order they were written. */
export function splitAt(
  entries: readonly Entry[],
  ends: Ends,
): { readonly covered: readonly Entry[]; readonly later: readonly Entry[] } {
  const upTo = new Map<string, number>();
  for (const { desk, entries: n } of ends) upTo.set(desk, Math.max(n, upTo.get(desk) ?? 0));
  const isCovered = (e: Entry): boolean => e.n <= (upTo.get(e.desk) ?? 0);
  return { covered: entries.filter(isCovered), later: entries.filter((e) => !isCovered(e)).sort(byWriting) };
}

/** The book as the end marks cover it. */
export const frozenBook = (entries: readonly Entry[], ends: Ends): Book => readBook(splitAt(entries, ends).covered);

/** The account of a closing's period in some book; null where its stock-takes are not there. */
export function accountFor(book: Book, body: Pick<Body<'closing'>, 'opening' | 'closing'>): Account | null {
  const period = periodBetween(book, body);
  return period === null ? null : accountOf(book, period);
}

const names = [
  'opening_g',
  'receipts_g',
  'found_g',
  'removals_g',
  'released_g',
  'closing_g',
  'unaccounted_g',
  'u_g',
] as const satisfies readonly FigureName[];

/** By line, what b says more than a. Empty where they say the same. */
export function changesBetween(a: Figures, b: Figures): Partial<Record<FigureName, number>> {
  const changes: Partial<Record<FigureName, number>> = {};
  for (const name of names) if (a[name] !== b[name]) changes[name] = ugOf(b[name]) - ugOf(a[name]);
  return changes;
}

const same = (a: Figures, b: Figures): boolean => names.every((name) => a[name] === b[name]);

/**
 * The later entries that changed a line of the period, each with what it changed. Halves are looked at only where figures differ at their ends, so that a
 * long book costs a few readings, not one for every entry.
 */
function stepsBetween(book: Book, ends: Ends, body: Body<'closing'>): readonly Step[] {
  const { covered, later } = splitAt(book.entries, ends);
  const at = (n: number): Figures | null => {
    const account = accountFor(n === later.length ? book : readBook([...covered, ...later.slice(0, n)]), body);
    return account ? figuresOf(account) : null;
  };
  const found: Step[] = [];
  const look = (from: number, before: Figures, to: number, after: Figures): void => {
    if (same(before, after)) return;
    const entry = later[from];
    if (to - from === 1 && entry) {
      found.push({ entry, changes: changesBetween(before, after) });
      return;
    }
    const middle = Math.floor((from + to) / 2);
    const between = at(middle);
    if (!between) return;
    look(from, before, middle, between);
    look(middle, between, to, after);
  };
  const [first, last] = [at(0), at(later.length)];
  if (first && last) look(0, first, later.length, last);
  return found;
}

/** What later entries have made of a closed period. */
export function adjustmentOf(book: Book, closing: Closing): Adjustment {
  const today = accountOf(book, closing.period);
  const figures = figuresOf(today);
  const steps = same(figures, closing.body.figures) ? [] : stepsBetween(book, closing.body.ends, closing.body);
  return {
    closing,
    ug: ugOf(closing.body.figures.unaccounted_g) - ugOf(figures.unaccounted_g),
    today,
    steps,
  };
}

/** Whether later entries changed any line of it. */
export const isTouched = ({ closing, today }: Adjustment): boolean => !same(figuresOf(today), closing.body.figures);

const samePeriod = (a: Period, b: Period): boolean =>
  a.to !== null &&
  b.to !== null &&
  compareMoments(a.to, b.to) === 0 &&
  (a.from === null || b.from === null ? a.from === b.from : compareMoments(a.from, b.from) === 0);

/** The further one of the marks of each desk. */
const furthest = (all: readonly Ends[]): Ends => {
  const marks = new Map<string, Ends[number]>();
  for (const end of all.flat()) if (end.entries > (marks.get(end.desk)?.entries ?? 0)) marks.set(end.desk, end);
  return [...marks.values()];
};

/**
 * The lines a period prints for those closed before it, so that no difference is lost or counted twice: a period that is closed itself, what it was
 * closed with; the one that begins where the last closing before it ended, whatever no closing has taken over yet; any other, none.
 * @param instead the closing whose next version is being drawn up: what it took over is open again
 */
export function adjustmentsInto(book: Book, period: Period, instead?: string): readonly Carried[] {
  const standing = closingsOf(book);
  const own = standing.find((c) => c.id !== instead && samePeriod(c.period, period));
  if (own) return (own.body.adjustments ?? []).map(({ of, g }) => ({ of, ug: ugOf(g), steps: [] }));
  const { from } = period;
  if (from === null || from.length <= 10) return [];
  const before = standing.filter((c) => c.id !== instead && compareMoments(c.to, from) <= 0);
  const last = before.at(-1);
  if (!last || compareMoments(last.to, from) !== 0) return [];
  return before.flatMap((closing): Carried[] => {
    const carriers = before.flatMap((c) =>
      (c.body.adjustments ?? []).flatMap(({ of, g }) => (of === closing.id ? [{ ends: c.body.ends, ug: ugOf(g) }] : [])),
    );
    const adjustment = adjustmentOf(book, closing);
    const ug = adjustment.ug - carriers.reduce((sum, c) => sum + c.ug, 0);
    if (ug === 0) return [];
    const steps =
      carriers.length === 0
        ? adjustment.steps
        : stepsBetween(book, furthest([closing.body.ends, ...carriers.map((c) => c.ends)]), closing.body);
    return [{ of: closing.id, ug, steps: steps.filter((s) => s.changes.unaccounted_g !== undefined) }];
  });
}

/** What a period shows as not accounted for on the basis of the closings before it: without what it took over from them. Micrograms. */
export const onClosedBasisUg = (unaccountedUg: number, carried: readonly Pick<Carried, 'ug'>[]): number =>
  unaccountedUg - carried.reduce((sum, c) => sum + c.ug, 0);
