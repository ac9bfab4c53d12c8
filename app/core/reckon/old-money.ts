/** `reckon old-money`: pounds, shillings and pence read exactly; as a price of an ounce, what a weight of gold came to at it. */
import { fine } from '../bullion.ts';
import { gramsPer } from '../mass.ts';
import { permilleOfCarats, standardOf } from '../old-assay.ts';
import { moneyText, penceOf, poundsFromText } from '../old-money.ts';
import { asRatio, over, type Ratio, timesRatio, toDouble } from '../ratio.ts';
import { bad, good, problem } from '../result.ts';
import { z } from '../zod.ts';
import { grams, permille, through, topic } from './input.ts';
import { oldAssay } from './old-assay.ts';

const thousandth: Ratio = { n: 1n, d: 1000n };

const schema = z.strictObject({
  money: through<Ratio>(poundsFromText),
  per: z.enum(['ounce', 'standard-ounce', 'fine-ounce']).optional(),
  mass: grams.optional(),
  gold_permille: permille.optional(),
  assay: oldAssay.optional(),
});

/** Pounds, pence and both in words under names that begin with `as`. */
const amount = (as: string, pounds: Ratio) => ({
  [`${as}pounds`]: toDouble(pounds),
  [`${as}pence`]: toDouble(penceOf(pounds)),
  [`${as}text`]: moneyText(pounds),
});

export const oldMoneyTopic = topic(schema, ({ money, per, mass, gold_permille: gold, assay }) => {
  const finePounds = per === 'fine-ounce' ? money : per === 'standard-ounce' ? timesRatio(money, { n: 12n, d: 11n }) : null;
  const ounce = asRatio(gramsPer.ozt);
  const said = {
    ...amount('', money),
    ...(finePounds && {
      ...amount('fine_ozt_', finePounds),
      fine_g_pounds: toDouble(over(finePounds, ounce) ?? finePounds),
    }),
  };
  if (mass === undefined)
    return gold === undefined && assay === undefined ? good(said) : bad(problem('fineness-of-nothing', 'mass'));
  if (per === undefined) return bad(problem('price-of-what', 'per'));
  if (gold !== undefined && assay !== undefined) return bad(problem('fineness-twice', 'assay'));
  if (per === 'ounce') {
    // so much an ounce as it is weighed, whatever it holds
    const ounces = over(asRatio(mass), ounce) ?? ounce;
    return gold === undefined && assay === undefined
      ? good({ ...said, ...amount('worth_', timesRatio(ounces, money)) })
      : bad(problem('fineness-not-asked', gold === undefined ? 'assay' : 'gold_permille'));
  }
  const held =
    gold !== undefined
      ? asRatio(fine(mass, gold))
      : assay && timesRatio(asRatio(mass), timesRatio(permilleOfCarats(assay), thousandth));
  if (!held) return bad(problem('fineness-missing', 'gold_permille'));
  const counted = per === 'fine-ounce' ? held : standardOf(held);
  const ounces = over(counted, ounce) ?? counted;
  return good({ ...said, counted_ozt: toDouble(ounces), ...amount('worth_', timesRatio(ounces, money)) });
});
