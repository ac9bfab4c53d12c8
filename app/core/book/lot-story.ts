/**
 * The story of one lot: what it was made from, each time it was weighed, what became of it, and the entries that tell of it. It gathers what the book has
 * worked out already and reckons nothing of its own.
 */
import type { Decimal } from '../decimal.ts';
import type { Measured } from '../measured.ts';
import type { Book } from './book.ts';
import { inOrder, type Reading } from './current.ts';
import { type Portion, trace } from './lot-origins.ts';
import type { Lot } from './lots.ts';

/** The lot on a scale: when it was made, or when it was charged whole. */
export interface LotWeighing {
  readonly when: 'made' | 'charged';
  readonly entry: string;
  readonly at: string;
  readonly grams: Decimal;
  readonly net: Measured;
  readonly uKnown: boolean;
  /** Less the weight by its label; null for that weight itself. */
  readonly drift: Measured | null;
}

export interface LotStory {
  readonly lot: Lot;
  /** The lot it was split from. */
  readonly parent: Lot | null;
  /** Lots that went into the cleaning or squeezing that made it. */
  readonly inputs: readonly Lot[];
  /** What it was split into. */
  readonly parts: readonly Lot[];
  /** Lots that came out of the cleaning or squeezing it went into. */
  readonly outputs: readonly Lot[];
  /** The entries its metal came from in the end, by weight, greatest first; together its label weight. */
  readonly origins: readonly Portion[];
  readonly weighings: readonly LotWeighing[];
  /** The run it went into: the id of the charge; null where it went into none. */
  readonly charge: string | null;
  /** Entries that made it, name it, or correct one of these, in the order they happened. Struck ones stand among them. */
  readonly entries: readonly string[];
}

const names = (value: unknown, id: string): boolean => {
  if (typeof value === 'string') return value === id;
  if (Array.isArray(value)) return value.some((item) => names(item, id));
  return value !== null && typeof value === 'object' && Object.values(value).some((item) => names(item, id));
};

function weighingsOf(book: Book, lot: Lot): LotWeighing[] {
  const { grams, net, uKnown } = lot;
  const made: LotWeighing = { when: 'made', entry: lot.madeBy, at: lot.made, grams, net, uKnown, drift: null };
  const again = [...book.lots.rows].flatMap(([charge, rows]): LotWeighing[] =>
    rows.flatMap((row) => {
      const at = book.current.byId.get(charge)?.happened;
      if (row.take !== 'whole' || row.lot?.id !== lot.id || !row.charged || at === undefined) return [];
      return [{ when: 'charged', entry: charge, at, ...row.charged, drift: row.drift }];
    }),
  );
  return [made, ...again];
}

function entriesOf(book: Book, lot: Lot): string[] {
  const own = [...book.current.byId.values()].filter(
    (reading) => reading.id === lot.madeBy || names(reading.body, lot.id) || names(reading.entry.body, lot.id),
  );
  const all = new Map(own.flatMap(({ entry, corrections }) => [entry, ...corrections].map((one) => [one.id, one])));
  return [...all.values()].sort(inOrder).map(({ id }) => id);
}

const worksLots = (reading: Reading | undefined): reading is Reading<'cleaning'> | Reading<'squeeze'> =>
  reading?.kind === 'cleaning' || reading?.kind === 'squeeze';

/** The story of a lot; null where no lot of the book has this id. */
export function lotStory(book: Book, id: string): LotStory | null {
  const lot = book.lots.all.get(id);
  if (!lot) return null;
  const all = [...book.lots.all.values()];
  const maker = book.current.byId.get(lot.madeBy);
  const fed = worksLots(maker) ? (maker.body.lots ?? []) : [];
  return {
    lot,
    parent: lot.parent === null ? null : (book.lots.all.get(lot.parent) ?? null),
    inputs: lot.parent === null ? fed.flatMap((one) => book.lots.all.get(one) ?? []) : [],
    parts: all.filter(({ parent }) => parent === id),
    outputs: lot.fate === 'worked' ? all.filter(({ madeBy, parent }) => madeBy === lot.charge && parent === null) : [],
    origins: trace(book, id, lot.net.ug).sort((a, b) => b.ug - a.ug),
    weighings: weighingsOf(book, lot),
    charge: lot.fate === 'charged' ? lot.charge : null,
    entries: entriesOf(book, lot),
  };
}
