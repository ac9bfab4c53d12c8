/** A constructed year of a site, small enough to be reckoned by hand: flask to bar, a transfer weighed on both sides, a spill, an incident, a count. */
import { readBook } from '../../app/core/book/book.ts';
import type { Result } from '../../app/core/result.ts';
import type { Definition } from '../../app/papers/paper.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';
import { textOf } from './site-of-runs.ts';

export const markup = '<b onclick=x>{{"text":"pwn","link":"http://invalid.example"}}</b> =HYPERLINK("x")';
/** As long as a label may be, with no place to break it. */
export const long = 'W'.repeat(120);

const on = (day: string, clock = '09:00') => ({ happened: `2026-${day}T${clock}+13:00` });

/** The year, with the ids of what papers are about. `vessel` names the working bottle, `party` whoever receives. */
export function year(names: { vessel?: string; party?: string; where?: string; bar?: string; lot?: string } = {}) {
  const book = new BookMaker();
  const keeper = book.add('keeper', 'person', { name: 'Keeper', roles: ['keeper'] }, on('01-02'));
  book.add(
    'standing',
    'standing',
    { held: [{ what: 'stock', place: 'Store' }], done: [{ what: 'clearing' }] },
    { ...on('01-02'), by: keeper },
  );
  const pot = book.add('pot retort', 'retort', { label: 'Pot retort' }, on('01-02'));
  const flask = book.add('flask', 'vessel', { label: 'Flask 7', use: 'flask', mercury: 'new', place: 'Store' }, on('01-02'));
  const bottle = book.add(
    'bottle',
    'vessel',
    { label: names.vessel ?? 'Working bottle', use: 'bottle', mercury: 'retorted' },
    on('01-02'),
  );
  book.add(
    'in flask',
    'receipt',
    { vessel: flask, way: 'bought', from: 'Metal dealer', document: 'D 17', seal: 'S 900', weight: stated('34473', '20') },
    { ...on('01-03'), by: keeper },
  );
  book.add('in bottle', 'receipt', { vessel: bottle, way: 'already-here', weight: stated('2000', '0.1') }, on('01-03'));
  book.add('to plates', 'issue', { vessel: bottle, to: 'plates', weight: stated('600', '0.1') }, { ...on('02-01'), by: keeper });
  const cleanUp = book.add(
    'clean up',
    'clean-up',
    {
      type: 'routine',
      ore: { mass: '10 t', u: 0.02 },
      lots: [
        { key: '1', label: names.lot ?? 'Ball 1', weight: stated('400', '0.1'), state: 'squeezed', source: 'outside-plate' },
      ],
    },
    on('03-01'),
  );
  const charge = book.add(
    'charge one',
    'charge',
    { retort: pot, rows: [{ take: 'whole', key: '1', lot: `${cleanUp}/1`, weight: stated('399.5', '0.1') }] },
    { ...on('03-02'), by: keeper },
  );
  const firing = book.add(
    'firing one',
    'firing',
    {
      heats: [{ charge, sponge: stated('150', '0.1') }],
      mercury: { weight: stated('247.5', '0.2'), vessel: bottle, state: 'dry' },
      water: stated('0', '0'),
      opened: '2026-03-02T17:00+13:00',
      opening: { measuredC: 22 },
    },
    on('03-02', '17:10'),
  );
  const melt = book.add(
    'melt one',
    'melt',
    {
      sponges: [{ charge, weight: stated('149.9', '0.1') }],
      added: [{ key: '1', label: 'Old prills', weight: stated('2.1', '0.01') }],
      flux: 'borax',
      bars: [{ key: '1', label: names.bar ?? 'Bar 12', weight: stated('146.2', '0.1') }],
      samples: [{ key: '2', label: 'Dip 12', weight: stated('1.1', '0.01') }],
      prills: stated('0.4', '0.01'),
      slag: stated('9.3', '0.1'),
    },
    { ...on('03-05'), by: keeper },
  );
  const transfer = book.add(
    'transfer one',
    'transfer',
    {
      way: 'out',
      what: 'mercury',
      party: names.party ?? 'Refiner',
      vessel: bottle,
      weight: stated('500', '0.1'),
      purpose: 'refining',
      document: 'C 8',
      carrier: 'Carter',
      seal: 'S 31',
      theirs: { weight: stated('498.6', '0.1'), on: '2026-04-09', document: 'R 4' },
    },
    { ...on('04-02'), by: keeper },
  );
  const spill = book.add(
    'spill one',
    'spill',
    {
      where: names.where ?? 'bench',
      vessel: bottle,
      lost: stated('50', '2'),
      recovered: { weight: stated('44.5', '0.1'), vessel: bottle },
      insideIssue: 'no',
      cleaned: 'card and pipette',
      told: 'Safety officer',
    },
    { ...on('04-10'), by: keeper },
  );
  const incident = book.add(
    'incident one',
    'incident',
    {
      what: 'A flask fell and held.',
      where: names.where ?? 'store',
      people: [keeper],
      done: 'Store aired, floor read.',
      assessment: 'no',
    },
    { ...on('04-12'), by: keeper },
  );
  const meter = book.add(
    'meter',
    'meter',
    { label: 'Vapour meter', calibrated: { on: '2026-01-05', due: '2026-05-01' } },
    on('01-05'),
  );
  const place = names.where ?? 'yard';
  const air = book.add(
    'air one',
    'air-reading',
    {
      sample: 'visitor-area',
      place,
      meter,
      unit: 'ug/m3',
      shows: '0.4',
      from: on('05-20', '10:00').happened,
      to: on('05-20', '11:00').happened,
      shift: { from: on('05-20', '10:00').happened, to: on('05-20', '14:00').happened },
    },
    { ...on('05-20', '11:00'), by: keeper },
  );
  const ownAir = book.add(
    'own air one',
    'air-reading',
    {
      sample: 'personal',
      person: keeper,
      place,
      meter,
      unit: 'mg/m3',
      shows: '0.018',
      from: on('05-25', '08:00').happened,
      to: on('05-25', '10:00').happened,
    },
    { ...on('05-25', '10:00'), by: keeper },
  );
  const openDay = book.add(
    'open day',
    'open-day',
    { visitors: 42, children: 9, areas: place, covered: 'plates under boards', guides: [keeper] },
    { ...on('05-20', '15:00'), by: keeper },
  );
  book.add(
    'numbers',
    'site-numbers',
    { numbers: [{ for: 'poison-centre', name: names.party ?? 'Poison line', number: '000 111' }] },
    on('05-21'),
  );
  const count = book.add(
    'count one',
    'stock-take',
    {
      lines: [
        { how: 'sealed', place: `vessel:${flask}`, seal: 'S 900' },
        { how: 'weighed', place: `vessel:${bottle}`, weight: stated('1138', '0.1') },
        { how: 'unanswered', place: 'circuit:trap', why: 'bolted shut' },
      ],
      note: 'a film of water was found under the stopper',
    },
    { ...on('06-30'), by: keeper },
  );
  const parcel = book.add('owner ore', 'parcel', {
    label: 'Owner’s ore',
    owner: names.party ?? 'An owner',
    ore: { mass: '3.2 t', u: 0.05 },
  });
  return {
    book,
    ids: {
      air,
      ownAir,
      openDay,
      meter,
      parcel,
      keeper,
      pot,
      flask,
      bottle,
      cleanUp,
      charge,
      firing,
      melt,
      transfer,
      spill,
      incident,
      count,
    },
  };
}

/** A paper's text with its figures' spaces closed up; throws where the paper has a problem. */
export function said(made: Result<Definition>): string {
  if (!made.ok) throw new Error(made.problems.map(({ code }) => code).join(', '));
  return textOf(made.value.content).replaceAll('\u202f', '');
}

/** The lines from one heading of a paper up to another. */
export function between(text: string, from: string, to: string): string {
  const start = `\n${text}`.indexOf(`\n${from}\n`);
  const end = `\n${text}`.indexOf(`\n${to}\n`, start + 1);
  if (start < 0 || end < 0) throw new Error(`not found: ${from} … ${to}`);
  return `\n${text}`.slice(start, end);
}

export const bookOf = (maker: BookMaker) => readBook(maker.entries);

/** An entry of a kind that this program does not know. */
export function fromLater(maker: BookMaker, body: Record<string, unknown>, happened = '2026-05-01T09:00+13:00'): void {
  const first = maker.entries[0];
  if (!first) throw new Error('the book has entries');
  maker.entries.push({ ...first, id: 'from-later', n: 900, kind: 'smelting', happened, body });
}

export { scaled, stated };
