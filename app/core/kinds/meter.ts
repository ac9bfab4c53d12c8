/** An instrument that reads mercury vapour in air, with its calibration. */
import { day, id, label } from '../shapes.ts';
import { z } from '../zod.ts';

export const meter = z.strictObject({
  of: id.optional(),
  label,
  principle: label.optional(),
  number: label.optional(),
  owner: label.optional(),
  calibrated: z.strictObject({ on: day, due: day.optional(), by: label.optional() }).optional(),
  note: label.optional(),
  out: day.optional(),
});
