/** Work on a plate: what was done, what mercury was put on or came off, and what it is thought to hold before and after. */
import { checked, id, label, mass, positive, someMass, weight } from '../shapes.ts';
import { z } from '../zod.ts';
import { madeLots } from './cleaning.ts';

export const plateDoings = ['set', 'silvered', 'scaled', 'steamed', 'stripped', 'taken-up', 'sold'] as const;

/** Mercury held, estimated: the method is named, and its shared and own standard uncertainty are shares of the estimate. */
export const estimate = z.strictObject({
  mass,
  method: label,
  sharedU: positive.max(2).optional(),
  ownU: positive.max(2).optional(),
});

export const plateWork = z.strictObject({
  plate: id,
  what: z.enum(plateDoings),
  held: estimate.optional(),
  holds: estimate.optional(),
  applied: z.strictObject({ weight, vessel: id }).optional(),
  /** Scale or amalgam got. */
  made: madeLots.optional(),
  silver: someMass.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});
