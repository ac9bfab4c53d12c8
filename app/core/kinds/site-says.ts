/**
 * Lists a site keeps for itself: the numbers to call, how long it keeps which papers, and how long before its day a thing is told of. The last list
 * written stands. The program brings no number and no period of its own, and deletes nothing when a period ends.
 */
import { label } from '../shapes.ts';
import { z } from '../zod.ts';

/** Who a number reaches. */
export const numberUses = ['emergency', 'poison-centre', 'remover', 'authority', 'safety-officer', 'other'] as const;
export type NumberUse = (typeof numberUses)[number];

export const siteNumbers = z.strictObject({
  numbers: z.array(z.strictObject({ for: z.enum(numberUses), name: label.optional(), number: label })).max(24),
  note: label.optional(),
});

/** Records that a rule may ask to be kept. */
export const keptRecords = ['air', 'personal-air', 'health-dates', 'waste', 'incidents', 'runs', 'extraction', 'other'] as const;
export type KeptRecord = (typeof keptRecords)[number];

export const retention = z.strictObject({
  periods: z
    .array(
      z.strictObject({
        records: z.enum(keptRecords),
        which: label.optional(),
        years: z.number().int().min(1).max(200),
        /** The rule the site goes by, and who read it. */
        source: label,
      }),
    )
    .max(24),
  note: label.optional(),
});

/** Things that fall due on a day. */
export const dueThings = [
  'scale',
  'meter',
  'inspection',
  'site-check',
  'person-check',
  'drum',
  'authority',
  'stock-take',
] as const;
export type DueThing = (typeof dueThings)[number];

export const leadTimes = z.strictObject({
  /** How many days before its day a thing is told of; a thing left out is told of as the program does. */
  leads: z.array(z.strictObject({ of: z.enum(dueThings), days: z.number().int().min(0).max(730) })).max(dueThings.length),
  /** Days from one count of the whole to the next, where the site set them. */
  countEvery: z.number().int().min(1).max(3660).optional(),
  note: label.optional(),
});
