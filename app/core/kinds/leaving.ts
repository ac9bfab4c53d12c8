/**
 * What leaves the site or comes to it from another, and what is set aside as waste. The other side's weight stands beside ours, later, and neither
 * overwrites the other. The record holds papers and numbers; whether a thing may travel is for licensed people to say.
 */
import { checked, day, id, label, partId, positive, weight } from '../shapes.ts';
import { z } from '../zod.ts';

export const transferThings = ['mercury', 'amalgam', 'sponge', 'bar', 'plate', 'waste'] as const;

/** Mercury as a share of a weight, how it is known, and its standard uncertainty. */
export const mercuryShare = z.strictObject({
  value: z.number().min(0).max(1),
  u: positive.max(1).optional(),
  basis: label.optional(),
});

export const transfer = z.strictObject({
  way: z.enum(['out', 'in']),
  what: z.enum(transferThings),
  /** The other party: who hands over or receives. */
  party: label,
  /** What moved: a vessel's content, a lot, a charge's sponge, a bar, a plate. */
  vessel: id.optional(),
  lot: partId.optional(),
  charge: id.optional(),
  bar: partId.optional(),
  plate: id.optional(),
  weight: weight.optional(),
  share: mercuryShare.optional(),
  /** For what: refining, disposal, loan, sale, return. Sweepings sent away: a loss, or a disposal with a measured content. */
  purpose: label.optional(),
  counts: z.enum(['disposal', 'loss']).optional(),
  document: label.optional(),
  carrier: label.optional(),
  seal: label.optional(),
  theirs: z.strictObject({ weight, on: day, document: label.optional() }).optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});

export const waste = z.strictObject({
  /** The drum it went into. */
  drum: id,
  what: label,
  weight,
  share: mercuryShare.optional(),
  /** Where the mercury in it came from; left out: the floor and bench. */
  from: z.enum(['mortar', 'plates', 'pan', 'trap', 'vessel', 'floor']).optional(),
  vessel: id.optional(),
  code: label.optional(),
  started: day.optional(),
  /** The day by which it must go, as the site's own rules have it. */
  due: day.optional(),
  note: label.optional(),
});
