/**
 * Bullion by clean-up: bars of melts shared out to the lots they came from, and divided by the ore the clean-up stands for. A yield is gross: bar
 * weight, gold with its silver and base. Where nothing was crushed, or nothing was melted yet, there is no yield, in words and never as nothing.
 */
import { massFromText } from '../mass.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { weighedFrom } from './weights.ts';

/** Why there is no figure. */
export type NoYield = 'nothing-crushed' | 'not-melted' | 'partly-melted';

export interface CleanUpYield {
  readonly cleanUp: string;
  /** Bars and prills that came of its lots, micrograms; null while none of its lots was melted. */
  readonly barUg: number | null;
  /** Whether the bars were shared out by estimate between several clean-ups. */
  readonly shared: boolean;
  /** Ore it stands for, in micrograms, where known. */
  readonly oreUg: number | null;
  readonly gPerTonne: number | null;
  readonly why: NoYield | null;
}

interface Portion {
  readonly cleanUp: string;
  readonly ug: number;
}

/** Weight of the lots of each clean-up in a charge. Lots made by cleaning or squeezing count for the clean-ups their inputs came from. */
function portionsOf(book: Book, charge: string): Portion[] {
  const rows = book.charges.all.get(charge)?.rows ?? [];
  return rows.flatMap((row) => (row.lot && row.charged ? trace(book, row.lot.id, row.charged.net.ug, new Set()) : []));
}

function trace(book: Book, lotId: string, ug: number, seen: Set<string>): Portion[] {
  const lot = book.lots.all.get(lotId);
  if (!lot || seen.has(lotId)) return [];
  seen.add(lotId);
  if (lot.parent !== null) return trace(book, lot.parent, ug, seen);
  const maker = book.current.byId.get(lot.madeBy);
  if (maker?.kind !== 'cleaning' && maker?.kind !== 'squeeze') return [{ cleanUp: lot.madeBy, ug }];
  const inputs = ((maker as Reading<'squeeze'>).body.lots ?? []).flatMap((id) => book.lots.all.get(id) ?? []);
  const whole = inputs.reduce((s, input) => s + input.net.ug, 0);
  return whole > 0
    ? inputs.flatMap((input) => trace(book, input.id, (ug * input.net.ug) / whole, seen))
    : [{ cleanUp: lot.madeBy, ug }];
}

/** Bar weight of every melt, shared out: by sponge between charges, by lot weight between clean-ups. */
function barsByCleanUp(book: Book): ReadonlyMap<string, { ug: number; shared: boolean }> {
  const found = new Map<string, { ug: number; shared: boolean }>();
  for (const reading of book.current.of('melt')) {
    const weigh = (weight: Parameters<typeof weighedFrom>[0], path: string) =>
      weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers).net.ug;
    const added = (reading.body.added ?? []).reduce((s, piece, i) => s + weigh(piece.weight, `added[${i}].weight`), 0);
    const bars =
      reading.body.bars.reduce((s, piece, i) => s + weigh(piece.weight, `bars[${i}].weight`), 0) +
      (reading.body.samples ?? []).reduce((s, piece, i) => s + weigh(piece.weight, `samples[${i}].weight`), 0);
    const sponges = reading.body.sponges.map(({ charge, weight }, i) => {
      const last = book.charges.all.get(charge)?.firings.findLast((f) => f.sponges.has(charge));
      return { charge, ug: weight ? weigh(weight, `sponges[${i}].weight`) : (last?.sponges.get(charge)?.net.ug ?? 0) };
    });
    const spongeUg = sponges.reduce((s, sponge) => s + sponge.ug, 0);
    // metal that was added came from elsewhere and is no yield of these clean-ups
    const own = bars - added;
    for (const sponge of sponges) {
      const portions = portionsOf(book, sponge.charge);
      const whole = portions.reduce((s, p) => s + p.ug, 0);
      const ofCharge = spongeUg > 0 ? (own * sponge.ug) / spongeUg : 0;
      const several = sponges.length > 1 || new Set(portions.map((p) => p.cleanUp)).size > 1;
      for (const portion of portions) {
        const before = found.get(portion.cleanUp) ?? { ug: 0, shared: false };
        found.set(portion.cleanUp, {
          ug: before.ug + (whole > 0 ? (ofCharge * portion.ug) / whole : 0),
          shared: before.shared || several,
        });
      }
    }
  }
  return found;
}

/** Yields of all clean-ups, in order. A clean-up that took only some of the plates or boxes states its own ore, or has no yield. */
export function cleanUpYields(book: Book): readonly CleanUpYield[] {
  const bars = barsByCleanUp(book);
  return book.current.of('clean-up').map((reading): CleanUpYield => {
    const got = bars.get(reading.id);
    const mass = reading.body.ore ? massFromText(reading.body.ore.mass, '') : null;
    const oreUg = mass?.ok ? mass.value.ug : null;
    const lots = [...book.lots.all.values()].filter((lot) => lot.madeBy === reading.id);
    const waiting = lots.some((lot) => lot.fate === 'in-safe');
    const why: NoYield | null =
      oreUg === null || oreUg === 0 ? 'nothing-crushed' : !got ? 'not-melted' : waiting ? 'partly-melted' : null;
    return {
      cleanUp: reading.id,
      barUg: got ? Math.round(got.ug) : null,
      shared: got?.shared ?? false,
      oreUg,
      gPerTonne: why === null && got && oreUg ? got.ug / 1e6 / (oreUg / 1e12) : null,
      why,
    };
  });
}
