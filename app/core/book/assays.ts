/**
 * Every assay of the book worked out: gold and silver in parts per thousand with their contributions by error source, sampling as a source of its
 * own, replicates held against the site's limit. Impossible results stay as they are and are named. Sources: methods.md 5.2 to 5.5.
 */
import { type AssayFigures, assayFigures } from '../assay.ts';
import { assayU, deviation } from '../assay-u.ts';
import { type Decimal, decimalFromText, toNumber, zero } from '../decimal.ts';
import { type DensityFinding, densityOf, goldFromDensity } from '../density.ts';
import type { ResultUnit } from '../kinds/assay.ts';
import { gramsFromText } from '../mass.ts';
import {
  asRatio,
  compareRatio,
  mean,
  minusRatio,
  over,
  plusRatio,
  type Ratio,
  ratioFromText,
  timesRatio,
  toDouble,
} from '../ratio.ts';
import type { Current, Reading } from './current.ts';

/** How far a fineness may be relied on, best first. A density is only ever an indication. */
export const assayClasses = ['certificate', 'titration', 'proofed', 'unproofed', 'indicative'] as const;
export type AssayClass = (typeof assayClasses)[number];

/** A share of the weight in parts per thousand with its signed contributions by error source, at one standard uncertainty. */
export interface Fineness {
  readonly permille: Ratio;
  readonly parts: ReadonlyMap<string, number>;
  /** Whether everything but sampling is known. */
  readonly uKnown: boolean;
  /** Whether what sampling adds is among the contributions. */
  readonly samplingKnown: boolean;
}

export interface AssayRead {
  readonly id: string;
  readonly reading: Reading<'assay'>;
  readonly class: AssayClass;
  readonly gold: Fineness | null;
  readonly silver: Fineness | null;
  readonly mercury: Fineness | null;
  /** Figures of a fire assay, weighings in grams. */
  readonly fire: AssayFigures | null;
  readonly density: { readonly density: Ratio | null; readonly findings: readonly DensityFinding[] } | null;
  /** Whether replicates lie further apart than the site's limit; null without a limit or with one sample. */
  readonly apart: boolean | null;
  /** Gold, or gold and silver, above the whole. */
  readonly over1000: boolean;
}

const thousand = ratioFromText('1000');
const one = ratioFromText('1');
const decimal = (text: string): Decimal => decimalFromText(text) ?? zero;
const ratio = (text: string): Ratio => asRatio(decimal(text));
const number = (text: string | undefined): number | undefined => (text === undefined ? undefined : toNumber(decimal(text)));

function grams(text: string): Decimal {
  const got = gramsFromText(text, '');
  if (!got.ok) throw new Error('a mass in the record has passed its shape');
  return got.value;
}

/** Grams per tonne, as parts per thousand, of one of each unit: exact. */
const perThousand: Readonly<Record<ResultUnit, Ratio>> = {
  permille: one,
  'g-t': { n: 1n, d: 1000n },
  'dwt-long-ton': { n: 75n, d: 49000n },
  'ozt-long-ton': { n: 1500n, d: 49000n },
  // 31.1034768 g over 907.18474 kg
  'ozt-short-ton': { n: 3110347680n, d: 90718474000n },
};

/** Grams per cubic centimetre, where none is given. */
const usualAir = decimal('0.0012');
/** Grams of silver to one equivalent. */
const silverEquivalent = ratio('107.8682');

type Parts = readonly (readonly [string, number])[];

function fineness(reading: Reading<'assay'>, permille: Ratio, metal: string, parts: Parts, uKnown: boolean): Fineness {
  const sampling = number(reading.body.sampling?.u);
  const all = new Map<string, number>();
  for (const [source, u] of parts) if (u !== 0) all.set(source, (all.get(source) ?? 0) + u);
  if (sampling !== undefined && sampling > 0) all.set(`sampling:${reading.id}:${metal}`, sampling);
  return { permille, parts: all, uKnown, samplingKnown: sampling !== undefined };
}

type Of<M extends string> = Reading<'assay'> & { readonly body: Extract<Reading<'assay'>['body'], { method: M }> };
type Worked = Pick<AssayRead, 'class' | 'gold' | 'silver' | 'mercury' | 'fire' | 'density'> & { spread: Ratio | null };

const empty = { gold: null, silver: null, mercury: null, fire: null, density: null, spread: null };

function byFire(reading: Of<'fire-assay'>): Worked {
  const { body, id } = reading;
  const samples = body.replicates.map(({ sample, cornet, bead }) => ({
    sample: grams(sample),
    cornet: grams(cornet),
    bead: bead === undefined ? undefined : grams(bead),
  }));
  const proofs = (body.proofs ?? []).map(({ taken, found, silverLoss }) => ({
    taken: grams(taken),
    found: grams(found),
    silverLoss: silverLoss === undefined ? undefined : grams(silverLoss),
  }));
  const fire = assayFigures(samples, proofs);
  const balanceU = body.balanceU === undefined ? undefined : toNumber(grams(body.balanceU));
  const u = assayU(samples, proofs, fire, {
    balanceU,
    repeatability: number(body.repeatability),
    proofScatter: number(body.proofScatter),
  });
  const parts: Parts = u.terms.map(([term, value]) => [`assay:${id}:${term}`, value]);
  const gold = fire.goldMean && fineness(reading, fire.goldMean, 'gold', parts, u.known);
  // silver is what is left of the bead when the gold is taken off: it carries the gold's error with the other sign
  const beads = samples.flatMap(({ bead, sample }) => (bead ? [(1000 * toNumber(bead)) / toNumber(sample)] : []));
  const meanSample = samples.reduce((s, { sample }) => s + toNumber(sample), 0) / samples.length;
  const losses = proofs.flatMap(({ silverLoss }) => (silverLoss ? [(1000 * toNumber(silverLoss)) / meanSample] : []));
  const [ofBeads, ofLosses] = [deviation(beads), deviation(losses)];
  const silverParts: Parts = [
    ...parts.map(([source, value]) => [source, -value] as const),
    [`assay:${id}:beads`, (ofBeads ?? 0) / Math.sqrt(Math.max(1, beads.length))],
    [`assay:${id}:silver loss`, (ofLosses ?? 0) / Math.sqrt(Math.max(1, losses.length))],
  ];
  const silver = fire.silver
    ? fineness(reading, fire.silver, 'silver', silverParts, u.known && ofBeads !== null && ofLosses !== null)
    : null;
  return { ...empty, class: proofs.length > 0 ? 'proofed' : 'unproofed', gold, silver, fire, spread: fire.range };
}

function byTitration(reading: Of<'titration'>): Worked {
  const { body, id } = reading;
  // millilitres times equivalents to the litre times grams to the equivalent: milligrams
  const found = body.titrations.map(({ sample, volumeMl, normality }) =>
    over(timesRatio(timesRatio(ratio(volumeMl), ratio(normality)), silverEquivalent), asRatio(grams(sample))),
  );
  const all = found.filter((f) => f !== null);
  const middle = mean(all);
  const sorted = all.toSorted(compareRatio);
  const [least, most] = [sorted[0], sorted.at(-1)];
  const scatter = number(body.repeatability) ?? deviation(all.map(toDouble));
  const parts: Parts = scatter === null ? [] : [[`assay:${id}:repeatability`, scatter / Math.sqrt(all.length)]];
  return {
    ...empty,
    class: 'titration',
    silver: middle && fineness(reading, middle, 'silver', parts, scatter !== null),
    spread: least && most ? minusRatio(most, least) : null,
  };
}

function byDensity(reading: Of<'density'>): Worked {
  const { body } = reading;
  const density = densityOf({
    air: grams(body.air),
    water: grams(body.water),
    waterDensity: decimal(body.waterDensity),
    airDensity: body.airDensity === undefined ? usualAir : decimal(body.airDensity),
  });
  const { gold, findings } = goldFromDensity(density, body.other);
  return {
    ...empty,
    class: 'indicative',
    // the error of the model itself is not known, so none is stated
    gold: gold && fineness(reading, gold, 'gold', [], false),
    density: { density, findings },
  };
}

function byCertificate(reading: Of<'outside'>): Worked {
  const { result } = reading.body;
  const factor = perThousand[result.unit];
  const metal = (name: 'gold' | 'silver' | 'mercury'): Fineness | null => {
    const [stated, u] = [result[name], result[`${name}U`]];
    if (stated === undefined) return null;
    const parts: Parts =
      u === undefined ? [] : [[`assay:${reading.id}:${name}`, (toDouble(factor) * toNumber(decimal(u))) / (result.k ?? 1)]];
    return fineness(reading, timesRatio(ratio(stated), factor), name, parts, u !== undefined);
  };
  return { ...empty, class: 'certificate', gold: metal('gold'), silver: metal('silver'), mercury: metal('mercury') };
}

function worked(reading: Reading<'assay'>): Worked {
  switch (reading.body.method) {
    case 'fire-assay':
      return byFire(reading as Of<'fire-assay'>);
    case 'titration':
      return byTitration(reading as Of<'titration'>);
    case 'density':
      return byDensity(reading as Of<'density'>);
    case 'outside':
      return byCertificate(reading as Of<'outside'>);
  }
}

/** Whether these shares together are more than the whole. */
export const overWhole = (...shares: readonly (Fineness | null)[]): boolean =>
  compareRatio(
    shares.reduce<Ratio>((s, f) => (f ? plusRatio(s, f.permille) : s), { n: 0n, d: 1n }),
    thousand,
  ) > 0;

/** One assay, worked out. */
export function assayRead(reading: Reading<'assay'>): AssayRead {
  const { spread, ...rest } = worked(reading);
  const { limit } = reading.body;
  const several = rest.fire
    ? rest.fire.gold.length > 1
    : reading.body.method === 'titration' && reading.body.titrations.length > 1;
  return {
    id: reading.id,
    reading,
    ...rest,
    apart: limit === undefined || spread === null || !several ? null : compareRatio(spread, ratio(limit)) > 0,
    over1000: overWhole(rest.gold, rest.silver) || (rest.fire?.findings.includes('over-1000') ?? false),
  };
}

/** Every assay that stands, in order of happening. */
export const readAssays = (current: Current): ReadonlyMap<string, AssayRead> =>
  new Map(current.of('assay').map((reading) => [reading.id, assayRead(reading)]));
