/** `reckon density`: an indication of gold from two weighings. */
import { decimalFromText, zero } from '../decimal.ts';
import { densityOf, goldFromDensity } from '../density.ts';
import { good } from '../result.ts';
import { z } from '../zod.ts';
import { ratioOr } from './answer.ts';
import { decimalNotNegative, topic } from './input.ts';

/** Grams per cubic centimetre, where none is given. */
const usualAir = decimalFromText('0.0012') ?? zero;

const schema = z.strictObject({
  air_g: decimalNotNegative,
  water_g: decimalNotNegative,
  water_density: decimalNotNegative,
  air_density: decimalNotNegative.optional(),
  other: z.enum(['silver', 'copper']),
});

export const densityTopic = topic(schema, (input) => {
  const density = densityOf({
    air: input.air_g,
    water: input.water_g,
    waterDensity: input.water_density,
    airDensity: input.air_density ?? usualAir,
  });
  const { gold, findings } = goldFromDensity(density, input.other);
  return good({
    density_g_cm3: ratioOr(density, 'lighter-in-water'),
    gold_permille: ratioOr(gold, density ? 'outside-the-two-metals' : 'lighter-in-water'),
    class: 'indicative',
    findings,
  });
});
