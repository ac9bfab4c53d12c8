/**
 * Flags that only the movements of the year show: a vessel that gave more than it held, a cleaning whose parts weigh more than went in, equal masses
 * booked twice, doses that do not make the weight, ore crushed over mercury. All of them are kept; none stops anything.
 */
import { massFromText } from '../mass.ts';
import { dayNumber, dayOf } from '../time.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';
import type { Lots } from './lots.ts';
import { meltShrinkageUg } from './movements/retorting.ts';
import { asksWhich } from './movements/store.ts';
import type { Movements } from './movements.ts';
import { placeParts } from './places.ts';
import { latest, type Registers } from './registers.ts';
import type { Run } from './runs.ts';
import { type Weighed, weighedFrom } from './weights.ts';

interface Known {
  readonly current: Current;
  readonly registers: Registers;
  readonly lots: Lots;
  readonly runs: readonly Run[];
  readonly movements: Movements;
}

/** Equal masses of mercury to or from one vessel within so many days are asked about (design: nothing is booked twice). */
const equalWithinDays = 3;
/** Doses and weight may differ by this share before it is asked about (common practice, no source). */
const dosesShare = 0.05;

export function yearFlags(book: Known): readonly Flag[] {
  const weigh = (weight: Weighed['as'], reading: Reading, path: string) =>
    weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers);
  return [
    ...crushedOver(book.current),
    ...emptied(book),
    ...overWeight(book, weigh),
    ...twice(book, weigh),
    ...doses(book.current, weigh),
    ...melts(book, weigh),
    ...counts(book),
    ...checks(book),
    ...sentAway(book.current),
  ];
}

type Weigh = (weight: Weighed['as'], reading: Reading, path: string) => Weighed;

const crushedOver = (current: Current): Flag[] =>
  current
    .of('crushing')
    .filter((r) => r.body.feed === 'whole-ore' && r.body.mercuryFed !== 'none')
    .map((r) => flag('whole-ore-over-mercury', r.id));

const isVessel = (place: string): boolean => place.startsWith('vessel:');

/** More left a vessel than was ever booked into it: the scale says so, and it is kept. */
function emptied(book: Known): Flag[] {
  const held = new Map<string, number>();
  const flags: Flag[] = [];
  for (const m of book.movements.all) {
    if (isVessel(m.to)) held.set(m.to, (held.get(m.to) ?? 0) + m.mercury.ug);
    if (!isVessel(m.from)) continue;
    const left = (held.get(m.from) ?? 0) - m.mercury.ug;
    held.set(m.from, left);
    if (left >= -1) continue;
    const { of } = placeParts(m.from);
    const vessel = book.registers.vessel.get(of);
    flags.push(flag('vessel-empty', m.entry, { vessel: vessel ? latest(vessel).body.label : of, ug: left }));
  }
  return flags;
}

function overWeight(book: Known, weigh: Weigh): Flag[] {
  return [...book.current.of('cleaning'), ...book.current.of('squeeze')].flatMap((reading) => {
    const body = reading.body as Reading<'cleaning'>['body'];
    const lots = (body.lots ?? []).map((id) => book.lots.all.get(id)?.net.ug);
    // without a weight of what went in there is nothing to hold the parts against
    if (lots.includes(undefined) || (lots.length === 0 && !body.dirty)) return [];
    const weightOf = (weight: Weighed['as'] | undefined, path: string) => (weight ? weigh(weight, reading, path).net.ug : 0);
    const inUg =
      lots.reduce<number>((s, ug) => s + (ug ?? 0), 0) +
      weightOf(body.dirty?.weight, 'dirty.weight') +
      weightOf(body.added?.weight, 'added.weight');
    const outUg =
      body.made.reduce((s, lot, i) => s + weightOf(lot.weight, `made[${i}].weight`), 0) +
      weightOf(body.strained?.weight, 'strained.weight') +
      weightOf(body.skimmings?.weight, 'skimmings.weight') +
      weightOf(body.iron?.weight, 'iron.weight');
    return outUg > inUg ? [flag('out-over-in', reading.id, { ug: outUg - inUg })] : [];
  });
}

/** Entries that put mercury into or took it out of a vessel, with the exact weight: twins within three days may be one thing written twice. */
function twice(book: Known, weigh: Weigh): Flag[] {
  const { current } = book;
  const found: { id: string; day: number; vessel: string; ug: number }[] = [];
  const add = (reading: Reading, vessel: string | undefined, weight: Weighed['as'] | undefined, path: string) => {
    if (!weight || vessel === undefined) return;
    found.push({ id: reading.id, day: dayNumber(dayOf(reading.happened)) ?? 0, vessel, ug: weigh(weight, reading, path).net.ug });
  };
  for (const r of current.of('return')) add(r, r.body.vessel, r.body.weight, 'weight');
  for (const r of current.of('receipt')) if (r.body.seal === undefined) add(r, r.body.vessel, r.body.weight, 'weight');
  for (const r of current.of('found')) add(r, r.body.vessel, r.body.weight, 'weight');
  for (const r of [...current.of('cleaning'), ...current.of('squeeze'), ...current.of('clean-up')])
    add(r, r.body.strained?.vessel, r.body.strained?.weight, 'strained.weight');
  for (const r of current.of('firing')) add(r, r.body.mercury?.vessel, r.body.mercury?.weight, 'mercury.weight');
  const flags: Flag[] = [];
  const byMass = new Map<string, typeof found>();
  for (const f of found) {
    if (!(f.ug > 0)) continue;
    const key = `${f.vessel} ${f.ug}`;
    const alike = byMass.get(key);
    if (alike) alike.push(f);
    else byMass.set(key, [f]);
  }
  for (const twins of byMass.values()) {
    const sorted = twins.sort((a, b) => a.day - b.day);
    for (const [i, later] of sorted.entries()) {
      const earlier = sorted[i - 1];
      if (earlier && later.day - earlier.day <= equalWithinDays) {
        const vessel = book.registers.vessel.get(later.vessel);
        flags.push(
          flag('equal-masses', later.id, {
            ug: later.ug,
            other: earlier.id,
            vessel: vessel ? latest(vessel).body.label : later.vessel,
          }),
        );
      }
    }
  }
  return flags;
}

function doses(current: Current, weigh: Weigh): Flag[] {
  return current.of('issue').flatMap((reading) => {
    const { doses: given, weight } = reading.body;
    const each = given ? massFromText(given.each, '') : null;
    if (!given || !each?.ok) return [];
    const byCountUg = given.count * each.value.ug;
    const weighedUg = weigh(weight, reading, 'weight').net.ug;
    return Math.abs(byCountUg - weighedUg) > dosesShare * Math.max(byCountUg, weighedUg)
      ? [flag('doses-differ', reading.id, { count: given.count, each: given.each, byCountUg, weighedUg })]
      : [];
  });
}

const melts = (book: Known, weigh: Weigh): Flag[] =>
  book.current.of('melt').flatMap((reading) => {
    const shrinkageUg = meltShrinkageUg({ current: book.current, runs: book.runs, weigh }, reading.id);
    // what old slag gave back is metal nobody weighed in
    return shrinkageUg !== null && shrinkageUg < 0 && (reading.body.slags ?? []).length === 0
      ? [flag('bars-over-melt', reading.id, { ug: -shrinkageUg })]
      : [];
  });

const counts = (book: Known): Flag[] =>
  book.current.of('stock-take').flatMap((r) =>
    r.body.lines.flatMap((line) => {
      const { kind, of } = placeParts(line.place);
      const vessel = kind === 'vessel' ? book.registers.vessel.get(of) : undefined;
      const name = kind === 'lot' ? (book.lots.all.get(of)?.label ?? '') : vessel ? latest(vessel).body.label : '';
      const broken =
        (line.how === 'weighed' || line.how === 'unanswered') && line.sealBroken === 'yes'
          ? [flag('seal-broken', r.id, { place: line.place, name })]
          : [];
      if (line.how === 'unanswered')
        return [...broken, flag('count-unanswered', r.id, { place: line.place, kind, name, why: line.why })];
      if (line.how === 'not-found')
        return [flag('place-not-found', r.id, { place: line.place, kind, name, note: line.note ?? '' })];
      return broken;
    }),
  );

const checks = (book: Known): Flag[] =>
  book.current.of('scale-check').flatMap((r) => {
    const scale = book.registers.scale.get(r.body.scale);
    return r.body.passed === 'no'
      ? [
          flag('scale-check-failed', r.id, {
            scale: scale ? latest(scale).body.label : r.body.scale,
            standard: r.body.standard,
            read: r.body.read,
          }),
        ]
      : [];
  });

const sentAway = (current: Current): Flag[] =>
  current
    .of('transfer')
    .filter((r) => asksWhich(r.body))
    .map((r) => flag('loss-or-disposal', r.id, { party: r.body.party }));
