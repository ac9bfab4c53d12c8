/** Mercury fed to the circuit and gathered from it: issues, returns, plate work, and the amalgam of clean-ups. */

import type { LotSource } from '../../kinds/clean-up.ts';
import type { CircuitPart } from '../../kinds/mercury.ts';
import { circuitPlace, lotPlace, outside, vesselPlace } from '../places.ts';
import { estimated } from './estimates.ts';
import { type Gathering, move, readOrStated } from './gathering.ts';

/** The part of the circuit a lot was gathered from. */
const partOf: Readonly<Record<LotSource, CircuitPart>> = {
  'inside-plate': 'plates',
  'outside-plate': 'plates',
  mortar: 'mortar',
  trap: 'trap',
  pan: 'pan',
  concentrate: 'pan',
  scale: 'plates',
  floor: 'trap',
  several: 'plates',
};

export const partFor = (source: LotSource | null): CircuitPart => (source === null ? 'plates' : partOf[source]);

export function circuitMovements(g: Gathering): void {
  for (const reading of g.current.of('issue')) {
    const { vessel, to, into, weight } = reading.body;
    move(
      g,
      reading,
      vesselPlace(vessel),
      to === 'vessel' ? vesselPlace(into ?? vessel) : circuitPlace(to),
      g.inVessel(g.weigh(weight, reading, 'weight').net, vessel, reading.happened),
      readOrStated(weight),
    );
  }
  for (const reading of g.current.of('return')) {
    const { vessel, from, weight } = reading.body;
    move(
      g,
      reading,
      circuitPlace(from),
      vesselPlace(vessel),
      g.inVessel(g.weigh(weight, reading, 'weight').net, vessel, reading.happened),
      'weighed',
    );
  }
  for (const reading of g.current.of('clean-up')) {
    for (const lot of reading.body.lots) gathered(g, reading.id, lot.key, partFor(lot.source ?? null));
    const { strained } = reading.body;
    if (strained) {
      const net = g.weigh(strained.weight, reading, 'strained.weight').net;
      move(
        g,
        reading,
        circuitPlace('plates'),
        vesselPlace(strained.vessel),
        g.inVessel(net, strained.vessel, reading.happened),
        'weighed',
      );
    }
  }
  for (const reading of g.current.of('plate-work')) {
    const { applied, what, held } = reading.body;
    if (applied) {
      const net = g.weigh(applied.weight, reading, 'applied.weight').net;
      move(
        g,
        reading,
        vesselPlace(applied.vessel),
        circuitPlace('plates'),
        g.inVessel(net, applied.vessel, reading.happened),
        readOrStated(applied.weight),
      );
    }
    for (const lot of reading.body.made ?? []) gathered(g, reading.id, lot.key, 'plates');
    if (what === 'sold' && held)
      move(g, reading, circuitPlace('plates'), outside, estimated(held, `estimate:${reading.id}`), 'estimated');
  }
}

function gathered(g: Gathering, entry: string, key: string, part: CircuitPart): void {
  const lot = g.lots.all.get(`${entry}/${key}`);
  const mercury = lot && g.lotMercuries.get(lot.id);
  const reading = g.current.byId.get(entry);
  if (lot && mercury && reading) move(g, reading, circuitPlace(part), lotPlace(lot.id), mercury.mercury, mercury.basis);
}
