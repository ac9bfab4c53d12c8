/** `reckon yield`: fine metal in a bar and the yield of its ore. */
import { basePermille, dwtPerLongTon, fine, perTonne } from '../bullion.ts';
import type { Decimal } from '../decimal.ts';
import { troyText } from '../mass.ts';
import { good } from '../result.ts';
import { z } from '../zod.ts';
import { num, ratioOr } from './answer.ts';
import { grams, permille, topic } from './input.ts';

const schema = z.strictObject({
  bar: grams,
  gold_permille: permille,
  silver_permille: permille.optional(),
  ore: grams.optional(),
});

export const yieldTopic = topic(schema, ({ bar, gold_permille: gold, silver_permille: silver, ore }) => {
  const fineGold = fine(bar, gold);
  const rate = (metal: Decimal) => (ore ? perTonne(metal, ore) : null);
  const [gross, finePerTonne] = [rate(bar), rate(fineGold)];
  return good({
    gross_g: num(bar),
    fine_gold_g: num(fineGold),
    ...(silver && { fine_silver_g: num(fine(bar, silver)), base_permille: num(basePermille(gold, silver)) }),
    gross_g_t: ratioOr(gross, 'no-ore'),
    fine_g_t: ratioOr(finePerTonne, 'no-ore'),
    gross_dwt_long_ton: ratioOr(gross && dwtPerLongTon(gross), 'no-ore'),
    fine_dwt_long_ton: ratioOr(finePerTonne && dwtPerLongTon(finePerTonne), 'no-ore'),
    fine_gold_text: troyText(fineGold),
  });
});
