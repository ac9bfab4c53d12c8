/** Entries of an invented site for walks: people, a scale, vessels, a retort, clean-ups, runs that close and one that does not. */
import type { Draft } from '../../app/core/entry.ts';
import type { Body, Kind } from '../../app/core/kinds/index.ts';

/** A moment so many days before now, at the hour, in UTC. */
export function daysAgo(days: number, clock = '09:00'): string {
  const at = new Date(Date.now() - days * 86_400_000);
  return `${at.toISOString().slice(0, 10)}T${clock}+00:00`;
}
export const dayAhead = (days: number): string => daysAgo(-days).slice(0, 10);

export function draft<K extends Kind>(
  id: string,
  kind: K,
  body: Body<K>,
  happened: string,
  more: Partial<Omit<Draft, 'id' | 'kind' | 'body' | 'happened'>> = {},
): Draft {
  return { id, kind, body: body as Record<string, unknown>, happened, by: 'keeper-one', ...more };
}

const read = (gross: string, tare?: string) => ({
  how: 'scale' as const,
  scale: 'bench-scale',
  gross,
  ...(tare ? { tare } : {}),
});

/** A site at work, as of today. */
export const siteAtWork = (): Draft[] => [
  draft('keeper-one', 'person', { name: 'Keeper', roles: ['keeper'] }, daysAgo(40)),
  draft('officer-one', 'person', { name: 'Safety officer', roles: ['safety-officer'] }, daysAgo(40, '09:05')),
  draft(
    'standing-one',
    'standing',
    { held: [{ what: 'in-place', place: 'mill' }], done: [{ what: 'clearing' }] },
    daysAgo(40, '09:10'),
  ),
  draft(
    'bench-scale',
    'scale',
    {
      label: 'Bench scale',
      maximum: '6 kg',
      d: '0.1 g',
      certificate: { U: '0.2 g', k: 2, at: '2000 g', number: 'C 118', on: '2026-01-10', due: dayAhead(12) },
    },
    daysAgo(40, '09:15'),
  ),
  draft('old-scale', 'scale', { label: 'Kitchen scale', maximum: '5 kg', d: '1 g' }, daysAgo(40, '09:17')),
  draft(
    'bottle-one',
    'vessel',
    { label: 'Working bottle', use: 'bottle', mercury: 'mixed', tare: read('250.0 g') },
    daysAgo(40, '09:20'),
  ),
  draft(
    'pot-retort',
    'retort',
    { label: 'Pot retort', capacity: '2 kg', inspected: { on: '2025-11-01', due: dayAhead(-3), by: 'a boiler inspector' } },
    daysAgo(40, '09:25'),
  ),
  draft(
    'receipt-one',
    'receipt',
    { vessel: 'bottle-one', weight: read('5004.5 g', '250.0 g'), way: 'already-here', document: 'stock-take sheet 3' },
    daysAgo(39),
  ),
  draft(
    'clean-up-one',
    'clean-up',
    {
      type: 'routine',
      where: 'Battery 1',
      lots: [
        { key: '1', label: 'Ball 1', weight: read('955.6 g'), state: 'squeezed', source: 'outside-plate' },
        { key: '2', label: 'Ball 2', weight: read('412.3 g'), state: 'squeezed', source: 'mortar' },
      ],
      present: ['keeper-one', 'officer-one'],
      locked: 'lock 2',
    },
    daysAgo(20),
    { witness: ['officer-one'], form: { number: 'C-14', page: '2' } },
  ),
  draft(
    'charge-one',
    'charge',
    {
      retort: 'pot-retort',
      rows: [{ take: 'whole', key: '1', lot: 'clean-up-one/1', weight: read('955.4 g') }],
      fill: 0.55,
      pipeClear: 'yes',
      waterOn: 'yes',
      checks: [
        { check: 'place', answer: 'yes' },
        { check: 'meter', answer: 'no', note: 'meter at the workshop' },
      ],
    },
    daysAgo(19, '07:40'),
  ),
  draft(
    'firing-one',
    'firing',
    {
      heats: [{ charge: 'charge-one', sponge: read('370.5 g'), colour: 'yellow' }],
      lit: daysAgo(19, '08:00'),
      firstMercury: daysAgo(19, '08:40'),
      opened: daysAgo(18, '09:00'),
      opening: { measuredC: 21 },
      mercury: { weight: read('734.9 g', '250.0 g'), vessel: 'bottle-one', state: 'dry' },
      water: read('0.0 g'),
    },
    daysAgo(18),
  ),
  draft(
    'charge-two',
    'charge',
    { retort: 'pot-retort', rows: [{ take: 'whole', key: '1', lot: 'clean-up-one/2', weight: read('412.0 g') }] },
    daysAgo(9),
    { timing: 'about' },
  ),
  draft(
    'clean-up-two',
    'clean-up',
    {
      type: 'general',
      lots: [
        { key: '1', label: 'Ball 3', weight: read('510.2 g'), state: 'drained' },
        { key: '2', label: 'Ball 4', weight: { how: 'scale', scale: 'old-scale', gross: '88 g' } },
      ],
    },
    daysAgo(5),
  ),
  draft(
    'loose-firing',
    'firing',
    { heats: [{ sponge: read('41.0 g') }], retort: 'pot-retort', opening: { stoodHours: 14 } },
    daysAgo(4),
  ),
];
