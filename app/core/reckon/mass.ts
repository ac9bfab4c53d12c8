/** `reckon mass`: one mass in other units and in troy notation. */
import { gramsFromText, massIn, massUnits, troyText } from '../mass.ts';
import { bad, good, problem } from '../result.ts';
import { z } from '../zod.ts';
import { grams, topic } from './input.ts';

const units = massUnits as readonly string[];

export const massTopic = topic(z.strictObject({ mass: grams, to: z.array(z.string()) }), ({ mass, to }) => {
  const problems = to.flatMap((unit, i) => {
    if (units.includes(unit)) return [];
    // a bare "oz" or "ton" gets the question it gets in a mass
    const asMass = gramsFromText(`1 ${unit}`, `to[${i}]`);
    return asMass.ok ? [problem('mass-unit', `to[${i}]`, { unit, units: units.join(' ') })] : asMass.problems.slice(0, 1);
  });
  if (problems.length > 0) return bad(...problems);
  const asked = massUnits.filter((unit) => to.includes(unit));
  return good({ ...Object.fromEntries(asked.map((unit) => [unit, massIn(mass, unit)])), text: troyText(mass) });
});
