/**
 * Charges with their firings. A re-fire belongs to its charge: the last sponge counts, mercury and water add up. Charges caught together share one
 * figure of mercury and are one group; no figure per charge is invented for them.
 */
import { type Decimal, minus, plus, zero } from '../decimal.ts';
import type { ChargeKind } from '../kinds/charge.ts';
import { massFromText } from '../mass.ts';
import { added, less, type Measured, nothing, total } from '../measured.ts';
import { quotient } from '../ratio.ts';
import { clockOf, compareMoments } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';
import type { ChargedLot, Lots } from './lots.ts';
import { type Registered, type Registers, stateAt } from './registers.ts';
import { type Weighed, weighedFrom } from './weights.ts';

/** A sum of weights. */
export interface Sum {
  readonly grams: Decimal;
  readonly net: Measured;
  readonly uKnown: boolean;
}

export const emptySum: Sum = { grams: zero, net: nothing, uKnown: true };
/** a + b. Nothing added leaves the other as it is: most sums of a book are of one weight. */
export function joined(a: Sum, b: Sum): Sum {
  if (a === emptySum) return b;
  if (b === emptySum) return a;
  return { grams: plus(a.grams, b.grams), net: added(a.net, b.net), uKnown: a.uKnown && b.uKnown };
}

export interface Charge {
  readonly id: string;
  readonly reading: Reading<'charge'>;
  readonly retort: string;
  readonly holds: ChargeKind;
  readonly rows: readonly ChargedLot[];
  readonly others: readonly { readonly key: string; readonly label: string; readonly what: string; readonly weighed: Weighed }[];
  /** As weighed at charging. */
  readonly total: Sum;
  /** Label weights of the lots that were there, and of those that were not found. */
  readonly labels: Sum;
  readonly missing: Sum;
  /** Weight at charging less label weight, over whole lots that were there. */
  readonly drift: Measured;
  /** Its firings, in order: the second is a re-fire. */
  readonly firings: readonly Firing[];
}

/** One firing, worked out. */
export interface Firing {
  readonly id: string;
  readonly reading: Reading<'firing'>;
  /** Charges it heated; empty while its charge is not written up. */
  readonly charges: readonly string[];
  /** Sponge by charge id, where weighed. */
  readonly sponges: ReadonlyMap<string, Weighed>;
  readonly mercury: Weighed | null;
  readonly water: Weighed | null;
}

export interface Charges {
  readonly all: ReadonlyMap<string, Charge>;
  readonly firings: ReadonlyMap<string, Firing>;
  /** Firings that name no charge yet. */
  readonly unclaimed: readonly Firing[];
  readonly flags: readonly Flag[];
}

/** The moment a firing counts from: when the retort was opened, or when it was written to have happened. */
export const firedAt = (firing: Firing): string => firing.reading.body.opened ?? firing.reading.happened;

/** Above this a retort was opened hot: headspace vapour grows steeply (safety.md 5.4 and W12; a judgement, to be measured and not timed). */
export const hotC = 40;

function readFiring(reading: Reading<'firing'>, current: Current, registers: Registers, flags: Flag[]): Firing {
  const { heats, mercury, water, opening, opened, checks } = reading.body;
  const at = reading.happened;
  const weigh = (weight: Weighed['as'], path: string): Weighed => {
    const got = weighedFrom(weight, { entry: reading.id, path, at }, registers);
    flags.push(...got.flags);
    return got;
  };
  const sponges = new Map<string, Weighed>();
  const charges: string[] = [];
  for (const [i, heat] of heats.entries()) {
    if (heat.charge === undefined) flags.push(flag('firing-without-charge', reading.id));
    else if (current.byId.get(heat.charge)?.kind !== 'charge')
      flags.push(flag('reference-unknown', reading.id, { id: heat.charge }));
    else if (!charges.includes(heat.charge)) charges.push(heat.charge);
    if (heat.sponge) {
      const got = weigh(heat.sponge, `heats[${i}].sponge`);
      if (heat.charge !== undefined) sponges.set(heat.charge, got);
    }
  }
  if (opening && 'measuredC' in opening && opening.measuredC > hotC)
    flags.push(flag('opened-hot', reading.id, { c: opening.measuredC, limit: hotC }));
  if (opened !== undefined && !(opening && 'measuredC' in opening))
    flags.push(flag('opened-not-measured', reading.id, opening && 'stoodHours' in opening ? { hours: opening.stoodHours } : {}));
  if (mercury?.state === 'wet') flags.push(flag('mercury-wet', reading.id));
  flags.push(...answeredNo(reading.id, checks));
  return {
    id: reading.id,
    reading,
    charges,
    sponges,
    mercury: mercury ? weigh(mercury.weight, 'mercury.weight') : null,
    water: water ? weigh(water, 'water') : null,
  };
}

/** A fire lit before the charge was weighed in, where both times are said to be exact. */
function litTooSoon(firing: Firing, charge: Reading<'charge'>): Flag[] {
  const { lit } = firing.reading.body;
  const exact = (charge.entry.timing ?? 'exact') === 'exact' && (firing.reading.entry.timing ?? 'exact') === 'exact';
  if (lit === undefined || !exact || compareMoments(lit, charge.happened) >= 0) return [];
  return [flag('fired-before-charged', firing.id, { lit: clockOf(lit), charged: clockOf(charge.happened) })];
}

const answeredNo = (
  entry: string,
  checks: readonly { check: string; answer: string; note?: string | undefined }[] = [],
): Flag[] => checks.filter((c) => c.answer === 'no').map((c) => flag('check-no', entry, { check: c.check, note: c.note ?? '' }));

/** Half to two thirds full is the usual limit; above three quarters the amalgam may rise into the pipe (practice.md 11). */
export const overFullShare = 0.75;

/** The share of a retort that a weight of amalgam fills, by what the register says it holds to the brim at that moment; null where it does not say. */
export function filledShare(grams: Decimal, retort: Registered<'retort'> | undefined, at: string): number | null {
  const capacity = retort && stateAt(retort, at).body.capacity;
  const brim = capacity === undefined ? null : massFromText(capacity, 'capacity');
  return brim?.ok ? quotient(grams, brim.value.grams) : null;
}

/** All charges and firings of the book. */
export function readCharges(current: Current, registers: Registers, lots: Lots): Charges {
  const flags: Flag[] = [];
  const firings = new Map(
    current.of('firing').map((reading) => [reading.id, readFiring(reading, current, registers, flags)] as const),
  );
  const ordered = [...firings.values()].sort((a, b) => compareMoments(firedAt(a), firedAt(b)));
  const all = new Map<string, Charge>();
  const firingsOf = new Map<string, Firing[]>();
  for (const firing of ordered)
    for (const id of firing.charges) {
      const own = firingsOf.get(id);
      if (own) own.push(firing);
      else firingsOf.set(id, [firing]);
    }
  const unmade = new Set(current.of('unmake').map((reading) => reading.body.charge));
  for (const reading of current.of('charge')) {
    if (unmade.has(reading.id)) continue;
    const rows = lots.rows.get(reading.id) ?? [];
    const others = (reading.body.others ?? []).map((other, i) => {
      const weighed = weighedFrom(
        other.weight,
        { entry: reading.id, path: `others[${i}].weight`, at: reading.happened },
        registers,
      );
      flags.push(...weighed.flags);
      return { key: other.key, label: other.label, what: other.what, weighed };
    });
    let sum = others.reduce<Sum>((s, o) => joined(s, o.weighed), emptySum);
    let labels = emptySum;
    let missing = emptySum;
    for (const row of rows) {
      if (row.charged) sum = joined(sum, row.charged);
      if (row.take === 'whole' && row.lot) labels = joined(labels, row.lot);
      if (row.take === 'not-found' && row.lot) missing = joined(missing, row.lot);
    }
    if (sum.grams.digits <= 0n) flags.push(flag('charge-empty', reading.id));
    const seen = reading.body.fill ?? 0;
    const reckoned = filledShare(sum.grams, registers.retort.get(reading.body.retort), reading.happened) ?? 0;
    const fill = Math.max(seen, reckoned);
    if (fill > overFullShare)
      flags.push(flag('over-full', reading.id, { fill, limit: overFullShare, known: seen < reckoned ? 'reckoned' : 'seen' }));
    flags.push(...answeredNo(reading.id, reading.body.checks));
    if (reading.body.pipeClear === 'no') flags.push(flag('check-no', reading.id, { check: 'pipe-clear', note: '' }));
    if (reading.body.waterOn === 'no') flags.push(flag('check-no', reading.id, { check: 'water-on', note: '' }));
    for (const firing of firingsOf.get(reading.id) ?? []) flags.push(...litTooSoon(firing, reading));
    const drift = total(rows.flatMap((row) => (row.take === 'whole' && row.drift ? [row.drift] : [])));
    all.set(reading.id, {
      id: reading.id,
      reading,
      retort: reading.body.retort,
      holds: reading.body.holds ?? 'amalgam',
      rows,
      others,
      total: sum,
      labels,
      missing,
      drift,
      firings: firingsOf.get(reading.id) ?? [],
    });
  }
  return { all, firings, unclaimed: ordered.filter((firing) => firing.charges.length === 0), flags };
}

/** a − b as a sum of weights. */
export const lessSum = (a: Sum, b: Sum): Sum =>
  b === emptySum ? a : { grams: minus(a.grams, b.grams), net: less(a.net, b.net), uKnown: a.uKnown && b.uKnown };
