/** `reckon weighing`: one weighing's net, its uncertainty in two parts, and the smallest net its scale can weigh. */
import { bad, good, problem } from '../result.ts';
import { belowMinimum, minimumG, netOf, scatterG, spanG, uOfWeighingG } from '../weighing.ts';
import { z } from '../zod.ts';
import { num, orReason } from './answer.ts';
import { decimal, grams, topic } from './input.ts';

const schema = z.strictObject({
  gross: grams,
  tare: grams.optional(),
  scale: z.strictObject({
    d: grams,
    s: grams.optional(),
    certificate_U: grams.optional(),
    certificate_k: decimal.optional(),
    certificate_at: grams.optional(),
    linearity: grams.optional(),
  }),
  tolerance: decimal.optional(),
});

export const weighingTopic = topic(schema, ({ gross, tare, scale: given, tolerance }) => {
  if (given.certificate_U && !given.certificate_at) return bad(problem('certificate-load', 'scale.certificate_at'));
  const scale = {
    d: given.d,
    s: given.s,
    certificateU: given.certificate_U,
    certificateK: given.certificate_k,
    certificateAt: given.certificate_at,
    linearity: given.linearity,
  };
  const weighing = { gross, tare, scale };
  const span = spanG(weighing);
  const why = tolerance ? 'over-nothing' : 'no-tolerance';
  return good({
    net_g: num(netOf(weighing)),
    u_g: orReason(uOfWeighingG(weighing), 'certificate-divisor'),
    random_u_g: scatterG(weighing),
    shared_u_g: orReason(span === null ? null : Math.abs(span), 'certificate-divisor'),
    minimum_g: orReason(tolerance ? minimumG(scale, tolerance) : null, why),
    below_minimum: orReason(tolerance ? belowMinimum(weighing, tolerance) : null, why),
  });
});
