/**
 * Mercury on its way into the circuit and back: issues to mortar box, plates or pan, and returns that no other entry brought back. Mercury out of a
 * cleaning or a firing names its vessel there; an issue never goes to a cleaning. So nothing is booked twice.
 */
import { rule } from '../read.ts';
import { checked, id, label, positive, someMass, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const circuitParts = ['mortar', 'plates', 'pan', 'trap'] as const;
export type CircuitPart = (typeof circuitParts)[number];

export const issue = z
  .strictObject({
    vessel: id,
    /** The part of the circuit it was fed to, or another vessel it was drawn off into. */
    to: z.enum(['mortar', 'plates', 'pan', 'vessel']),
    into: id.optional(),
    weight,
    battery: id.optional(),
    /** The same by count of doses, as a check of the weight. */
    doses: z.strictObject({ count: z.number().int().min(1).max(10000), each: someMass }).optional(),
    plate: id.optional(),
    condition: label.optional(),
    note: label.optional(),
  })
  .refine(...rule((i: { to: string; into?: string | undefined }) => (i.to === 'vessel') === (i.into !== undefined), 'issue-into'))
  .refine(...rule((i: { vessel: string; into?: string | undefined }) => i.vessel !== i.into, 'issue-into-itself'));

export const returned = z.strictObject({
  vessel: id,
  from: z.enum(circuitParts),
  weight,
  /** How it was got: drained from a trap, drawn from the pan. */
  how: label.optional(),
  battery: id.optional(),
});

/** Mercury or residues that were on no book: under a floor, in a wall, in an old flask. */
export const found = z.strictObject({
  where: label,
  what: z.enum(['mercury', 'residue']),
  weight,
  /** The vessel or drum it went to. */
  vessel: id,
  /** Mercury as a share of what was weighed, with its standard uncertainty; left out for mercury. */
  share: z.strictObject({ value: z.number().min(0).max(1), u: positive.max(1).optional(), basis: label.optional() }).optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});

export const spill = z.strictObject({
  where: label,
  /** What is thought to have run out; left out: not known. */
  lost: weight.optional(),
  /** Where it ran out of. */
  vessel: id.optional(),
  recovered: z.strictObject({ weight, vessel: id }).optional(),
  /** Whether the amount lies inside an issue that was booked: then it is not taken from the vessel again. */
  insideIssue: z.enum(['yes', 'no', 'na']),
  cleaned: label.optional(),
  told: label.optional(),
  note: label.optional(),
});
