/**
 * What the site itself asks at a piece of work, and when it stops one. A check list says what is asked besides the questions that come with the
 * program, what is worded otherwise and what is left out, and why; the later list of one work takes the place of the earlier from its time on, and
 * entries written before keep the names they carry. Stop rules are the site's own: none comes with the program, and none lets anybody go on.
 */
import { id, label, shortName } from '../shapes.ts';
import { z } from '../zod.ts';

/** The works that have questions of their own. */
export const works = [
  'run-before',
  'run-during',
  'run-after',
  'clean-up',
  'scaling',
  'plate-heat',
  'melting',
  'burning-off',
  'old-ground',
  'old-flask',
  'transport',
  'visitors',
] as const;
export type Work = (typeof works)[number];

const question = z.strictObject({ check: shortName, asks: label });

export const checkList = z.strictObject({
  work: z.enum(works),
  /** Asked besides, under names of the site's own. */
  added: z.array(question).max(40).optional(),
  /** Asked in other words, under the name it has. */
  worded: z.array(question).max(60).optional(),
  /** Not asked here. */
  leftOut: z
    .array(z.strictObject({ check: shortName, why: label }))
    .max(60)
    .optional(),
  /** Who looked the list over: a person of the register, or anybody by role. */
  reviewed: label.optional(),
  note: label.optional(),
});

/** What is watched for a stop. */
export const stopThings = ['reading', 'temperature', 'cooling', 'wind', 'people', 'other'] as const;

export const stopRules = z.strictObject({
  /** None: the site has taken its rules back. */
  rules: z.array(z.strictObject({ of: z.enum(stopThings), when: label, act: label.optional() })).max(12),
  /** The person of the site who set them. */
  setBy: id.optional(),
  note: label.optional(),
});
