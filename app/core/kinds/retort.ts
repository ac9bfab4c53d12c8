/** A retort with its pipe and condenser: whose it is, when it was last brushed out and what that gave, and what its runs are judged by. */
import { day, id, label, positive, share, someMass, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const retort = z.strictObject({
  of: id.optional(),
  label,
  /** Amalgam that would fill it to the brim. */
  capacity: someMass.optional(),
  owner: label.optional(),
  loan: z.strictObject({ from: label, since: day, until: day.optional() }).optional(),
  /** Pipe and condenser brushed out: when, what came out, and into which vessel. */
  brushed: z.strictObject({ on: day, got: weight, vessel: id.optional() }).optional(),
  inspected: z.strictObject({ on: day, due: day.optional(), by: label.optional() }).optional(),
  /** Sponge weight over charge weight, as usual for this site's amalgam, and how far from it is still ordinary. */
  usualRatio: share.optional(),
  ratioBand: positive.max(1).optional(),
  /** A gap up to this share of the charge, or up to this mass, is within the band. */
  lossBand: positive.max(1).optional(),
  lossAllowance: someMass.optional(),
  place: label.optional(),
  note: label.optional(),
  out: day.optional(),
});
