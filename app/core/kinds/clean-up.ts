/** A clean-up: the amalgam gathered from plates, mortar, traps or pan, and the balls or lots it was made into. */
import { checked, id, label, partKey, positive, someMass, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const cleanUpTypes = ['routine', 'mid', 'general', 'final'] as const;
/** How far a lot has been freed of water and loose mercury. */
export const lotStates = ['scraped-wet', 'drained', 'squeezed', 'dried'] as const;
export type LotState = (typeof lotStates)[number];
/** Where the amalgam came from. */
export const lotSources = [
  'inside-plate',
  'outside-plate',
  'mortar',
  'trap',
  'pan',
  'concentrate',
  'scale',
  'floor',
  'several',
] as const;
export type LotSource = (typeof lotSources)[number];

export const cleanUp = z.strictObject({
  type: z.enum(cleanUpTypes),
  /** Which batteries or plates. */
  where: label.optional(),
  /** The one parcel it is of; left out: of whatever was crushed since the last of its type. */
  parcel: id.optional(),
  /** Ore put through since the last clean-up of this type, with the standard uncertainty as a share of it. */
  ore: z.strictObject({ mass: someMass, u: positive.max(1).optional() }).optional(),
  lots: z
    .array(
      z.strictObject({
        key: partKey,
        label,
        weight,
        state: z.enum(lotStates).optional(),
        source: z.enum(lotSources).optional(),
        /** The plate it was scraped from, or those it was scraped from together. Left out: which is not said. */
        plates: z.array(id).min(1).max(24).optional(),
        seal: label.optional(),
      }),
    )
    .min(1)
    .max(60),
  /** Mercury squeezed or drained off, and the vessel it went to. */
  strained: z.strictObject({ weight, vessel: id }).optional(),
  present: z.array(id).max(12).optional(),
  /** Seal or lock number of the place they were locked up in. */
  locked: label.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});
