/** What else a site writes down: incidents, open days with visitors by count, checks of scales, checks that fall due. Never the result of a medical test. */
import { answer, checked, day, id, label, mass, prose, someMass } from '../shapes.ts';
import { z } from '../zod.ts';

export const incident = z.strictObject({
  what: prose,
  where: label.optional(),
  /** People by role or from the register. */
  people: z.array(id).max(12).optional(),
  done: prose.optional(),
  told: label.optional(),
  /** Medical assessment advised: yes, no, does not apply. */
  assessment: answer.optional(),
});

export const openDay = z.strictObject({
  visitors: z.number().int().min(0).max(100000),
  children: z.number().int().min(0).max(100000).optional(),
  areas: label,
  covered: label.optional(),
  guides: z.array(id).max(12).optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});

export const scaleCheck = z.strictObject({
  scale: id,
  /** The check weight and what the scale showed. */
  standard: someMass,
  read: mass,
  /** By the site's own limit. */
  passed: z.enum(['yes', 'no']),
  limit: mass.optional(),
  note: label.optional(),
});

export const checkDueThings = [
  'health-surveillance',
  'respirator-fit',
  'extraction-test',
  'extinguisher',
  'training',
  'other',
] as const;

export const checkDue = z.strictObject({
  what: z.enum(checkDueThings),
  /** For whom; only the date and whether it was done. */
  person: id.optional(),
  done: z.enum(['yes', 'no']),
  next: day.optional(),
  note: label.optional(),
});
