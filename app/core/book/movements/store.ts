/** Mercury that comes in, goes out, is found, spilled or set aside as waste: everything between the outside and the vessels. */
import type { Measured } from '../../measured.ts';
import type { Reading } from '../current.ts';
import { circuitPlace, foundPlace, lossPlace, lotPlace, outside, spongePlace, vesselPlace } from '../places.ts';
import { runsByCharge } from '../runs.ts';
import { priorShare } from '../shares.ts';
import { residualAt } from '../site-figures.ts';
import { byShare } from './estimates.ts';
import { type Gathering, move, readOrStated } from './gathering.ts';

export function storeMovements(g: Gathering): void {
  for (const reading of g.current.of('receipt')) {
    const { weight, vessel } = reading.body;
    const net = g.weigh(weight, reading, 'weight').net;
    move(g, reading, outside, vesselPlace(vessel), g.inVessel(net, vessel, reading.happened), readOrStated(weight));
  }
  for (const reading of g.current.of('found')) {
    const { weight, vessel, what, share } = reading.body;
    const net = g.weigh(weight, reading, 'weight').net;
    const mercury =
      what === 'mercury' && share === undefined
        ? g.inVessel(net, vessel, reading.happened)
        : byShare(net, share, `share:${reading.id}`);
    move(g, reading, foundPlace, vesselPlace(vessel), mercury, what === 'mercury' ? 'weighed' : 'estimated');
  }
  for (const reading of g.current.of('spill')) spilled(g, reading);
  for (const reading of g.current.of('waste')) {
    const { weight, drum, share, from, vessel } = reading.body;
    // one drum, one share: what goes in by it goes out by it, with the same error
    const mercury = byShare(g.weigh(weight, reading, 'weight').net, share, `share:${drum}`);
    const source =
      from === 'vessel' && vessel !== undefined
        ? vesselPlace(vessel)
        : from === undefined || from === 'floor' || from === 'vessel'
          ? lossPlace('handling')
          : circuitPlace(from);
    move(g, reading, source, vesselPlace(drum), mercury, 'estimated');
  }
  for (const reading of g.current.of('transfer')) handedOver(g, reading);
}

function spilled(g: Gathering, reading: Reading<'spill'>): void {
  const { lost, recovered, vessel, insideIssue } = reading.body;
  const from =
    insideIssue === 'yes' ? circuitPlace('plates') : vessel !== undefined ? vesselPlace(vessel) : lossPlace('unaccounted');
  if (lost) {
    const net = g.weigh(lost, reading, 'lost').net;
    move(
      g,
      reading,
      from,
      lossPlace('spill'),
      vessel === undefined ? net : g.inVessel(net, vessel, reading.happened),
      lost.how === 'scale' ? 'weighed' : 'stated',
    );
  }
  if (recovered) {
    const net = g.weigh(recovered.weight, reading, 'recovered.weight').net;
    // what was gathered up came from the spill; where nobody said how much ran out, it came from where that was
    move(
      g,
      reading,
      lost ? lossPlace('spill') : from,
      vesselPlace(recovered.vessel),
      g.inVessel(net, recovered.vessel, reading.happened),
      'weighed',
    );
  }
}

/** Mercury in what was handed over where nobody stated a share: null where it holds none that counts, undefined where nobody can tell. */
const usualShare: Readonly<
  Record<Exclude<Reading<'transfer'>['body']['what'], 'sponge'>, { value: number; u: number } | null | undefined>
> = {
  mercury: { value: 1, u: 0 },
  amalgam: { value: priorShare.middle, u: priorShare.u },
  bar: null,
  plate: null,
  waste: undefined,
};

/** Waste that left, and nobody said whether it counts as a disposal or as a loss. */
export const asksWhich = ({ way, what, counts }: Reading<'transfer'>['body']): boolean =>
  way === 'out' && what === 'waste' && counts === undefined;

/** What of the book a transfer takes along, and how much mercury that is. */
function handedOver(g: Gathering, reading: Reading<'transfer'>): void {
  const { way, what, vessel, lot, charge, weight, share, counts } = reading.body;
  const net = weight ? g.weigh(weight, reading, 'weight').net : null;
  const place =
    lot !== undefined
      ? lotPlace(lot)
      : charge !== undefined
        ? spongePlace(charge)
        : vessel !== undefined
          ? vesselPlace(vessel)
          : null;
  const away = counts === 'loss' ? lossPlace('sent-away') : outside;
  const left = residualAt(g.current, reading.happened);
  const usual = what === 'sponge' ? { value: left.middle, u: left.u } : usualShare[what];
  let mercury: Measured | null = null;
  if (lot !== undefined && share === undefined) mercury = g.lotMercuries.get(lot)?.mercury ?? null;
  else if (charge !== undefined && share === undefined)
    mercury = g.runMercuries.get(runsByCharge(g.runs).get(charge)?.id ?? '')?.inSponge ?? null;
  else if (net && what === 'mercury' && share === undefined)
    mercury = vessel === undefined ? net : g.inVessel(net, vessel, reading.happened);
  else if (net && (share !== undefined || usual !== null))
    mercury = byShare(net, share ?? usual ?? undefined, `share:${vessel ?? reading.id}`);
  if (mercury === null) return;
  // sweepings sent away are a loss or a disposal: posted as handed over until somebody says, and bounded as lost
  if (asksWhich(reading.body))
    g.bounds.push({ path: 'sent-away', entry: reading.id, at: reading.happened, lowUg: 0, highUg: Math.max(0, mercury.ug) });
  if (way === 'in')
    move(g, reading, outside, place ?? lossPlace('unaccounted'), mercury, weight?.how === 'scale' ? 'weighed' : 'stated');
  else
    move(
      g,
      reading,
      place ?? lossPlace('handling'),
      away,
      mercury,
      what === 'mercury' && weight ? readOrStated(weight) : 'estimated',
    );
}
