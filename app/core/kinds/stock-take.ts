/**
 * A count of what is there: every sealed flask by its seal, every working vessel weighed, the circuit by a named estimating method. A line that
 * cannot be answered says why, and then stands as a reservation.
 */
import { label, weight } from '../shapes.ts';
import { z } from '../zod.ts';
import { estimate } from './plate-work.ts';

const line = z.discriminatedUnion('how', [
  z.strictObject({ how: z.literal('sealed'), place: label, seal: label }),
  z.strictObject({ how: z.literal('weighed'), place: label, weight }),
  z.strictObject({ how: z.literal('estimated'), place: label, estimate }),
  z.strictObject({ how: z.literal('unanswered'), place: label, why: label }),
]);

export const stockTake = z.strictObject({ lines: z.array(line).min(1).max(200), note: label.optional() });
