/** `reckon old-assay`: carats better or worse than 22, or carats themselves, as fineness; with a weight, what it holds and its weight as standard gold. */

import { gramsPer } from '../mass.ts';
import { caratsOf, permilleOfCarats, standardOf } from '../old-assay.ts';
import { oldNumber } from '../old-number.ts';
import { asRatio, over, type Ratio, timesRatio, toDouble } from '../ratio.ts';
import { bad, good, problem } from '../result.ts';
import { z } from '../zod.ts';
import { ratioOr } from './answer.ts';
import { grams, through, topic } from './input.ts';

const belowFour = { n: 4n, d: 1n };

/** Carat-grains as an old book prints them. */
const caratGrains = through<Ratio>((value, field) => {
  if (typeof value !== 'string') return bad(problem('wrong-type', field, { wanted: 'string' }));
  const read = oldNumber(value);
  if (!read) return bad(problem('old-number', field, { read: value.slice(0, 60) }));
  return read.n < belowFour.n * read.d ? good(read) : bad(problem('carat-grains', field));
});

/** A report in carats; its fineness is within nothing and fine gold. */
export const oldAssay = z
  .strictObject({
    side: z.enum(['better', 'worse']).optional(),
    carats: z.int().min(0).max(24),
    grains: caratGrains.optional(),
    quarters: z.int().min(0).max(3).optional(),
  })
  .refine(({ grains, quarters }) => quarters === undefined || grains === undefined || grains.d === 1n, {
    path: ['quarters'],
    params: { code: 'quarters-twice' },
  })
  .transform((told, context) => {
    const { side, carats, grains = { n: 0n, d: 1n }, quarters = 0 } = told;
    const found = caratsOf({ side, carats, grains, quarters });
    if (found) return found;
    context.issues.push({ code: 'custom', path: ['carats'], params: { code: 'carats-range' }, message: '', input: carats });
    return z.NEVER;
  });

const schema = z.strictObject({ assay: oldAssay, mass: grams.optional() });

export const oldAssayTopic = topic(schema, ({ assay, mass }) => {
  const part = timesRatio(assay, { n: 1n, d: 24n });
  const fine = mass && timesRatio(asRatio(mass), part);
  return good({
    carats: toDouble(assay),
    gold_permille: toDouble(permilleOfCarats(assay)),
    fine_part: `${part.n}/${part.d}`,
    ...(fine && {
      fine_gold_g: toDouble(fine),
      standard_g: toDouble(standardOf(fine)),
      standard_ozt: ratioOr(over(standardOf(fine), asRatio(gramsPer.ozt)), 'over-nothing'),
    }),
  });
});
