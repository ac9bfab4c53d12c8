/** What the kinds of the working year may not say: unknown things, lots that are used up, one parcel with two tonnages on one day. */
import type { Body } from '../../kinds/index.ts';
import { dayOf } from '../../time.ts';
import { barPieces } from '../bar-pieces.ts';
import { usedUp } from '../lots.ts';
import type { Asking, Rules } from './asking.ts';

/** Lots that go into something must be there, each once. */
function lotsThere(ids: readonly string[] | undefined, field: string, asking: Asking): void {
  const seen = new Set<string>();
  for (const [i, id] of (ids ?? []).entries()) {
    const lot = asking.book.lots.all.get(id);
    if (!lot) asking.refuse('unknown-id', `${field}[${i}]`, { id, wanted: 'lot' });
    else if (usedUp.has(lot.fate) && lot.charge !== asking.instead)
      asking.refuse('lot-used-up', `${field}[${i}]`, { label: lot.label, charge: lot.charge ?? '' });
    if (seen.has(id)) asking.refuse('lot-twice', `${field}[${i}]`, { label: lot?.label ?? id });
    seen.add(id);
  }
}

type Made = Body<'cleaning'>['made'];

/** New lots need labels of their own and weights that can be read. */
export function madeLots(made: Made | undefined, field: string, asking: Asking): void {
  const list = made ?? [];
  asking.keys(list.map((lot, i) => ({ key: lot.key, field: `${field}[${i}].key` })));
  for (const [i, lot] of list.entries()) {
    asking.weight(lot.weight, `${field}[${i}].weight`);
    const twin = [...asking.book.lots.all.values()].some(
      (l) => l.label === lot.label && l.fate === 'in-safe' && l.madeBy !== asking.instead,
    );
    if (twin || list.findIndex((l) => l.label === lot.label) < i)
      asking.refuse('label-taken', `${field}[${i}].label`, { label: lot.label });
  }
}

type Poured = { weight: Parameters<Asking['weight']>[0]; vessel: string } | undefined;

function poured(part: Poured, field: string, asking: Asking): void {
  asking.weight(part?.weight, `${field}.weight`);
  asking.known(part?.vessel, 'vessel', `${field}.vessel`);
}

export const yearRules: Rules = {
  plate: (body, asking) => asking.known(body.battery, 'battery', 'body.battery'),
  meter: ({ calibrated }, asking) => asking.pastDay(calibrated?.on, 'body.calibrated.on'),
  crushing: (body, asking, happened) => {
    asking.known(body.battery, 'battery', 'body.battery');
    asking.known(body.parcel, 'parcel', 'body.parcel');
    if (body.feed === 'water-only' && body.ore) asking.refuse('ore-in-water', 'body.ore.mass');
    const twin = asking.book.current
      .of('crushing')
      .find(
        (r) =>
          r.id !== asking.instead &&
          body.parcel !== undefined &&
          r.body.parcel === body.parcel &&
          r.body.battery === body.battery &&
          dayOf(r.happened) === dayOf(happened),
      );
    if (twin?.body.ore && body.ore && twin.body.ore.mass !== body.ore.mass)
      asking.refuse('parcel-twice', 'body.ore.mass', { first: twin.body.ore.mass, second: body.ore.mass });
  },
  issue: (body, asking) => {
    asking.known(body.vessel, 'vessel', 'body.vessel');
    asking.known(body.into, 'vessel', 'body.into');
    asking.known(body.battery, 'battery', 'body.battery');
    asking.known(body.plate, 'plate', 'body.plate');
    asking.weight(body.weight, 'body.weight');
  },
  return: (body, asking) => {
    poured(body, 'body', asking);
    asking.known(body.battery, 'battery', 'body.battery');
  },
  cleaning: (body, asking) => {
    lotsThere(body.lots, 'body.lots', asking);
    asking.weight(body.dirty?.weight, 'body.dirty.weight');
    poured(body.added, 'body.added', asking);
    madeLots(body.made, 'body.made', asking);
    poured(body.strained, 'body.strained', asking);
    asking.weight(body.skimmings?.weight, 'body.skimmings.weight');
    asking.weight(body.iron?.weight, 'body.iron.weight');
  },
  squeeze: (body, asking) => {
    lotsThere(body.lots, 'body.lots', asking);
    madeLots(body.made, 'body.made', asking);
    poured(body.strained, 'body.strained', asking);
  },
  'plate-work': (body, asking) => {
    asking.known(body.plate, 'plate', 'body.plate');
    poured(body.applied, 'body.applied', asking);
    madeLots(body.made, 'body.made', asking);
  },
  unmake: ({ charge }, asking) => {
    asking.known(charge, 'charge', 'body.charge');
    if ((asking.book.charges.all.get(charge)?.firings.length ?? 0) > 0) asking.refuse('charge-fired', 'body.charge');
    if (asking.book.current.of('unmake').some((r) => r.body.charge === charge && r.id !== asking.instead))
      asking.refuse('unmade-before', 'body.charge');
  },
  transfer: (body, asking) => {
    asking.known(body.vessel, 'vessel', 'body.vessel');
    asking.known(body.charge, 'charge', 'body.charge');
    asking.known(body.plate, 'plate', 'body.plate');
    if (body.bar !== undefined && !barPieces(asking.book.current).has(body.bar))
      asking.refuse('unknown-id', 'body.bar', { id: body.bar, wanted: 'bar' });
    if (body.lot !== undefined && body.way === 'out') lotsThere([body.lot], 'body.lot', asking);
    asking.weight(body.weight, 'body.weight');
    asking.weight(body.theirs?.weight, 'body.theirs.weight');
    asking.pastDay(body.theirs?.on, 'body.theirs.on');
  },
  waste: (body, asking) => {
    asking.known(body.drum, 'vessel', 'body.drum');
    asking.known(body.vessel, 'vessel', 'body.vessel');
    asking.weight(body.weight, 'body.weight');
  },
  spill: (body, asking) => {
    asking.known(body.vessel, 'vessel', 'body.vessel');
    asking.weight(body.lost, 'body.lost');
    poured(body.recovered, 'body.recovered', asking);
  },
  found: (body, asking) => poured(body, 'body', asking),
  incident: (body, asking) => {
    for (const [i, id] of (body.people ?? []).entries()) asking.known(id, 'person', `body.people[${i}]`);
  },
  'open-day': (body, asking) => {
    for (const [i, id] of (body.guides ?? []).entries()) asking.known(id, 'person', `body.guides[${i}]`);
    if (body.children !== undefined && body.children > body.visitors) asking.refuse('children-over-visitors', 'body.children');
  },
  'scale-check': (body, asking) => asking.known(body.scale, 'scale', 'body.scale'),
  'check-due': (body, asking) => asking.known(body.person, 'person', 'body.person'),
};
