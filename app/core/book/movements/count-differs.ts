/**
 * A place that is counted far from its book. It is told by itself, because one rough estimate elsewhere can hide it in the sum of the whole site.
 * The limit is the one a whole account acts on, three standard uncertainties (methods.md 1).
 */

import { type Measured, uOf } from '../../measured.ts';
import { type Flag, flag } from '../flags.ts';
import { placeParts } from '../places.ts';
import { latest } from '../registers.ts';
import type { Gathering } from './gathering.ts';

const limit = 3;

/** The flag of a difference in micrograms beyond the limit, either sign; null within it, or where nothing says how sure it is. */
export function differs(g: Pick<Gathering, 'registers' | 'lots'>, entry: string, place: string, gain: Measured): Flag | null {
  const u = uOf(gain);
  if (!(u > 0) || Math.abs(gain.ug) <= limit * u) return null;
  const { kind, of } = placeParts(place);
  const vessel = kind === 'vessel' ? g.registers.vessel.get(of) : undefined;
  const name = vessel ? latest(vessel).body.label : kind === 'lot' ? (g.lots.all.get(of)?.label ?? of) : of;
  return flag('count-differs', entry, {
    place,
    name,
    ug: Math.round(gain.ug),
    z: (gain.ug / u).toFixed(1).replace('-', '\u2212'),
  });
}
