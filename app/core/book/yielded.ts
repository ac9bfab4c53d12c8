/**
 * What came of the lots that an entry made: bars of melts shared out by sponge between charges and by weight at charging between lots, so that the shares
 * make the bars again; and the fine gold of an out-turn, where amalgam or sponge was refined elsewhere or a bar was never assayed here. Prills and slag stay
 * stock: their gold counts when it is in a bar, once. Sources: methods.md 5.1; practice.md 2.10.
 */
import { added, exactly, less, type Measured, scaled, total } from '../measured.ts';
import { shareOut } from '../sharing.ts';
import { barsOf } from './bars.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import type { FineMetal } from './fineness.ts';
import { fineMetal } from './fineness.ts';
import { type Portion, portionsOf, trace } from './lot-origins.ts';
import { outTurnYields } from './out-turn-yields.ts';
import { type Weighed, weighedFrom } from './weights.ts';

/** What came of the lots that an entry made: a clean-up, a cleaning, plate work. */
export interface Yielded {
  /** Bars and samples less metal added, micrograms. */
  readonly grossUg: number;
  /** Fine gold of the same; null while something in it was not assayed. */
  readonly fineUg: number | null;
  /** Shared out with others by estimate; how wrong the estimate is stands in no uncertainty. */
  readonly shared: boolean;
  /** The same two with their contributions: weighings and assays. */
  readonly gross: Measured;
  readonly fine: Measured | null;
  readonly grossUKnown: boolean;
  readonly fineUKnown: boolean;
  /** Some of its fine gold is as an out-turn states it. */
  readonly outTurn: boolean;
}

/** Metal with what is known of it, to be shared out. */
export interface Metal {
  readonly gross: Measured;
  readonly grossUKnown: boolean;
  readonly fine: Measured | null;
  readonly fineUKnown: boolean;
  readonly outTurn: boolean;
}

/** A whole shared out: whole micrograms that make it again, each with its share of the contributions. */
export function shared(value: Measured, weights: readonly number[]): Measured[] {
  const parts = shareOut(value.ug, weights);
  const sum = weights.reduce((s, w) => s + Math.max(0, Math.round(w)), 0);
  return parts.map((ug, i) => ({
    ug,
    parts: scaled(value, sum > 0 ? Math.max(0, Math.round(weights[i] ?? 0)) / sum : 0).parts,
  }));
}

type Weight = Parameters<typeof weighedFrom>[0];
type Weigh = (weight: Weight, path: string) => Weighed;

/** Fine gold of a melt's bars and samples less that of the bars melted again; null while one of them is not known. Rounded once, to the microgram. */
function fineOfMelt(book: Book, reading: Reading<'melt'>, weigh: Weigh, byOutTurn: ReadonlyMap<string, FineMetal>) {
  const { all } = barsOf(book);
  const fines: FineMetal[] = [];
  let outTurn = false;
  for (const piece of reading.body.bars) {
    const id = `${reading.id}/${piece.key}`;
    const own = all.get(id)?.fineGold ?? null;
    const fine = own ?? byOutTurn.get(id) ?? null;
    if (!fine) return null;
    outTurn ||= own === null;
    fines.push(fine);
  }
  const bars = reading.body.bars.reduce((s, piece, i) => s + weigh(piece.weight, `bars[${i}].weight`).net.ug, 0);
  const samples = (reading.body.samples ?? []).reduce((s, piece, i) => s + weigh(piece.weight, `samples[${i}].weight`).net.ug, 0);
  if (bars <= 0) return null;
  // a sample of the same metal is as fine as its bars
  let fine = scaled(total(fines.map((f) => f.net)), (bars + samples) / bars);
  let uKnown = fines.every((f) => f.uKnown);
  for (const [i, piece] of (reading.body.added ?? []).entries()) {
    const gold = piece.bar === undefined ? null : (all.get(piece.bar)?.gold ?? null);
    if (!gold) return null;
    const weighed = weigh(piece.weight, `added[${i}].weight`);
    const put = fineMetal(weighed.grams, weighed.net, weighed.uKnown, gold);
    fine = less(fine, put.net);
    uKnown &&= put.uKnown;
  }
  return { fine: { ug: Math.round(fine.ug), parts: fine.parts }, uKnown, outTurn };
}

const worked = new WeakMap<Book, ReadonlyMap<string, Yielded>>();

/** Metal of every melt and out-turn, shared out to the entries that made the lots. */
export function yieldedByMaker(book: Book): ReadonlyMap<string, Yielded> {
  const before = worked.get(book);
  if (before) return before;
  const found = new Map<string, Yielded>();
  const put = (metal: Metal, portions: readonly Portion[], several: boolean): void => {
    const weights = portions.map((p) => p.ug);
    const gross = shared(metal.gross, weights);
    const fine = metal.fine && shared(metal.fine, weights);
    for (const [j, { maker }] of portions.entries()) {
      const was = found.get(maker);
      const part = gross[j] ?? exactly(0);
      const finePart = fine?.[j] ?? null;
      const sum = was ? added(was.gross, part) : part;
      const fineSum =
        was && (was.fine === null || finePart === null) ? null : was?.fine && finePart ? added(was.fine, finePart) : finePart;
      found.set(maker, {
        grossUg: sum.ug,
        fineUg: fineSum?.ug ?? null,
        shared: (was?.shared ?? false) || several,
        gross: sum,
        fine: fineSum,
        grossUKnown: (was?.grossUKnown ?? true) && metal.grossUKnown,
        fineUKnown: (was?.fineUKnown ?? true) && metal.fineUKnown,
        outTurn: (was?.outTurn ?? false) || metal.outTurn,
      });
    }
  };
  const outTurns = outTurnYields(book);
  for (const reading of book.current.of('melt')) {
    const weigh: Weigh = (weight, path) => weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers);
    const pieces = (list: 'added' | 'bars' | 'samples') =>
      (reading.body[list] ?? []).map((piece, i) => weigh(piece.weight, `${list}[${i}].weight`));
    const sponges = reading.body.sponges.map(({ charge, weight }, i) => {
      const last = book.charges.all.get(charge)?.firings.findLast((f) => f.sponges.has(charge));
      return { charge, ug: weight ? weigh(weight, `sponges[${i}].weight`).net.ug : (last?.sponges.get(charge)?.net.ug ?? 0) };
    });
    if (sponges.length === 0) continue;
    const out = [...pieces('bars'), ...pieces('samples')];
    // metal that was added came from elsewhere and is no yield of these clean-ups
    const gross = less(total(out.map((w) => w.net)), total(pieces('added').map((w) => w.net)));
    const fine = fineOfMelt(book, reading, weigh, outTurns.bars);
    const sizes = sponges.map(({ ug }) => ug);
    const grossParts = shared(gross, sizes);
    const fineParts = fine && shared(fine.fine, sizes);
    for (const [i, sponge] of sponges.entries()) {
      const portions = portionsOf(book, sponge.charge);
      put(
        {
          gross: grossParts[i] ?? exactly(0),
          grossUKnown: [...out, ...pieces('added')].every((w) => w.uKnown),
          fine: fineParts?.[i] ?? null,
          fineUKnown: fine?.uKnown ?? false,
          outTurn: fine?.outTurn ?? false,
        },
        portions,
        sponges.length > 1 || new Set(portions.map((p) => p.maker)).size > 1,
      );
    }
  }
  for (const { metal, from } of outTurns.refined) {
    const portions = from.flatMap(({ lot, charge, ug }) =>
      lot !== null
        ? trace(book, lot, ug)
        : portionsOf(book, charge ?? '').map((p, _, all) => ({ ...p, ug: (ug * p.ug) / all.reduce((s, q) => s + q.ug, 0) })),
    );
    put(metal, portions, new Set(portions.map((p) => p.maker)).size > 1);
  }
  worked.set(book, found);
  return found;
}
