/**
 * Charges and firings: lots into the retort, mercury out of it into a vessel, what is left in the sponge, and the gap, which goes to the retort's own
 * condenser first. Melting drives the sponge's mercury off. An open run moves nothing but its charge: no figure is invented for it.
 */
import { exactly, less, type Measured, total, withMass } from '../../measured.ts';
import { compareMoments } from '../../time.ts';
import { firedAt } from '../charges.ts';
import type { Reading } from '../current.ts';
import { chargePlace, condenserPlace, lossPlace, lotPlace, outside, spongePlace, vesselPlace } from '../places.ts';
import { type Run, runsByCharge } from '../runs.ts';
import { type Gathering, move } from './gathering.ts';

export function runMovements(g: Gathering): void {
  for (const run of g.runs) {
    charged(g, run);
    fired(g, run);
  }
  for (const retort of g.registers.retort.values())
    for (const state of retort.states) {
      const { brushed } = state.body;
      const reading = g.current.byId.get(state.entry);
      if (!brushed || !reading || retort.states.find((s) => s.body.brushed?.on === brushed.on) !== state) continue;
      const net = g.weigh(brushed.got, reading, 'brushed.got').net;
      const at = `${brushed.on}T12:00+00:00`;
      move(
        g,
        reading,
        condenserPlace(retort.id),
        brushed.vessel === undefined ? lossPlace('handling') : vesselPlace(brushed.vessel),
        net,
        'weighed',
        at,
      );
      const step = g.condensers.get(retort.id)?.stepBy.get(state.entry);
      // the book held it and the brush did not find it: lost at the retort; beyond the book it comes from there, or was there before the first run
      const short = step ? step.lostUg + step.unexplainedUg : 0;
      const other = g.condensers.get(retort.id)?.steps[0] === step && short < 0 ? outside : lossPlace('retort');
      if (short > 0) move(g, reading, condenserPlace(retort.id), other, exactly(short), 'difference', at);
      if (short < 0) move(g, reading, other, condenserPlace(retort.id), exactly(-short), 'difference', at);
    }
  for (const reading of g.current.of('melt')) {
    let held: Measured = exactly(0);
    for (const { charge } of reading.body.sponges) {
      const run = runsByCharge(g.runs).get(charge);
      const mercury = run && g.runMercuries.get(run.id);
      if (!run || !mercury || run.charges[0]?.id !== charge) continue;
      held = total([held, mercury.inSponge]);
      move(g, reading, spongePlace(run.id), lossPlace('melt'), mercury.inSponge, 'estimated');
    }
    const shrinkage = meltShrinkageUg(g, reading.id);
    if (shrinkage !== null)
      g.bounds.push({
        path: 'melt',
        entry: reading.id,
        at: reading.happened,
        lowUg: Math.min(held.ug, 0),
        highUg: Math.max(shrinkage, 0),
      });
  }
}

/** What a melt lost in weight: sponges and added metal less bars and samples; null while a weight is missing. */
export function meltShrinkageUg(g: Pick<Gathering, 'current' | 'runs' | 'weigh'>, melt: string): number | null {
  const found = g.current.byId.get(melt);
  if (!found || found.struck || found.kind !== 'melt') return null;
  const reading = found as Reading<'melt'>;
  let inUg = 0;
  for (const [i, sponge] of reading.body.sponges.entries()) {
    const run = runsByCharge(g.runs).get(sponge.charge);
    const last = run?.charges.find((c) => c.id === sponge.charge)?.firings.findLast((f) => f.sponges.has(sponge.charge));
    const net = sponge.weight
      ? g.weigh(sponge.weight, reading, `sponges[${i}].weight`).net
      : last?.sponges.get(sponge.charge)?.net;
    if (!net) return null;
    inUg += net.ug;
  }
  for (const [i, piece] of (reading.body.added ?? []).entries())
    inUg += g.weigh(piece.weight, reading, `added[${i}].weight`).net.ug;
  for (const [i, piece] of reading.body.bars.entries()) inUg -= g.weigh(piece.weight, reading, `bars[${i}].weight`).net.ug;
  for (const [i, piece] of (reading.body.samples ?? []).entries())
    inUg -= g.weigh(piece.weight, reading, `samples[${i}].weight`).net.ug;
  return inUg;
}

function charged(g: Gathering, run: Run): void {
  for (const charge of run.charges) {
    for (const row of charge.rows) {
      const mercury = row.lot && g.lotMercuries.get(row.lot.id);
      if (!row.lot || !mercury || row.take === 'not-found' || row.lot.charge !== charge.id) continue;
      // a part: the whole lot becomes its two children as it is split
      if (row.take === 'part' && row.lot.parent !== null) {
        const parent = row.lot.parent;
        for (const letter of ['a', 'b']) {
          const child = `${charge.id}/${row.key}${letter}`;
          move(g, charge.reading, lotPlace(parent), lotPlace(child), g.lotMercuries.get(child)?.mercury ?? exactly(0), 'sibling');
        }
      }
      move(g, charge.reading, lotPlace(row.lot.id), chargePlace(run.id), mercury.mercury, mercury.basis);
    }
    for (const other of charge.others) {
      if (other.what !== 'mercury') continue;
      const vessel = charge.reading.body.others?.find((o) => o.key === other.key)?.vessel;
      move(
        g,
        charge.reading,
        vessel === undefined ? outside : vesselPlace(vessel),
        chargePlace(run.id),
        other.weighed.net,
        'weighed',
      );
    }
  }
}

function fired(g: Gathering, run: Run): void {
  const mercury = g.runMercuries.get(run.id);
  if (!mercury) return;
  const firings = [...new Set(run.charges.flatMap((c) => c.firings))].sort((a, b) => compareMoments(firedAt(a), firedAt(b)));
  for (const firing of firings) {
    const vessel = firing.reading.body.mercury?.vessel;
    if (!firing.mercury || vessel === undefined) continue;
    const net = g.inVessel(firing.mercury.net, vessel, firing.reading.happened);
    move(g, firing.reading, chargePlace(run.id), vesselPlace(vessel), net, 'weighed');
    const gold = less(firing.mercury.net, net);
    // gold counted as mercury when it was caught leaves with it
    if (gold.ug !== 0 || gold.parts.size > 0) move(g, firing.reading, chargePlace(run.id), outside, gold, 'estimated');
  }
  const last = firings.at(-1);
  if (!last) return;
  const at = firedAt(last);
  move(g, last.reading, chargePlace(run.id), spongePlace(run.id), mercury.inSponge, 'estimated', at);
  if (mercury.waterOrMercuryUg !== null) {
    g.bounds.push({ path: 'retort', entry: last.id, at, lowUg: 0, highUg: mercury.waterOrMercuryUg });
    return;
  }
  const step = g.condensers.get(run.retort)?.stepBy.get(run.id);
  const lost = step ? step.lostUg + step.unexplainedUg : mercury.gap.ug;
  const held = mercury.gap.ug - lost;
  if (held !== 0) move(g, last.reading, chargePlace(run.id), condenserPlace(run.retort), exactly(held), 'difference', at);
  move(g, last.reading, chargePlace(run.id), lossPlace('retort'), withMass(mercury.gap, lost), 'difference', at);
  // nobody said that the charge was dry and nobody weighed its water: as much of the gap as nobody knows may be water
  const dry = run.last?.waterKnown || run.charges.every((c) => c.reading.body.dry === 'yes');
  if (!dry && lost > 0) g.bounds.push({ path: 'retort', entry: last.id, at, lowUg: -lost, highUg: 0 });
}
