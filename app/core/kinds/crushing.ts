/** A day's crushing: what was fed, through which battery, and whether mercury was fed with it. */
import { id, label, positive, someMass } from '../shapes.ts';
import { z } from '../zod.ts';

export const feeds = ['whole-ore', 'concentrate', 'water-only'] as const;
export const fedPlaces = ['none', 'plates', 'mortar'] as const;

/** Ore put through: its mass, counted or weighed, and its standard uncertainty as a share of it. */
export const ore = z.strictObject({ mass: someMass, by: z.enum(['tally', 'weighed']).optional(), u: positive.max(1).optional() });

export const crushing = z.strictObject({
  battery: id,
  feed: z.enum(feeds),
  mercuryFed: z.enum(fedPlaces),
  ore: ore.optional(),
  parcel: id.optional(),
  stamps: z.number().int().min(1).max(200).optional(),
  dropsAMinute: positive.max(300).optional(),
  hours: positive.max(24).optional(),
  note: label.optional(),
});
