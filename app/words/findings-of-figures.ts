/**
 * What the other reckonings found beside their figures, one sentence each: what it means and what to look at. A retort run's findings have a table of
 * their own (`findings.ts`). None of them says that air, a person or a practice is in order.
 */
import type { ReadingFinding } from '../core/air-reading.ts';
import type { AssayFinding } from '../core/assay.ts';
import type { DensityFinding } from '../core/density.ts';
import type { ExposureFinding } from '../core/exposure.ts';
import type { MeltFinding } from '../core/melt.ts';
import type { VapourFinding } from '../core/vapour.ts';

export type FigureFinding = AssayFinding | DensityFinding | ExposureFinding | MeltFinding | ReadingFinding | VapourFinding;

export const figureFindings: Readonly<Record<FigureFinding, string>> = {
  'bars-over-charge':
    'Bars and samples weigh more than the sponge and added metal together: old prills or another sponge went in unlogged, or a weight is wrong.',
  'no-proofs': 'No proofs were run beside the samples, so the gold stands uncorrected.',
  'no-silver-loss': 'The silver lost in cupellation is not known, so the silver stands uncorrected and is likely to read low.',
  'over-1000':
    'Gold, or gold and silver together, come to more than the whole: a weight, a proof or the correction is wrong. Nothing was set back.',
  'denser-than-gold': 'The density is above that of gold: a weight is wrong, or a bubble or a thread weighed with it.',
  'lighter-than-other': 'The density is below that of the second metal: there are voids, or another metal than the one assumed.',
  'unsampled-time': 'Part of the shift has no reading, and what the air held then is not known; it is not taken as clean.',
  'below-detection': 'At least one reading was below what the meter can tell: it counts from nothing up to that figure.',
  'over-range': 'At least one reading was above the meter’s range: the true figure is higher, by how much nobody can say.',
  'shift-over-8h':
    'The shift was longer than eight hours; the figure is still divided by eight, and some rules lower their limit for long shifts.',
  'above-saturation':
    'Air at this temperature cannot hold that much: check the unit (µg and mg are a thousand apart), the temperature and the meter.',
  'at-or-above-idlh':
    'This is at or above 10 mg/m³, a figure published as immediately dangerous to life or health: leave, and follow the site’s emergency rules.',
  negative: 'The reading is below nothing: the meter’s zero has moved, so its other readings of that day are in doubt too.',
  boiling: 'Mercury boils at this temperature and pressure: the space above it is all vapour, and a blocked outlet would burst.',
  'hot-for-room-air': 'This is hotter than any room air: the figure belongs to the inside of a retort or its pipe.',
};
