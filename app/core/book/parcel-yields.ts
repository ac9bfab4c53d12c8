/**
 * Yield by parcel. A clean-up that names a parcel is that parcel's alone. Any other stands for the crushings since the last of its type, and its gold is
 * shared among their parcels by mass of ore: allocated, and marked so where there is more than one. The parts make the whole again. A general clean-up, scale
 * and pan gold and other plate work belong to the campaign and to no parcel, unless the clean-up names one. Source: methods.md 6, WE-33; practice.md 1 (19).
 */
import { added, exactly, type Measured } from '../measured.ts';
import { mean, type Ratio, ratioFromText, timesRatio } from '../ratio.ts';
import { type Recoveries, recoveries } from '../recovery.ts';
import { readAssays } from './assays.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { addedOre, crushedFor, gathering, type Ore, ofCampaign, oreOf, type Rate, rateOf } from './ore-through.ts';
import { latest } from './registers.ts';
import { shared, type Yielded, yieldedByMaker } from './yielded.ts';

/** `not-assayed` is no reason here: the gross yield stands without it. */
export type NoParcelYield = 'nothing-crushed' | 'not-melted' | 'partly-melted';

/** What a parcel has of one clean-up or cleaning. */
export interface ParcelSource {
  readonly cleanUp: string;
  readonly gross: Measured;
  readonly fine: Measured | null;
  /** Shared with other parcels by mass of ore. */
  readonly allocated: boolean;
}

export interface ParcelYield {
  readonly parcel: string;
  readonly label: string;
  readonly owner: string | null;
  readonly ore: Ore | null;
  /** As the register states it, or as its crushings add up. */
  readonly oreFrom: 'register' | 'crushings' | null;
  readonly sources: readonly ParcelSource[];
  readonly allocated: boolean;
  /** Some of the fine gold is as an out-turn states it. */
  readonly outTurn: boolean;
  readonly gross: Measured | null;
  readonly grossUKnown: boolean;
  readonly fine: Measured | null;
  readonly fineUKnown: boolean;
  readonly grossRate: Rate | null;
  readonly fineRate: Rate | null;
  readonly why: NoParcelYield | null;
  /** By the book's own assays of its ore and tailings, as plain means; `null` members where one is missing. */
  readonly head: Ratio | null;
  readonly tails: Ratio | null;
  readonly recoveries: Recoveries | null;
}

const thousand = ratioFromText('1000');

/** Grams of gold per tonne by the assays of a subject, as their plain mean. */
function gradeOf(book: Book, parcel: string, subject: 'ore' | 'tailings' | 'concentrate'): Ratio | null {
  const found = [...readAssays(book.current).values()].filter(
    ({ reading }) => reading.body.subject === subject && reading.body.parcel === parcel,
  );
  const middle = mean(found.flatMap(({ gold }) => (gold ? [gold.permille] : [])));
  return middle && timesRatio(middle, thousand);
}

/** Ore of each parcel behind a clean-up, by parcel; ore of no parcel under the empty name. */
function parcelsBehind(book: Book, reading: Reading): ReadonlyMap<string, number> {
  const named = reading.kind === 'clean-up' ? (reading as Reading<'clean-up'>).body.parcel : undefined;
  if (named !== undefined) return new Map([[named, 1]]);
  if (ofCampaign(reading)) return new Map();
  const found = new Map<string, number>();
  for (const r of crushedFor(book, reading)) {
    const ore = oreOf(r.body.ore, r.id);
    const parcel = r.body.parcel ?? '';
    if (ore) found.set(parcel, (found.get(parcel) ?? 0) + ore.mass.ug);
  }
  return found;
}

interface Gathered {
  readonly sources: ParcelSource[];
  readonly from: Yielded[];
  waiting: boolean;
}

/** Every parcel of the register, in its order. */
export function parcelYields(book: Book): readonly ParcelYield[] {
  const yielded = yieldedByMaker(book);
  const inSafe = new Set([...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe').map((lot) => lot.madeBy));
  const gathered = new Map<string, Gathered>();
  for (const reading of gathering(book)) {
    const behind = [...parcelsBehind(book, reading)];
    const weights = behind.map(([, ug]) => ug);
    const got = yielded.get(reading.id);
    const gross = got ? shared(got.gross, weights) : [];
    const fine = got?.fine ? shared(got.fine, weights) : [];
    for (const [i, [parcel]] of behind.entries()) {
      const one = gathered.get(parcel) ?? { sources: [], from: [], waiting: false };
      gathered.set(parcel, one);
      one.waiting ||= inSafe.has(reading.id);
      if (!got) continue;
      one.from.push(got);
      one.sources.push({
        cleanUp: reading.id,
        gross: gross[i] ?? exactly(0),
        fine: fine[i] ?? null,
        allocated: behind.length > 1,
      });
    }
  }
  return [...book.registers.parcel.values()].map((thing): ParcelYield => {
    const { body, entry } = latest(thing);
    const { sources, from, waiting } = gathered.get(thing.id) ?? { sources: [], from: [], waiting: false };
    const crushed = addedOre(
      book.current
        .of('crushing')
        .filter((r) => r.body.parcel === thing.id && r.body.feed !== 'water-only')
        .flatMap((r) => oreOf(r.body.ore, r.id) ?? []),
    );
    const stated = oreOf(body.ore, entry);
    const ore = stated ?? crushed;
    const any = sources.length > 0;
    const gross = any ? sources.reduce((s, x) => added(s, x.gross), exactly(0)) : null;
    const fine = any ? sources.reduce<Measured | null>((s, x) => (s && x.fine ? added(s, x.fine) : null), exactly(0)) : null;
    const grossUKnown = from.every((y) => y.grossUKnown);
    const fineUKnown = from.every((y) => y.fineUKnown);
    // ore that came in and was never put through has given nothing yet
    const why: NoParcelYield | null =
      !ore || (!crushed && !any) ? 'nothing-crushed' : !any ? 'not-melted' : waiting ? 'partly-melted' : null;
    const [head, tails] = [
      gradeOf(book, thing.id, 'ore') ?? gradeOf(book, thing.id, 'concentrate'),
      gradeOf(book, thing.id, 'tailings'),
    ];
    const micro = (m: Measured): Ratio => ({ n: BigInt(Math.round(m.ug)), d: 1_000_000n });
    return {
      parcel: thing.id,
      label: body.label,
      owner: body.owner ?? null,
      ore,
      oreFrom: stated ? 'register' : crushed ? 'crushings' : null,
      sources,
      allocated: sources.some((s) => s.allocated),
      outTurn: from.some((y) => y.outTurn),
      gross,
      grossUKnown,
      fine,
      fineUKnown,
      grossRate: why === null && gross && ore ? rateOf(gross, grossUKnown, ore) : null,
      fineRate: why === null && fine && ore ? rateOf(fine, fineUKnown, ore) : null,
      why,
      head,
      tails,
      recoveries:
        why === null && fine && ore
          ? recoveries({ ore: micro(ore.mass), product: micro(fine), head: head ?? undefined, tails: tails ?? undefined })
          : null,
    };
  });
}
