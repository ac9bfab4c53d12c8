/**
 * Amalgam cleaned and squeezed: what went in, what came out, and the vessels the mercury came from and went to. Parts that weigh more than went in
 * are kept and flagged.
 */
import { checked, id, label, partId, partKey, weight } from '../shapes.ts';
import { z } from '../zod.ts';
import { lotSources, lotStates } from './clean-up.ts';
import { circuitParts } from './mercury.ts';

/** Balls or lots made. */
export const madeLots = z
  .array(
    z.strictObject({
      key: partKey,
      label,
      weight,
      state: z.enum(lotStates).optional(),
      source: z.enum(lotSources).optional(),
      seal: label.optional(),
    }),
  )
  .max(60);

const residue = z.strictObject({ weight, label: label.optional() });

export const cleaning = z.strictObject({
  /** Dirty amalgam in: lots of the safe, or straight from the circuit. */
  lots: z.array(partId).max(60).optional(),
  dirty: z.strictObject({ weight, from: z.enum(circuitParts) }).optional(),
  /** Mercury used to thin it, and the vessel it came from. */
  added: z.strictObject({ weight, vessel: id }).optional(),
  made: madeLots,
  strained: z.strictObject({ weight, vessel: id }).optional(),
  skimmings: residue.optional(),
  iron: residue.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});

export const squeeze = z.strictObject({
  lots: z.array(partId).min(1).max(60),
  made: madeLots.min(1),
  strained: z.strictObject({ weight, vessel: id }).optional(),
  through: label.optional(),
  note: label.optional(),
});
