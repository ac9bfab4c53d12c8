/** The plant that crushes and catches: batteries of stamps and the plates below them. */
import { day, id, label, positive } from '../shapes.ts';
import { z } from '../zod.ts';

export const battery = z.strictObject({
  of: id.optional(),
  label,
  /** Stamps in it, and the weight of one as the site states it. */
  stamps: z.number().int().min(1).max(200).optional(),
  place: label.optional(),
  note: label.optional(),
  out: day.optional(),
});

export const plateMetals = ['copper', 'silvered-copper', 'muntz', 'other'] as const;

export const plate = z.strictObject({
  of: id.optional(),
  label,
  battery: id.optional(),
  /** Its place down the flow, counted from the mortar: 1 lies nearest. */
  order: z.number().int().min(1).max(60).optional(),
  metal: z.enum(plateMetals).optional(),
  lengthM: positive.max(50).optional(),
  widthM: positive.max(50).optional(),
  set: day.optional(),
  note: label.optional(),
  out: day.optional(),
});
