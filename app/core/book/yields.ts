/**
 * Bullion by clean-up: what came of its lots, divided by the ore the clean-up stands for. Gross is bar weight, gold with its silver and base; fine is the gold
 * alone, by the assays of the bars, and is not there until every bar has one. Where nothing was crushed, or nothing was melted yet, there is no yield, in words and never as nothing.
 */
import type { Measured } from '../measured.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { addedOre, crushedFor, gathering, lateInCampaign, type Ore, oreOf, type Rate, rateOf } from './ore-through.ts';
import { yieldedByMaker } from './yielded.ts';

/** Why there is no figure. `of-the-campaign`: what it gave, and the ore it states, are those of the campaign it ends or stands in. */
export type NoYield = 'nothing-crushed' | 'of-the-campaign' | 'not-melted' | 'partly-melted';

export interface CleanUpYield {
  /** The clean-up, or the cleaning of dirty amalgam that stands for one. */
  readonly cleanUp: string;
  /** Bars and prills that came of its lots, micrograms; null while none of its lots was melted. */
  readonly barUg: number | null;
  /** Whether the bars were shared out by estimate between several clean-ups. */
  readonly shared: boolean;
  /** Ore it stands for, in micrograms, where known. */
  readonly oreUg: number | null;
  readonly gPerTonne: number | null;
  /** Fine gold of those bars, micrograms; null while a bar in it has no assay. */
  readonly fineUg: number | null;
  readonly fineGPerTonne: number | null;
  readonly why: NoYield | null;
  /** The same figures with one standard uncertainty each, of weighings, assays and ore; null where the figure is. */
  readonly gross: Measured | null;
  readonly fine: Measured | null;
  readonly ore: Ore | null;
  readonly grossRate: Rate | null;
  readonly fineRate: Rate | null;
  /** Some of the fine gold is as an out-turn states it. */
  readonly outTurn: boolean;
}

/** Ore of a clean-up as it states it; of a cleaning, which cannot, the crushings since the last one. */
function oreFor(book: Book, reading: Reading): Ore | null {
  if (reading.kind === 'clean-up') return oreOf((reading as Reading<'clean-up'>).body.ore, reading.id);
  return addedOre(crushedFor(book, reading).flatMap((r) => oreOf(r.body.ore, r.id) ?? []));
}

const known = new WeakMap<Book, readonly CleanUpYield[]>();

/** Yields of all clean-ups, in order. A clean-up that took only some of the plates or boxes states its own ore, or has no yield. */
export function cleanUpYields(book: Book): readonly CleanUpYield[] {
  const before = known.get(book);
  if (before) return before;
  const bars = yieldedByMaker(book);
  const waiting = new Set([...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe').map((lot) => lot.madeBy));
  const late = lateInCampaign(book);
  const made = gathering(book).map((reading): CleanUpYield => {
    const got = bars.get(reading.id);
    const ore = oreFor(book, reading);
    const why: NoYield | null =
      ore === null || ore.mass.ug === 0
        ? 'nothing-crushed'
        : late.has(reading.id)
          ? 'of-the-campaign'
          : !got
            ? 'not-melted'
            : waiting.has(reading.id)
              ? 'partly-melted'
              : null;
    const grossRate = why === null && got && ore ? rateOf(got.gross, got.grossUKnown, ore) : null;
    const fineRate = why === null && got?.fine && ore ? rateOf(got.fine, got.fineUKnown, ore) : null;
    return {
      cleanUp: reading.id,
      barUg: got ? got.grossUg : null,
      shared: got?.shared ?? false,
      oreUg: ore?.mass.ug ?? null,
      gPerTonne: grossRate?.gPerTonne ?? null,
      fineUg: got ? got.fineUg : null,
      fineGPerTonne: fineRate?.gPerTonne ?? null,
      why,
      gross: got?.gross ?? null,
      fine: got?.fine ?? null,
      ore,
      grossRate,
      fineRate,
      outTurn: got?.outTurn ?? false,
    };
  });
  known.set(book, made);
  return made;
}
