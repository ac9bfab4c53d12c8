/**
 * What each source of amalgam gave over time: the fineness of its bars, what its charges left as sponge, what its melts shrank by, each value held against
 * the same source's earlier ones. Judges no run: that is done by the bands the site set. Sources: practice.md 2.6, 2.9, 2.10; methods.md 5.4.
 */
import { less, type Measured, total, uOf } from '../measured.ts';
import { type Held, heldAgainstEarlier } from '../own-history.ts';
import { toDouble } from '../ratio.ts';
import { compareMoments } from '../time.ts';
import { barsOf } from './bars.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { runAt, sourceOf } from './runs.ts';
import { type Weighed, weighedFrom } from './weights.ts';

export type HistoryKind = 'fineness' | 'sponge' | 'shrinkage';

export interface HistoryPoint extends Held {
  /** The bar, the charge or the melt. */
  readonly id: string;
  readonly at: string;
  /** Parts per thousand of gold; or a share of what went in. */
  readonly value: number;
  /** One standard uncertainty in the same unit; null where a part of it is not known. */
  readonly u: number | null;
}

/** All values of one source, in order. `retort` for sponge only: another retort is another history. */
export interface SourceHistory {
  readonly source: string;
  readonly retort: string | null;
  readonly points: readonly HistoryPoint[];
}

interface Found {
  readonly source: string;
  readonly retort: string | null;
  readonly id: string;
  readonly at: string;
  readonly value: number;
  readonly u: number | null;
}

/** One standard uncertainty of part / whole: what both share cancels as it must. */
function uOfShare(part: Measured, whole: Measured): number {
  const ratio = part.ug / whole.ug;
  const all = new Map<string, number>();
  for (const [source, u] of part.parts) all.set(source, u / whole.ug);
  for (const [source, u] of whole.parts) all.set(source, (all.get(source) ?? 0) - (ratio * u) / whole.ug);
  return uOf({ ug: 0, parts: all });
}

/** The one source of all charges; "several" where they differ. */
function sourceOfCharges(book: Book, ids: readonly string[]): string {
  const sources = new Set(
    ids.map((id) => {
      const charge = book.charges.all.get(id);
      return charge ? sourceOf(charge) : 'unknown';
    }),
  );
  return sources.size === 1 ? ([...sources][0] ?? 'unknown') : 'several';
}

/** Bars that were assayed, by what their melt was made of. A bar of earlier bars alone has no source of its own and is left out, as is an indication by density. */
function finenesses(book: Book): readonly Found[] {
  return [...barsOf(book).all.values()].flatMap(({ id, melt, from, gold }) => {
    if (!gold || gold.indicative || gold.class === 'by-parts' || from.charges.length === 0) return [];
    const mixed = from.bars.length > 0 || from.other.length > 0;
    return {
      source: mixed ? 'several' : sourceOfCharges(book, from.charges),
      retort: null,
      id,
      at: melt.happened,
      value: toDouble(gold.permille),
      u: gold.uKnown ? uOf({ ug: 0, parts: gold.parts }) : null,
    };
  });
}

/** Sponge over charge of amalgam runs that wait for nothing; charges caught together leave no figure of their own. */
function spongeRatios(book: Book): readonly Found[] {
  return book.runs.flatMap((run) => {
    const [charge] = run.charges;
    const sponge = run.last?.sponge;
    if (run.together || charge?.holds !== 'amalgam' || run.awaits.length > 0 || !sponge || !(run.charge.net.ug > 0)) return [];
    return {
      source: sourceOf(charge),
      retort: run.retort,
      id: run.id,
      at: runAt(run),
      value: sponge.net.ug / run.charge.net.ug,
      u: sponge.uKnown && run.charge.uKnown ? uOfShare(sponge.net, run.charge.net) : null,
    };
  });
}

/** Shrinkage over what went in, before prills. Null where a sponge has no weight, or nothing weighed went in. */
function shrinkageOf(book: Book, melt: Reading<'melt'>): { value: number; u: number | null } | null {
  const { body } = melt;
  const weigh = (weight: Parameters<typeof weighedFrom>[0], path: string): Weighed =>
    weighedFrom(weight, { entry: melt.id, path, at: melt.happened }, book.registers);
  const pieces = (list: 'added' | 'bars' | 'samples') =>
    (body[list] ?? []).map((piece, i) => weigh(piece.weight, `${list}[${i}].weight`));
  const sponges = body.sponges.map(({ charge, weight }, i) =>
    weight
      ? weigh(weight, `sponges[${i}].weight`)
      : book.charges.all
          .get(charge)
          ?.firings.findLast((f) => f.sponges.has(charge))
          ?.sponges.get(charge),
  );
  if (sponges.some((s) => s === undefined)) return null;
  const [into, out] = [
    [...sponges.filter((s) => s !== undefined), ...pieces('added')],
    [...pieces('bars'), ...pieces('samples')],
  ];
  const [whole, left] = [total(into.map((w) => w.net)), total(out.map((w) => w.net))];
  if (!(whole.ug > 0) || out.length === 0) return null;
  const uKnown = [...into, ...out].every((w) => w.uKnown);
  // in − out over in: the share that is left has the same error with the other sign
  return { value: less(whole, left).ug / whole.ug, u: uKnown ? uOfShare(left, whole) : null };
}

function shrinkages(book: Book): readonly Found[] {
  return book.current.of('melt').flatMap((melt) => {
    const got = melt.body.sponges.length > 0 ? shrinkageOf(book, melt) : null;
    if (!got) return [];
    const charges = melt.body.sponges.map(({ charge }) => charge);
    const source = (melt.body.added ?? []).length > 0 ? 'several' : sourceOfCharges(book, charges);
    return { source, retort: null, id: melt.id, at: melt.happened, ...got };
  });
}

const finders = { fineness: finenesses, sponge: spongeRatios, shrinkage: shrinkages } as const;

/** Every source that gave a value, the one with most values first. */
export function bullionHistory(book: Book, kind: HistoryKind): readonly SourceHistory[] {
  const found = [...finders[kind](book)].sort((a, b) => compareMoments(a.at, b.at));
  const groups = new Map<string, Found[]>();
  for (const one of found) {
    const key = `${one.source} ${one.retort ?? ''}`;
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return [...groups.values()]
    .sort((a, b) => b.length - a.length)
    .map((group) => {
      const held = heldAgainstEarlier(group.map((one) => one.value));
      const [first] = group;
      return {
        source: first?.source ?? 'unknown',
        retort: first?.retort ?? null,
        points: group.map(({ id, at, value, u }, i) => ({ id, at, value, u, usual: null, outside: false, ...held[i] })),
      };
    });
}
