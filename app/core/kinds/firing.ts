/**
 * One firing of a retort: what was left behind and what was caught. A second firing of the same charge is a re-fire and belongs to that charge;
 * charges fired one after another into one receiver are caught together, and the mercury is one figure for all of them. A firing may be written
 * up before its charge: its heat then names no charge, stands as an open end, and is corrected once the charge is written.
 */
import { checked, id, label, moment, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const spongeColours = ['yellow', 'grey', 'white', 'black'] as const;

/** What can be turned on and off along the fire. */
export const turned = ['on', 'off'] as const;

export const firing = z.strictObject({
  heats: z
    .array(z.strictObject({ charge: id.optional(), sponge: weight.optional(), colour: z.enum(spongeColours).optional() }))
    .min(1)
    .max(12),
  /** Which retort, where no charge says it. */
  retort: id.optional(),
  lit: moment.optional(),
  firstMercury: moment.optional(),
  lastMercury: moment.optional(),
  /** Finishing heat from and to. */
  finishFrom: moment.optional(),
  finishTo: moment.optional(),
  opened: moment.optional(),
  /** Written down along the fire, each under its own time: a temperature read at the retort, cooling water or fire turned on or off, anything seen. */
  noted: z
    .array(
      z.strictObject({
        at: moment,
        temperatureC: z.number().min(-60).max(1300).optional(),
        water: z.enum(turned).optional(),
        fire: z.enum(turned).optional(),
        what: label.optional(),
      }),
    )
    .max(200)
    .optional(),
  /** The temperatures it was meant to be held between in the main run, as the site set them. */
  aimedC: z.strictObject({ from: z.number().min(0).max(1300), to: z.number().min(0).max(1300) }).optional(),
  /** How it was known that it had cooled: a temperature measured at the retort, or only that it stood. Left out: not recorded. */
  opening: z
    .union([
      z.strictObject({ measuredC: z.number().min(-60).max(900) }),
      z.strictObject({ stoodHours: z.number().min(0).max(2000) }),
    ])
    .optional(),
  /** The mercury caught and the vessel it went to. Left out: not weighed yet. */
  mercury: z.strictObject({ weight, vessel: id, state: z.enum(['dry', 'wet', 'unknown']).optional() }).optional(),
  /** Water that came over, if it was weighed. Left out: not known. */
  water: weight.optional(),
  fuel: label.optional(),
  /** Smoke, smell or stain seen at the lute. */
  lute: label.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});
