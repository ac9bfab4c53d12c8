/** The invented site of the sample: its people by role, its standing under an invented authority, and what it owns. */
import type { Body } from '../../../app/core/kinds/index.ts';
import { later, type Story } from './story.ts';

export const sampleName = 'Merrow Spur Battery';

export interface SampleSite {
  readonly keeper: string;
  readonly officer: string;
  readonly assayer: string;
  readonly helper: string;
  readonly bench: string;
  readonly platform: string;
  readonly flaskOne: string;
  readonly flaskTwo: string;
  readonly bottle: string;
  readonly strained: string;
  readonly drum: string;
  readonly battery: string;
  readonly plate: string;
  readonly lowerPlate: string;
  readonly retort: string;
  readonly meter: string;
  readonly parcel: string;
}

/** What the dish and the beaker on the bench weigh empty, in grams. */
export const dishG = 85.32;
export const beakerG = 412.15;

/** The first day of the book. */
export const firstDay = '2025-01-06';

/** The bench scale under a certificate of a year. */
export const benchScale = (number: string, on: string): Body<'scale'> => ({
  label: 'Bench scale',
  maximum: '6 kg',
  d: '0.01 g',
  s: '0.02 g',
  linearity: '0.02 g',
  tolerance: 0.001,
  certificate: { U: '0.03 g', k: 2, at: '2000 g', number, on, due: later(on, 365) },
});

/** The platform scale under a certificate of a year. */
export const platformScale = (number: string, on: string): Body<'scale'> => ({
  label: 'Platform scale',
  maximum: '60 kg',
  d: '5 g',
  certificate: { U: '10 g', k: 2, at: '30 kg', number, on, due: later(on, 365) },
});

/** Settles the site on a day; dates of certificates and checks stand in the same distance from it. */
export function settle(story: Story, day: string = firstDay): SampleSite {
  const from = (days: number) => later(day, days);
  const keeper = story.tell('person', day, '08:00', { name: 'Keeper', roles: ['keeper'] });
  story.by = keeper;
  const officer = story.tell('person', day, '08:04', { name: 'Safety officer', roles: ['safety-officer'] });
  const assayer = story.tell('person', day, '08:06', { name: 'Assayer', roles: ['assayer'] });
  const helper = story.tell('person', day, '08:08', { name: 'Helper', roles: ['helper'] });
  story.tell('standing', day, '08:12', {
    held: [
      { what: 'stock', place: 'store' },
      { what: 'in-place', place: 'old plates and floor' },
    ],
    done: [
      {
        what: 'authority',
        since: from(-5),
        authority: {
          name: 'Merrow Spur Heritage Board',
          number: 'MSB 14',
          expiry: from(359),
          covers: 'amalgamation of concentrate, ten tonnes a month at most',
        },
      },
      { what: 'clearing', place: 'old plates and floor' },
    ],
    note: 'Concentrate only. No whole ore is crushed over mercury here.',
  });
  story.tell('authority', day, '08:14', {
    name: 'Consent to amalgamate concentrate',
    number: 'MSB 14',
    body: 'Merrow Spur Heritage Board',
    covers: 'amalgamation of concentrate, ten tonnes a month at most',
    from: from(-5),
    expiry: from(359),
  });
  const bench = story.tell('scale', day, '08:20', benchScale('C-118', from(-47)));
  const platform = story.tell('scale', day, '08:22', platformScale('C-119', from(-47)));
  const vessel = (label: string, use: 'flask' | 'bottle' | 'jar' | 'drum', mercury?: 'new' | 'strained' | 'mixed') =>
    story.tell('vessel', day, '08:30', { label, use, ...(mercury === undefined ? {} : { mercury }) });
  const flaskOne = vessel('Flask 1', 'flask', 'new');
  const flaskTwo = vessel('Flask 2', 'flask', 'new');
  const bottle = vessel('Working bottle', 'bottle', 'mixed');
  const strained = vessel('Strained jar', 'jar', 'strained');
  const drum = vessel('Waste drum 1', 'drum');
  const battery = story.tell('battery', day, '08:40', { label: 'Five-head battery', stamps: 5, place: 'battery house' });
  const plate = story.tell('plate', day, '08:42', {
    label: 'Apron plate',
    battery,
    order: 1,
    metal: 'silvered-copper',
    lengthM: 2.4,
    widthM: 1.2,
  });
  const lowerPlate = story.tell('plate', day, '08:43', {
    label: 'Lower plate',
    battery,
    order: 2,
    metal: 'copper',
    lengthM: 1.8,
    widthM: 1.2,
  });
  const retort = story.tell('retort', day, '08:46', {
    label: 'Pot retort',
    capacity: '2400 g',
    usualRatio: 0.38,
    brushed: { on: from(-19), got: { how: 'scale', scale: bench, gross: '94.10 g', tare: '85.32 g' }, vessel: bottle },
    inspected: { on: from(-19), due: from(346), by: 'Safety officer' },
  });
  const meter = story.tell('meter', day, '08:48', {
    label: 'Vapour meter',
    number: 'VM 3',
    calibrated: { on: from(-96), due: from(269) },
  });
  const parcel = story.tell('parcel', day, '08:50', { label: 'Concentrate of the board', owner: 'Merrow Spur Heritage Board' });
  return {
    keeper,
    officer,
    assayer,
    helper,
    bench,
    platform,
    flaskOne,
    flaskTwo,
    bottle,
    strained,
    drum,
    battery,
    plate,
    lowerPlate,
    retort,
    meter,
    parcel,
  };
}
