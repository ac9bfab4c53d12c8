/**
 * Two lists a site keeps for itself: the numbers to call, and how long it keeps which papers. The last list written stands. The program brings no
 * number and no period of its own, and deletes nothing when a period ends.
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
