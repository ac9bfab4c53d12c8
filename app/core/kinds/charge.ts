/**
 * What was put into a retort. A lot is weighed again as it goes in and set against its label; a lot that was not found is a fact and is written
 * down as one. Taking part of a lot makes two child lots: the part (`…/<row>a`) and the rest (`…/<row>b`).
 */
import { answer, checked, id, label, partId, partKey, share, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const chargeKinds = ['amalgam', 'mercury', 'residues'] as const;
export type ChargeKind = (typeof chargeKinds)[number];

/** A whole lot, part of a lot, a lot that should have been there, or one whose clean-up is not written up yet. */
const row = z.discriminatedUnion('take', [
  z.strictObject({ take: z.literal('whole'), key: partKey, lot: partId, weight }),
  z.strictObject({
    take: z.literal('part'),
    key: partKey,
    lot: partId,
    weight,
    /** The rest, if it was weighed; otherwise it is got by subtraction. */
    rest: weight.optional(),
  }),
  z.strictObject({ take: z.literal('not-found'), key: partKey, lot: partId, looked: label.optional() }),
  z.strictObject({ take: z.literal('unwritten'), key: partKey, label, weight }),
]);
export type ChargeRow = z.infer<typeof row>;

export const charge = z.strictObject({
  retort: id,
  /** Left out: amalgam. */
  holds: z.enum(chargeKinds).optional(),
  rows: z.array(row).max(60),
  /** Put in besides lots: an earlier cake, mercury to be cleaned, residues. */
  others: z
    .array(z.strictObject({ key: partKey, what: z.enum(['cake', 'mercury', 'residue']), label, weight, vessel: id.optional() }))
    .max(20)
    .optional(),
  /** How full the retort is, as a share. */
  fill: share.optional(),
  lining: label.optional(),
  lute: label.optional(),
  pipeClear: answer.optional(),
  waterOn: answer.optional(),
  /** Whether the amalgam was dry when weighed. */
  dry: answer.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});
