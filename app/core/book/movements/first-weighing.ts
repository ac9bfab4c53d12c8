/**
 * The first weighing of a vessel that came under seal: whether its difference can be laid to the supplier's figure. It books nothing itself and calls
 * no difference a loss (cases.md 9).
 */
import type { Measured } from '../../measured.ts';
import { compareMoments } from '../../time.ts';
import { type Flag, flag } from '../flags.ts';
import { placeParts } from '../places.ts';
import { latest } from '../registers.ts';
import type { Gathering, Movement } from './gathering.ts';

/**
 * What the book of a vessel rests on until a scale has shown it. `supplier`: it came under seal by somebody's figure, and whatever was poured from it was
 * weighed, so what is left is that figure less the draws. `mixed`: something went in or out that no scale showed, and a difference can no longer be told
 * from it. Null: it never came under seal by a figure.
 */
export function restsOn(g: Gathering, place: string, vessel: string, at: string): 'supplier' | 'mixed' | null {
  const came = g.current.of('receipt').filter((r) => r.body.vessel === vessel && compareMoments(r.happened, at) <= 0);
  const sealed = came.some((r) => r.body.seal !== undefined);
  const registered = g.registers.vessel.get(vessel)?.states.some((s) => s.body.seal !== undefined) ?? false;
  if (!(sealed || registered) || !came.some((r) => r.body.weight.how === 'stated')) return null;
  const touching = g.movements.filter((m) => (m.from === place || m.to === place) && compareMoments(m.at, at) <= 0);
  const known = (m: Movement) => came.some((r) => r.id === m.entry) || (m.from === place && m.basis === 'weighed');
  return touching.length === 0 ? null : touching.every(known) ? 'supplier' : 'mixed';
}

/** The first weighing of a flask whose supplier's figure nobody can check any more: its difference is not accounted for, and may be that figure's. */
export function poured(g: Gathering, entry: string, place: string, gain: Measured): Flag {
  const { of } = placeParts(place);
  const vessel = g.registers.vessel.get(of);
  return flag('poured-unweighed', entry, { place, name: vessel ? latest(vessel).body.label : of, ug: Math.round(gain.ug) });
}
