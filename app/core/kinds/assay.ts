/**
 * An assay: what was sampled and how, what the balance said of each sample and proof, or what another laboratory certified. Masses and figures
 * are kept as read; the fineness is always worked out, never typed beside its weighings. Sources: methods.md 5.2 to 5.5; practice.md 1 (18).
 */
import { decimalText, id, label, partId, positive, someMass, mass as weighedMass } from '../shapes.ts';
import { z } from '../zod.ts';

export const assaySubjects = ['ore', 'tailings', 'concentrate', 'sponge', 'bar', 'mercury', 'residue', 'waste'] as const;
export type AssaySubject = (typeof assaySubjects)[number];

export const assayMethods = ['fire-assay', 'titration', 'density', 'outside'] as const;
export type AssayMethod = (typeof assayMethods)[number];

export const samplingMethods = ['dip', 'drill', 'cut', 'granulated', 'grab', 'split', 'whole', 'other'] as const;
/** Units a laboratory states its result in; the ounce and the ton are named. */
export const resultUnits = ['permille', 'g-t', 'dwt-long-ton', 'ozt-long-ton', 'ozt-short-ton'] as const;
export type ResultUnit = (typeof resultUnits)[number];

const common = {
  subject: z.enum(assaySubjects),
  /** Which one: a bar of a melt, the sponge of a charge, a parcel's ore, what a vessel or drum holds; or in words. */
  bar: partId.optional(),
  charge: id.optional(),
  parcel: id.optional(),
  vessel: id.optional(),
  which: label.optional(),
  /** How and where the sample was taken. `u`: what the sampling adds, one standard uncertainty in parts per thousand of the fineness. */
  sampling: z
    .strictObject({ method: z.enum(samplingMethods), positions: label.optional(), u: decimalText.optional() })
    .optional(),
  /** How far replicates may lie apart by the site's own rule, parts per thousand. */
  limit: decimalText.optional(),
  laboratory: label.optional(),
  note: label.optional(),
};

/** What the site knows of its own weighing: one weighing of the balance, one determination, one proof, each at one standard uncertainty. */
const own = { balanceU: someMass.optional(), repeatability: decimalText.optional(), proofScatter: decimalText.optional() };

/** Fire assay: gold left after parting (cornet) and, before it, gold and silver together (bead); proofs run beside the samples. */
const fireAssay = z.strictObject({
  method: z.literal('fire-assay'),
  ...common,
  ...own,
  replicates: z
    .array(z.strictObject({ sample: someMass, cornet: weighedMass, bead: weighedMass.optional() }))
    .min(1)
    .max(12),
  proofs: z
    .array(z.strictObject({ taken: someMass, found: weighedMass, silverLoss: weighedMass.optional() }))
    .max(12)
    .optional(),
});

/** Silver titrated directly: volume in millilitres of a solution of so many equivalents to the litre. */
const titration = z.strictObject({
  method: z.literal('titration'),
  ...common,
  repeatability: own.repeatability,
  titrations: z
    .array(z.strictObject({ sample: someMass, volumeMl: decimalText, normality: decimalText }))
    .min(1)
    .max(12),
});

/** Weighed in air and in water: an indication only, and only with the second metal named. Densities in grams per cubic centimetre. */
const density = z.strictObject({
  method: z.literal('density'),
  ...common,
  air: someMass,
  water: weighedMass,
  waterDensity: decimalText,
  airDensity: decimalText.optional(),
  other: z.enum(['silver', 'copper']),
});

/** What another laboratory certified, in its own unit, with the uncertainty it stated and the coverage factor it gave. */
const outside = z.strictObject({
  method: z.literal('outside'),
  ...common,
  result: z.strictObject({
    unit: z.enum(resultUnits),
    gold: decimalText.optional(),
    goldU: decimalText.optional(),
    silver: decimalText.optional(),
    silverU: decimalText.optional(),
    mercury: decimalText.optional(),
    mercuryU: decimalText.optional(),
    /** Left out: what was stated is one standard uncertainty. */
    k: positive.max(10).optional(),
  }),
  certificate: label.optional(),
});

export const assay = z.discriminatedUnion('method', [fireAssay, titration, density, outside]);
