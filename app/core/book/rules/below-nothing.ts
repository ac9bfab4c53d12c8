/**
 * A thing weighs no less than nothing: a tare that is the heavier is a slip at the scale, or the two are swapped. What no scale can tell from
 * nothing is let through, for an emptied dish may read a division under its tare: a gap within twice the scatter of the two readings (coverage
 * factor 2, JCGM 100:2008, 6.3.3; repeatability and division as in `weighing.ts`). Without a scale on the book any gap counts.
 */
import { compare, type Decimal, minus, toNumber, zero } from '../../decimal.ts';
import { gramsFromText } from '../../mass.ts';
import type { Weight } from '../../shapes.ts';
import { scatterG } from '../../weighing.ts';
import { type Registers, stateAt } from '../registers.ts';
import { scaleData } from '../weights.ts';

const gramsOf = (text: string): Decimal => {
  const got = gramsFromText(text, '');
  return got.ok ? got.value : zero;
};

/** Whether this weighing comes to less than nothing, by more than its scale as it stood at `at` (a moment) can be out. */
export function belowNothing(weight: Weight, at: string, registers: Registers): boolean {
  if (weight.how !== 'scale' || weight.tare === undefined) return false;
  const [gross, tare] = [gramsOf(weight.gross), gramsOf(weight.tare)];
  if (compare(gross, tare) >= 0) return false;
  const thing = weight.scale === undefined ? undefined : registers.scale.get(weight.scale);
  if (!thing) return true;
  return toNumber(minus(tare, gross)) > 2 * scatterG({ gross, tare, scale: scaleData(stateAt(thing, at).body) });
}
