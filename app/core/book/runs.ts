/**
 * Runs: a charge with its firings (or charges caught together) judged as one. A run is open until sponge and mercury of its last firing are both
 * weighed; the gap goes first to the retort's own condenser, up to the most ever brushed out of it, and only above that is it a loss at the
 * retort. Sponge ratios are held against what the same source left before, then against what the site set, then against the usual range.
 */
import { type Decimal, decimalFromNumber, minus, times, zero } from '../decimal.ts';
import { massFromText } from '../mass.ts';
import { uOf } from '../measured.ts';
import { judgeRun, type RunBands, type RunFigures, startingLossBand, startingRatioBand } from '../run.ts';
import { compareMoments, minutesOf } from '../time.ts';
import { type Charge, type Charges, emptySum, type Firing, firedAt, joined, lessSum, type Sum } from './charges.ts';
import { type Flag, flag } from './flags.ts';
import { type Registers, stateAt } from './registers.ts';
import { RunningMedian } from './running-median.ts';

/** What a run still waits for. */
export type Awaited = 'firing' | 'sponge' | 'mercury';

/** The run's state at one opening: what counts up to then, and what it comes to. Figures are null while something is awaited. */
export interface Opening {
  readonly firing: Firing;
  readonly sponge: Sum | null;
  readonly mercury: Sum | null;
  readonly water: Sum;
  readonly waterKnown: boolean;
  readonly awaits: readonly Awaited[];
  /** charge − sponge − water − mercury, with its errors. */
  readonly gap: Sum | null;
  readonly figures: RunFigures | null;
}

/** Where the usual sponge ratio came from. */
export interface UsualRatio {
  readonly ratio: number;
  readonly from: 'history' | 'site';
  /** Runs of the history. */
  readonly runs: number;
}

export interface Run {
  /** The id of its first charge. */
  readonly id: string;
  readonly charges: readonly Charge[];
  readonly retort: string;
  /** Caught together: no figure of mercury per charge. */
  readonly together: boolean;
  readonly charge: Sum;
  /** One per firing, cumulative. */
  readonly openings: readonly Opening[];
  readonly awaits: readonly Awaited[];
  /** The last opening with figures. */
  readonly last: Opening | null;
  readonly usual: UsualRatio | null;
  readonly bands: RunBands;
}

/** Charges that any firing heated together, as groups; each charge stands in one. */
function groups(charges: Charges): Charge[][] {
  const leader = new Map<string, string>();
  const lead = (id: string): string => {
    const up = leader.get(id);
    return up === undefined || up === id ? id : lead(up);
  };
  for (const firing of charges.firings.values()) {
    const [first, ...rest] = firing.charges;
    if (first !== undefined) for (const other of rest) leader.set(lead(other), lead(first));
  }
  const found = new Map<string, Charge[]>();
  for (const charge of charges.all.values()) {
    const leading = lead(charge.id);
    const group = found.get(leading);
    if (group) group.push(charge);
    else found.set(leading, [charge]);
  }
  return [...found.values()].map((group) => group.sort((a, b) => compareMoments(a.reading.happened, b.reading.happened)));
}

const decimal = (value: number): Decimal => decimalFromNumber(value);

function bandsOf(charge: Charge, registers: Registers, usual: UsualRatio | null): RunBands {
  const retort = registers.retort.get(charge.retort);
  const set = retort ? stateAt(retort, charge.reading.happened).body : undefined;
  const allowance = set?.lossAllowance === undefined ? null : massFromText(set.lossAllowance, '');
  return {
    kind: charge.holds,
    usualRatio: usual ? decimal(usual.ratio) : undefined,
    ratioBand: set?.ratioBand === undefined ? startingRatioBand : decimal(set.ratioBand),
    lossBand: set?.lossBand === undefined ? startingLossBand : decimal(set.lossBand),
    lossAllowance: allowance?.ok ? allowance.value.grams : undefined,
  };
}

/** What the lots of a charge are made of, for its history: their one source, or "several". */
export const sourceOf = (charge: Charge): string => {
  const sources = new Set(charge.rows.map((row) => row.lot?.source ?? 'unknown'));
  return sources.size === 1 ? ([...sources][0] ?? 'unknown') : 'several';
};

/** Fewest earlier runs of a source that make a history. */
export const leastHistory = 3;

function usualFor(charge: Charge, history: RunningMedian | undefined, registers: Registers): UsualRatio | null {
  if (charge.holds !== 'amalgam') return null;
  if (history && history.count >= leastHistory) return { ratio: history.median(), from: 'history', runs: history.count };
  const retort = registers.retort.get(charge.retort);
  const set = retort ? stateAt(retort, charge.reading.happened).body.usualRatio : undefined;
  return set === undefined ? null : { ratio: set, from: 'site', runs: 0 };
}

/** The firings of a group in order, each once. */
const firingsOf = (group: readonly Charge[]): Firing[] =>
  [...new Set(group.flatMap((c) => c.firings))].sort((a, b) => compareMoments(firedAt(a), firedAt(b)));

function openingsOf(group: readonly Charge[], charge: Sum, bands: RunBands): Opening[] {
  const firings = firingsOf(group);
  const sponges = new Map<string, Sum>();
  const openings: Opening[] = [];
  let caught: Sum | null = null;
  let water = emptySum;
  let waterKnown = true;
  for (const firing of firings) {
    for (const [id, sponge] of firing.sponges) sponges.set(id, sponge);
    if (firing.mercury) caught = caught ? joined(caught, firing.mercury) : firing.mercury;
    if (firing.water) water = joined(water, firing.water);
    else waterKnown = false;
    const spongesIn = group.every((c) => sponges.has(c.id)) && firing.charges.every((id) => firing.sponges.has(id));
    const awaits: Awaited[] = [];
    if (!spongesIn) awaits.push('sponge');
    // mercury of earlier firings may wait in the receiver: the last weighing covers them
    if (!firing.mercury) awaits.push('mercury');
    const sponge = spongesIn ? group.reduce<Sum>((s, c) => joined(s, sponges.get(c.id) ?? emptySum), emptySum) : null;
    const mercury = caught;
    const closed = awaits.length === 0 && sponge && mercury && charge.grams.digits > 0n;
    const gap = closed ? lessSum(lessSum(lessSum(charge, sponge), water), mercury) : null;
    const figures = closed && gap ? judged(charge, sponge, mercury, water, waterKnown, gap, bands) : null;
    openings.push({ firing, sponge, mercury, water, waterKnown, awaits, gap, figures });
  }
  return openings;
}

function judged(charge: Sum, sponge: Sum, caught: Sum, water: Sum, waterKnown: boolean, gap: Sum, bands: RunBands): RunFigures {
  const uGapG = gap.uKnown ? decimal(uOf(gap.net) / 1e6) : undefined;
  return judgeRun(
    {
      charge: charge.grams,
      sponge: sponge.grams,
      mercury: caught.grams,
      water: water.grams,
      waterKnown,
      condenserChange: zero,
      uGapSquared: uGapG && times(uGapG, uGapG),
    },
    bands,
  );
}

/** The moment a run is dated by: its last opening, or its first charge while it has none. */
export const runAt = (run: Pick<Run, 'openings' | 'charges'>): string => {
  const last = run.openings.at(-1);
  return last ? firedAt(last.firing) : (run.charges[0]?.reading.happened ?? '');
};

/** All runs of the book in order, with flags that only a whole run shows. */
export function readRuns(charges: Charges, registers: Registers): { runs: readonly Run[]; flags: readonly Flag[] } {
  const flags: Flag[] = [];
  const histories = new Map<string, RunningMedian>();
  const dated = groups(charges)
    .map((group) => ({ group, at: minutesOf(groupAt(group)) ?? 0 }))
    .sort((a, b) => a.at - b.at);
  const runs = dated.map(({ group }): Run => {
    const first = group[0];
    if (!first) throw new Error('a group has a charge');
    const source = `${first.retort} ${first.holds} ${sourceOf(first)}`;
    const usual = usualFor(first, histories.get(source), registers);
    const bands = bandsOf(first, registers, usual);
    const charge = group.reduce<Sum>((s, c) => joined(s, c.total), emptySum);
    const openings = openingsOf(group, charge, bands);
    const last = openings.findLast((o) => o.figures) ?? null;
    if (last?.sponge && minus(last.sponge.grams, charge.grams).digits > 0n)
      flags.push(flag('sponge-over-charge', last.firing.id));
    const ratio = last?.figures?.spongeRatio;
    if (
      group.length === 1 &&
      first.holds === 'amalgam' &&
      ratio !== undefined &&
      ratio !== null &&
      openings.at(-1)?.awaits.length === 0
    ) {
      const history = histories.get(source) ?? new RunningMedian();
      history.add(ratio);
      histories.set(source, history);
    }
    const awaits: readonly Awaited[] = openings.length === 0 ? ['firing'] : (openings.at(-1)?.awaits ?? []);
    return {
      id: first.id,
      charges: group,
      retort: first.retort,
      together: group.length > 1,
      charge,
      openings,
      awaits,
      last,
      usual,
      bands,
    };
  });
  return { runs, flags };
}

/** As `runAt`, before the run is worked out. */
const groupAt = (group: readonly Charge[]): string => {
  const last = firingsOf(group).at(-1);
  return last ? firedAt(last) : (group[0]?.reading.happened ?? '');
};

const byCharge = new WeakMap<readonly Run[], ReadonlyMap<string, Run>>();

/** The run of each charge, by the charge's id; worked out once for a list of runs. */
export function runsByCharge(runs: readonly Run[]): ReadonlyMap<string, Run> {
  const known = byCharge.get(runs);
  if (known) return known;
  const index = new Map<string, Run>();
  for (const run of runs) for (const charge of run.charges) if (!index.has(charge.id)) index.set(charge.id, run);
  byCharge.set(runs, index);
  return index;
}
