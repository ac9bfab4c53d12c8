/**
 * Where the bands of a run come from: set by the site for its retort, or this program's starting values (practice.md 3). A band is what needs no
 * remark; it is no proof of anything.
 */

import { type Registers, stateAt } from '../core/book/registers.ts';
import type { Run } from '../core/book/runs.ts';
import { toNumber } from '../core/decimal.ts';
import type { RunBands } from '../core/run.ts';
import { gramText, percentText } from './figures.ts';

export type BandSource = 'start' | 'site';
export interface BandSources {
  /** The share of the charge that a gap may come to. */
  readonly loss: BandSource;
  /** How far a sponge may be from the usual one. */
  readonly ratio: BandSource;
}

/** As the retort's register stood when the run's first charge went in: the same state the book judges it by. */
export function bandSources(registers: Registers, run: Pick<Run, 'charges'> | undefined): BandSources {
  const first = run?.charges[0];
  const retort = first ? registers.retort.get(first.retort) : undefined;
  const set = retort && first ? stateAt(retort, first.reading.happened).body : undefined;
  return {
    loss: set?.lossBand === undefined ? 'start' : 'site',
    ratio: set?.ratioBand === undefined ? 'start' : 'site',
  };
}

export const bandSourceNames: Readonly<Record<BandSource, string>> = {
  start: 'starting value of this program',
  site: 'set by the site',
};

/** A share without decimals that say nothing: "2 %", "2.5 %". */
const share = (value: number): string => percentText(value, 2).replace(/(?:[.,]0+|(?<=[.,]\d*[1-9])0+)(?=\u00a0%)/, '');

/** The rule of the band of a gap: "2 % of the charge, starting value of this program". `bandG`: what it comes to, in grams. */
export function lossRule(bands: RunBands, sources: BandSources, bandG: number): string {
  const { lossAllowance } = bands;
  if (lossAllowance && toNumber(lossAllowance) >= bandG)
    return `${gramText(toNumber(lossAllowance) * 1e6)} whatever the charge, ${bandSourceNames.site}`;
  return `${bandSourceNames[sources.loss]} (${share(toNumber(bands.lossBand))} of the charge)`;
}

/** "± 4 % of the charge is ordinary (starting value of this program)". */
export const ratioRule = (bands: RunBands, sources: BandSources): string =>
  `± ${share(toNumber(bands.ratioBand))} of the charge is ordinary (${bandSourceNames[sources.ratio]})`;
