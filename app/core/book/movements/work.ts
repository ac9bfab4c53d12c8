/**
 * Cleaning and squeezing: lots or dirty amalgam and thinning mercury in, clean lots, strained mercury and residues out. What does not add up by
 * weight was lost in handling, and may or may not be mercury: it is bounded, not posted.
 */
import { less, type Measured, total } from '../../measured.ts';
import type { Current, Reading } from '../current.ts';
import { circuitPlace, lotPlace, residuePlace, vesselPlace, workPlace } from '../places.ts';
import type { Work } from '../shares.ts';
import { byShare } from './estimates.ts';
import { type Gathering, move, readOrStated } from './gathering.ts';

type Worked = Reading<'cleaning'> | Reading<'squeeze'>;
type Weigh = Gathering['weigh'];

const bodyOf = (reading: Worked) => reading.body as Reading<'cleaning'>['body'];

const residues = (reading: Worked, weigh: Weigh): { key: string; net: Measured; mercury: Measured }[] =>
  (['skimmings', 'iron'] as const).flatMap((key) => {
    const residue = bodyOf(reading)[key];
    if (!residue) return [];
    const net = weigh(residue.weight, reading, `${key}.weight`).net;
    return [{ key, net, mercury: byShare(net, undefined, `share:${reading.id}:${key}`) }];
  });

/** Every cleaning and squeezing, for the shares of the lots that went into it. */
export function worksOf(current: Current, weigh: Weigh, inVessel: Gathering['inVessel']): Work[] {
  return [...current.of('cleaning'), ...current.of('squeeze')].map((reading): Work => {
    const { lots, dirty, added, made, strained } = bodyOf(reading);
    const at = reading.happened;
    const out = total([
      ...(strained ? [inVessel(weigh(strained.weight, reading, 'strained.weight').net, strained.vessel, at)] : []),
      ...residues(reading, weigh).map((r) => r.mercury),
    ]);
    return {
      entry: reading.id,
      inputs: lots ?? [],
      dirty: dirty ? weigh(dirty.weight, reading, 'dirty.weight').net : null,
      made: made.map((lot) => `${reading.id}/${lot.key}`),
      otherwise: added ? less(out, inVessel(weigh(added.weight, reading, 'added.weight').net, added.vessel, at)) : out,
    };
  });
}

export function workMovements(g: Gathering, works: readonly Work[]): void {
  for (const work of works) {
    const reading = g.current.byId.get(work.entry) as Worked | undefined;
    if (!reading) continue;
    const at = workPlace(work.entry);
    const { added, dirty, made, strained } = bodyOf(reading);
    let inWeight = total(work.inputs.flatMap((id) => g.lots.all.get(id)?.net ?? []));
    const ins: Measured[] = [];
    for (const id of work.inputs) {
      const mercury = g.lotMercuries.get(id);
      if (!mercury || g.lots.all.get(id)?.charge !== work.entry) continue;
      ins.push(mercury.mercury);
      move(g, reading, lotPlace(id), at, mercury.mercury, mercury.basis);
    }
    if (added) {
      const net = g.weigh(added.weight, reading, 'added.weight').net;
      inWeight = total([inWeight, net]);
      const mercury = g.inVessel(net, added.vessel, reading.happened);
      ins.push(mercury);
      move(g, reading, vesselPlace(added.vessel), at, mercury, readOrStated(added.weight));
    }
    const outs: Measured[] = [];
    let outWeight = total([]);
    for (const lot of made) {
      const id = `${work.entry}/${lot.key}`;
      const mercury = g.lotMercuries.get(id);
      outWeight = total([outWeight, g.lots.all.get(id)?.net ?? total([])]);
      if (!mercury) continue;
      outs.push(mercury.mercury);
      move(g, reading, at, lotPlace(id), mercury.mercury, mercury.basis);
    }
    if (strained) {
      const net = g.weigh(strained.weight, reading, 'strained.weight').net;
      outWeight = total([outWeight, net]);
      const mercury = g.inVessel(net, strained.vessel, reading.happened);
      outs.push(mercury);
      move(g, reading, at, vesselPlace(strained.vessel), mercury, 'weighed');
    }
    for (const residue of residues(reading, g.weigh)) {
      outWeight = total([outWeight, residue.net]);
      outs.push(residue.mercury);
      move(g, reading, at, residuePlace(`${work.entry}/${residue.key}`), residue.mercury, 'estimated');
    }
    // dirty amalgam straight from the circuit held what came out and was not put in
    const rest = less(total(outs), total(ins));
    if (dirty || work.inputs.length === 0) {
      if (dirty) inWeight = total([inWeight, work.dirty ?? total([])]);
      move(g, reading, circuitPlace(dirty?.from ?? 'plates'), at, rest, 'difference');
    }
    const lost = inWeight.ug - outWeight.ug;
    if (lost > 0) g.bounds.push({ path: 'handling', entry: work.entry, at: reading.happened, lowUg: 0, highUg: lost });
  }
}
