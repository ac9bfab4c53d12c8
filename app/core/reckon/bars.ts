/** `reckon bars`: several bars as one lot. */
import { joined } from '../bullion.ts';
import { good } from '../result.ts';
import { z } from '../zod.ts';
import { num, ratioOr } from './answer.ts';
import { grams, permille, topic } from './input.ts';

const bar = z.strictObject({ mass: grams, gold_permille: permille, silver_permille: permille.optional() });

export const barsTopic = topic(z.strictObject({ bars: z.array(bar) }), ({ bars }) => {
  const lot = joined(bars.map((one) => ({ mass: one.mass, gold: one.gold_permille, silver: one.silver_permille })));
  return good({
    g: num(lot.mass),
    gold_permille: ratioOr(lot.gold, 'over-nothing'),
    ...(lot.silver !== undefined && { silver_permille: ratioOr(lot.silver, 'over-nothing') }),
    fine_gold_g: num(lot.fineGold),
    fine_gold_ozt: ratioOr(lot.fineOunces, 'over-nothing'),
    standard_ozt: ratioOr(lot.standardOunces, 'over-nothing'),
    mint_value_pounds: ratioOr(lot.mintPounds, 'over-nothing'),
  });
});
