/**
 * A scale and its calibration. A new calibration is a new entry that names the scale (`of`): from its time on, readings belong to a new epoch
 * and no longer share their span error with those before.
 */
import { day, id, label, positive, someMass } from '../shapes.ts';
import { z } from '../zod.ts';

export const scale = z.strictObject({
  of: id.optional(),
  label,
  /** The most it weighs. */
  maximum: someMass,
  /** The step of its display. */
  d: someMass,
  /** Repeatability: the standard deviation of ten or more readings of one weight. */
  s: someMass.optional(),
  /** Half-width of the linearity error. */
  linearity: someMass.optional(),
  certificate: z
    .strictObject({
      U: someMass,
      k: positive.optional(),
      at: someMass,
      number: label.optional(),
      on: day.optional(),
      due: day.optional(),
    })
    .optional(),
  /** Accuracy class and verification interval as on its plate: used only where there is no certificate. */
  accuracy: z.strictObject({ class: z.enum(['I', 'II', 'III', 'IIII']), e: someMass }).optional(),
  /** Share of a weight that two standard deviations may reach; sets the least weight. */
  tolerance: positive.max(1).optional(),
  place: label.optional(),
  out: day.optional(),
});
