/**
 * What an entry touches: the movements it made, those of others that rest on its readings, and through them every counted period and closing they stand
 * in; the runs, lots and yields it belongs to; the papers that tell of it. A correction, strike or note touches what the entry it is about touches.
 */
import type { Body } from '../kinds/index.ts';
import type { Book } from './book.ts';
import { type Closing, everyClosing } from './closings.ts';
import type { Lot } from './lots.ts';
import type { Movement } from './movements/gathering.ts';
import { inPeriod } from './period.ts';
import { type CountedPeriod, periodsOf } from './periods.ts';
import { placeParts } from './places.ts';
import type { Run } from './runs.ts';
import { entryOfSource } from './sources.ts';
import { cleanUpYields } from './yields.ts';

/** A paper that tells of it, and what that is about; `id` empty for a paper about the whole. */
export interface OnPaper {
  readonly paper:
    | 'mercury-account'
    | 'mercury-register'
    | 'run-sheet'
    | 'retort-tag'
    | 'melt-sheet'
    | 'transfer-sheet'
    | 'incident-sheet';
  readonly id: string;
}

export interface Touches {
  /** Movements that it wrote. */
  readonly own: readonly Movement[];
  /** Movements of other entries whose amount or uncertainty rests on it. */
  readonly resting: readonly Movement[];
  readonly periods: readonly CountedPeriod[];
  readonly closings: readonly Closing[];
  readonly runs: readonly Run[];
  readonly lots: readonly Lot[];
  /** Clean-ups whose yield it stands in. */
  readonly yields: readonly string[];
  readonly papers: readonly OnPaper[];
}

interface Index {
  readonly own: ReadonlyMap<string, readonly Movement[]>;
  readonly resting: ReadonlyMap<string, readonly Movement[]>;
  readonly periods: readonly CountedPeriod[];
  readonly closings: readonly Closing[];
  readonly yields: ReadonlySet<string>;
}

const indexes = new WeakMap<Book, Index>();

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

/** Worked out once for a book. */
function indexOf(book: Book): Index {
  const known = indexes.get(book);
  if (known) return known;
  const own = new Map<string, Movement[]>();
  const resting = new Map<string, Movement[]>();
  for (const m of book.movements.all) {
    put(own, m.entry, m);
    const from = new Set([...m.mercury.parts.keys()].flatMap((source) => entryOfSource(book, source)?.entry ?? []));
    from.delete(m.entry);
    for (const entry of from) put(resting, entry, m);
  }
  const yields = new Set(cleanUpYields(book).map((y) => y.cleanUp));
  const made: Index = { own, resting, periods: periodsOf(book), closings: everyClosing(book), yields };
  indexes.set(book, made);
  return made;
}

/** The entry that a correction, strike or note is about in the end; the entry itself for any other. */
export function aboutOf(book: Book, id: string): string {
  const seen = new Set<string>();
  let at = book.current.byId.get(id);
  while (at && !seen.has(at.id)) {
    seen.add(at.id);
    const next =
      at.kind === 'correction'
        ? (at.body as Body<'correction'>).corrects
        : at.kind === 'strike'
          ? (at.body as Body<'strike'>).strikes
          : at.kind === 'note'
            ? (at.body as Body<'note'>).about
            : undefined;
    if (next === undefined) return at.id;
    at = book.current.byId.get(next);
  }
  return id;
}

/** Lots that it made, or that went into it. */
const lotsAround = (book: Book, id: string): readonly Lot[] =>
  [...book.lots.all.values()].filter((lot) => lot.madeBy === id || lot.charge === id);

function runsAround(book: Book, id: string, lots: readonly Lot[]): readonly Run[] {
  const charges = new Set<string>(lots.flatMap((lot) => lot.charge ?? []));
  charges.add(id);
  for (const charge of book.charges.firings.get(id)?.charges ?? []) charges.add(charge);
  const reading = book.current.byId.get(id);
  if (reading?.kind === 'melt') for (const { charge } of (reading.body as Body<'melt'>).sponges) charges.add(charge);
  if (reading?.kind === 'unmake') charges.add((reading.body as Body<'unmake'>).charge);
  return book.runs.filter((run) => run.charges.some((c) => charges.has(c.id)));
}

/** The clean-ups in the end of a lot: through splitting, cleaning and squeezing. */
function cleanUpsOf(book: Book, lot: Lot, seen = new Set<string>()): readonly string[] {
  if (seen.has(lot.id)) return [];
  seen.add(lot.id);
  const parent = lot.parent === null ? undefined : book.lots.all.get(lot.parent);
  if (parent) return cleanUpsOf(book, parent, seen);
  const into = [...book.lots.all.values()].filter((other) => other.fate === 'worked' && other.charge === lot.madeBy);
  return [lot.madeBy, ...into.flatMap((other) => cleanUpsOf(book, other, seen))];
}

function papersOf(book: Book, id: string, moved: readonly Movement[], runs: readonly Run[]): readonly OnPaper[] {
  const vessels = new Set(
    moved.flatMap((m) => [m.from, m.to].flatMap((place) => (placeParts(place).kind === 'vessel' ? [placeParts(place).of] : []))),
  );
  const kind = book.current.byId.get(id)?.kind;
  return [
    ...(moved.length > 0 ? [{ paper: 'mercury-account' as const, id: '' }] : []),
    ...[...vessels].filter((v) => book.registers.vessel.has(v)).map((v) => ({ paper: 'mercury-register' as const, id: v })),
    ...runs.map((run) => ({ paper: 'run-sheet' as const, id: run.id })),
    ...(kind === 'charge' && book.charges.all.has(id) ? [{ paper: 'retort-tag' as const, id }] : []),
    ...(kind === 'melt' ? [{ paper: 'melt-sheet' as const, id }] : []),
    ...(kind === 'transfer' ? [{ paper: 'transfer-sheet' as const, id }] : []),
    ...(kind === 'incident' || kind === 'spill' ? [{ paper: 'incident-sheet' as const, id }] : []),
  ];
}

/** Everything an entry touches. A struck entry moves nothing and is told with what it still belongs to. */
export function touchesOf(book: Book, entry: string): Touches {
  const id = aboutOf(book, entry);
  const index = indexOf(book);
  const own = index.own.get(id) ?? [];
  const resting = index.resting.get(id) ?? [];
  const moved = [...own, ...resting];
  const stands = ({ period }: CountedPeriod | Closing): boolean => moved.some((m) => inPeriod(m.at, period));
  const lots = lotsAround(book, id);
  const runs = runsAround(book, id, lots);
  const inRuns = runs.flatMap((run) => run.charges.flatMap((c) => c.rows.flatMap((row) => row.lot ?? [])));
  const yields = new Set(
    [id, ...[...lots, ...inRuns].flatMap((lot) => cleanUpsOf(book, lot))].filter((c) => index.yields.has(c)),
  );
  const counts = (c: CountedPeriod): boolean => c.closing.id === id || c.opening?.id === id;
  return {
    own,
    resting,
    periods: index.periods.filter((p) => stands(p) || counts(p)),
    closings: index.closings.filter((c) => stands(c) || c.id === id || c.body.closing === id || c.body.opening === id),
    runs,
    lots,
    yields: [...yields],
    papers: papersOf(book, id, own, runs),
  };
}

/** The entries that a counted period or a closing rests on: whose movements stand in it, or on whose readings these rest. */
export function entriesIn(book: Book, { period }: Pick<CountedPeriod, 'period'>): ReadonlySet<string> {
  const { own, resting } = indexOf(book);
  const inside = (movements: readonly Movement[]): boolean => movements.some((m) => inPeriod(m.at, period));
  return new Set([...own, ...resting].flatMap(([entry, movements]) => (inside(movements) ? [entry] : [])));
}
