/** `reckon melt`: what a melt lost, before and after the prills. */
import { meltFigures } from '../melt.ts';
import { good } from '../result.ts';
import { z } from '../zod.ts';
import { num, orReason } from './answer.ts';
import { grams, topic } from './input.ts';

const schema = z.strictObject({
  sponge: z.array(grams),
  added: z.array(grams).optional(),
  bars: z.array(grams),
  samples: z.array(grams).optional(),
  prills: grams.optional(),
});

export const meltTopic = topic(schema, (input) => {
  const melt = meltFigures(input);
  return good({
    in_g: num(melt.into),
    shrinkage_g: num(melt.shrinkage),
    shrinkage_of_in: orReason(melt.shrinkageOfIn, 'nothing-melted'),
    net_g: num(melt.net),
    net_of_in: orReason(melt.netOfIn, 'nothing-melted'),
    findings: melt.findings,
  });
});
