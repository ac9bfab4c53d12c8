/** A body of every kind with every field of it answered somewhere, for tests that have to meet them all. */
import type { Body, Kind } from '../../app/core/kinds/index.ts';
import { airSamples } from './daybook-samples-air.ts';
import { bullionSamples } from './daybook-samples-bullion.ts';
import { yearSamples } from './daybook-samples-year.ts';

const scale = 'bench-scale';
const bottle = 'bottle';
const at = (clock: string) => `2026-03-14T${clock}+13:00`;

export const samples: { readonly [K in Kind]: readonly Body<K>[] } = {
  standing: [
    {
      held: [{ what: 'in-place', place: 'mill floor', since: '1998-01-01', until: '2026-12-31' }],
      done: [
        {
          what: 'authority',
          place: 'mill',
          since: '2026-01-01',
          until: '2026-12-31',
          authority: { name: 'Mines office', number: '7/26', expiry: '2026-12-31', covers: 'one plate' },
        },
        { what: 'clearing', place: 'floor' },
      ],
      note: 'As told\nby the owner.',
    },
    {
      held: [{ what: 'none' }],
      done: [{ what: 'authority', authority: { name: 'Mines office', number: '8', expiry: 'none stated', covers: 'all' } }],
    },
  ],
  person: [{ of: 'keeper-1', name: 'Keeper', roles: ['keeper', 'assayer'], note: 'mornings', left: '2026-02-01' }],
  scale: [
    {
      of: scale,
      label: 'Bench',
      maximum: '60 kg',
      d: '0.010 g',
      s: '0.012 g',
      linearity: '0.02 g',
      certificate: { U: '0.03 g', k: 2.05, at: '2000 g', number: 'C 1', on: '2026-01-10', due: '2027-01-10' },
      accuracy: { class: 'II', e: '0.1 g' },
      tolerance: 0.001,
      place: 'bench',
      out: '2026-03-01',
    },
  ],
  vessel: [
    {
      of: bottle,
      label: 'Bottle',
      use: 'bottle',
      tare: { how: 'scale', scale, gross: '250.0 g' },
      mercury: 'mixed',
      seal: 'S1',
      place: 'safe',
      note: 'chipped',
      out: '2026-03-01',
    },
  ],
  retort: [
    {
      of: 'pot-retort',
      label: 'Pot',
      capacity: '2 kg',
      owner: 'the trust',
      loan: { from: 'a school', since: '2025-01-01', until: '2026-01-01' },
      brushed: {
        on: '2026-02-01',
        got: { how: 'volume', volume: '3.0 ml', volumeUMl: 0.1, temperatureC: 21, temperatureUC: 1 },
        vessel: bottle,
      },
      inspected: { on: '2026-01-05', due: '2027-01-05', by: 'a boiler inspector' },
      usualRatio: 0.07,
      ratioBand: 0.035,
      lossBand: 0.0225,
      lossAllowance: '2 g',
      place: 'retort house',
      note: 'cast iron',
      out: '2026-03-01',
    },
  ],
  receipt: [
    {
      vessel: bottle,
      weight: { how: 'stated', mass: '34.47 kg', u: '0.02 kg', by: 'the dealer' },
      way: 'bought',
      from: 'a dealer',
      document: 'I 12',
      seal: 'S 12',
    },
  ],
  'clean-up': [
    {
      type: 'mid',
      where: 'battery 1',
      parcel: 'parcel-one',
      ore: { mass: '18 long-ton', u: 0.05 },
      lots: [
        {
          key: '4',
          label: 'M 1',
          weight: { how: 'scale', scale, gross: '18 ozt 18 dwt 6 gr' },
          state: 'squeezed',
          source: 'mortar',
          plates: ['plate-one'],
          seal: 'S 3',
        },
        { key: '7', label: 'M 2', weight: { how: 'scale', scale, gross: '1204.50 g', tare: '250.0 g', vessel: bottle } },
      ],
      strained: { weight: { how: 'scale', gross: '80 g' }, vessel: bottle },
      present: ['keeper-1', 'helper-1'],
      locked: 'lock 2',
      checks: [{ check: 'drains-shut', answer: 'no', by: 'keeper-1', note: 'one grate stood open' }],
      note: 'rain',
    },
  ],
  charge: [
    {
      retort: 'pot-retort',
      holds: 'amalgam',
      rows: [
        { take: 'whole', key: '1', lot: 'march-clean/4', weight: { how: 'scale', scale, gross: '587 g' } },
        {
          take: 'part',
          key: '2',
          lot: 'march-clean/7',
          weight: { how: 'scale', scale, gross: '400.0 g' },
          rest: { how: 'scale', scale, gross: '554.4 g' },
        },
        { take: 'not-found', key: '3', lot: 'march-clean/8', looked: 'safe and bench' },
        { take: 'unwritten', key: '4', label: 'April 1', weight: { how: 'scale', gross: '20 g' } },
      ],
      others: [{ key: '5', what: 'mercury', label: 'dirty', weight: { how: 'scale', gross: '100 g' }, vessel: bottle }],
      fill: 0.65,
      lining: 'paper',
      lute: 'clay and ash',
      pipeClear: 'yes',
      waterOn: 'no',
      dry: 'na',
      checks: [
        { check: 'place', answer: 'yes', by: 'keeper-1', note: 'as seen' },
        { check: 'our-own', answer: 'no', by: 'keeper-1', note: 'gate open' },
      ],
      note: 'second of the week',
    },
  ],
  firing: [
    {
      heats: [
        { charge: 'charge-1', sponge: { how: 'scale', scale, gross: '370.5 g' }, colour: 'yellow' },
        { charge: 'charge-2' },
      ],
      retort: 'pot-retort',
      lit: at('08:00'),
      firstMercury: at('08:40'),
      lastMercury: at('10:15'),
      finishFrom: at('10:20'),
      finishTo: at('10:40'),
      opened: '2026-03-14T16:00:30+13:00',
      noted: [{ at: at('09:10'), temperatureC: 362.5, water: 'on', fire: 'off', what: 'bottle changed' }],
      aimedC: { from: 350, to: 450 },
      opening: { measuredC: 24.5 },
      mercury: { weight: { how: 'volume', volume: '42.8 ml', temperatureC: 19.5 }, vessel: bottle, state: 'dry' },
      water: { how: 'scale', gross: '3 g' },
      fuel: 'charcoal',
      lute: 'faint stain',
      checks: [{ check: 'watched', answer: 'no', by: 'keeper-1', note: 'one minute' }],
      note: 'windy',
    },
    { heats: [{}], retort: 'pot-retort', opening: { stoodHours: 14 } },
  ],
  ...yearSamples,
  ...bullionSamples,
  ...airSamples,
  closing: [
    {
      opening: 'count-one',
      closing: 'count-two',
      version: 2,
      replaces: 'closing-one',
      ends: [{ desk: 'desk-one', entries: 40, endMark: 'a'.repeat(64) }],
      figures: {
        opening_g: '9925.000000',
        receipts_g: '0.000000',
        found_g: '0.000000',
        removals_g: '0.000000',
        released_g: '0.000000',
        closing_g: '9964.125000',
        unaccounted_g: '-39.125000',
        u_g: '2.500000',
      },
      adjustments: [{ of: 'closing-zero', g: '49.125000' }],
      statement: 'b'.repeat(64),
      paper: 'c'.repeat(64),
      falseAlarm: 0.05,
      note: 'a receipt was found',
    },
  ],
  note: [{ text: 'First line.\nSecond line.', about: 'charge-1' }],
  correction: [],
  strike: [{ strikes: 'charge-1', why: 'Written twice.' }],
};
