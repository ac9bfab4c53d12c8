/**
 * Bullion by clean-up: bars of melts shared out to the lots they came from, by sponge between charges and by weight at charging between lots, so that
 * the shares make the bars again; and divided by the ore the clean-up stands for. Gross is bar weight, gold with its silver and base; fine is the gold
 * alone, by the assays of the bars, and is not there until every bar has one. Where nothing was crushed, or nothing was melted yet, there is no yield, in words and never as nothing.
 */
import { massFromText } from '../mass.ts';
import { toDouble } from '../ratio.ts';
import { shareOut } from '../sharing.ts';
import { barsOf } from './bars.ts';
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
  /** Fine gold of those bars, micrograms; null while a bar in it has no assay. */
  readonly fineUg: number | null;
  readonly fineGPerTonne: number | null;
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

/** What came of the lots that an entry made: a clean-up, plate work. */
export interface Yielded {
  /** Bars and samples less metal added, micrograms. */
  readonly grossUg: number;
  /** Fine gold of the same; null while something in it was not assayed. */
  readonly fineUg: number | null;
  readonly shared: boolean;
}

/** Fine gold of a melt's bars and samples less that of the bars melted again; null while one of them is not known. Rounded once, to the microgram. */
function fineOfMelt(book: Book, reading: Reading<'melt'>, weigh: (weight: Weight, path: string) => number): number | null {
  const { all } = barsOf(book);
  const bars = reading.body.bars.map((piece) => all.get(`${reading.id}/${piece.key}`));
  const barUg = reading.body.bars.reduce((s, piece, i) => s + weigh(piece.weight, `bars[${i}].weight`), 0);
  const sampleUg = (reading.body.samples ?? []).reduce((s, piece, i) => s + weigh(piece.weight, `samples[${i}].weight`), 0);
  let fineG = 0;
  for (const bar of bars) {
    if (!bar?.fineGold) return null;
    fineG += toDouble(bar.fineGold.grams);
  }
  if (barUg <= 0) return null;
  // a sample of the same metal is as fine as its bars
  fineG *= (barUg + sampleUg) / barUg;
  for (const [i, piece] of (reading.body.added ?? []).entries()) {
    const gold = piece.bar === undefined ? null : (all.get(piece.bar)?.gold ?? null);
    if (!gold) return null;
    fineG -= (weigh(piece.weight, `added[${i}].weight`) / 1e6) * (toDouble(gold.permille) / 1000);
  }
  return Math.round(fineG * 1e6);
}

type Weight = Parameters<typeof weighedFrom>[0];

/** Bars of every melt, shared out to the entries that made the lots: by sponge between charges, by weight at charging between lots. */
export function yieldedByMaker(book: Book): ReadonlyMap<string, Yielded> {
  const found = new Map<string, Yielded>();
  for (const reading of book.current.of('melt')) {
    const weigh = (weight: Weight, path: string) =>
      weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers).net.ug;
    const pieces = (list: 'added' | 'bars' | 'samples') =>
      (reading.body[list] ?? []).reduce((s, piece, i) => s + weigh(piece.weight, `${list}[${i}].weight`), 0);
    const sponges = reading.body.sponges.map(({ charge, weight }, i) => {
      const last = book.charges.all.get(charge)?.firings.findLast((f) => f.sponges.has(charge));
      return { charge, ug: weight ? weigh(weight, `sponges[${i}].weight`) : (last?.sponges.get(charge)?.net.ug ?? 0) };
    });
    const sizes = sponges.map(({ ug }) => ug);
    // metal that was added came from elsewhere and is no yield of these clean-ups
    const gross = shareOut(pieces('bars') + pieces('samples') - pieces('added'), sizes);
    const fineUg = sponges.length === 0 ? null : fineOfMelt(book, reading, weigh);
    const fine = fineUg === null ? null : shareOut(fineUg, sizes);
    for (const [i, sponge] of sponges.entries()) {
      const portions = portionsOf(book, sponge.charge);
      const weights = portions.map((p) => p.ug);
      const grossParts = shareOut(gross[i] ?? 0, weights);
      const fineParts = fine && shareOut(fine[i] ?? 0, weights);
      const several = sponges.length > 1 || new Set(portions.map((p) => p.cleanUp)).size > 1;
      for (const [j, { cleanUp }] of portions.entries()) {
        const before = found.get(cleanUp) ?? { grossUg: 0, fineUg: 0, shared: false };
        const part = fineParts?.[j];
        found.set(cleanUp, {
          grossUg: before.grossUg + (grossParts[j] ?? 0),
          fineUg: before.fineUg === null || part === undefined ? null : before.fineUg + part,
          shared: before.shared || several,
        });
      }
    }
  }
  return found;
}

/** Grams per tonne of metal and ore, both in micrograms. */
export const perTonneOf = (metalUg: number, oreUg: number): number => metalUg / 1e6 / (oreUg / 1e12);

/** Yields of all clean-ups, in order. A clean-up that took only some of the plates or boxes states its own ore, or has no yield. */
export function cleanUpYields(book: Book): readonly CleanUpYield[] {
  const bars = yieldedByMaker(book);
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
      barUg: got ? got.grossUg : null,
      shared: got?.shared ?? false,
      oreUg,
      gPerTonne: why === null && got && oreUg ? perTonneOf(got.grossUg, oreUg) : null,
      fineUg: got ? got.fineUg : null,
      fineGPerTonne: why === null && got && got.fineUg !== null && oreUg ? perTonneOf(got.fineUg, oreUg) : null,
      why,
    };
  });
}
