/** Texts of the room Site for batteries, plates, meters, parcels, authorities and limits. */
import type { Body } from '../core/kinds/index.ts';
import { limitText } from './air-figures.ts';
import { dayText } from './dates.ts';
import { plateMetalNames } from './daybook-names-year.ts';
import { massAsRead, spaced } from './daybook-weights.ts';

const sentence = (parts: readonly (string | undefined | false)[]): string => parts.filter((p) => p).join(' · ');
const outOf = ({ out }: { out?: string | undefined }) => out !== undefined && `out of use since ${dayText(out)}`;

export const plantRegister = {
  none: {
    battery: 'No battery is in the register yet. A day’s crushing names the battery it was done with.',
    plate: 'No plate is in the register yet: each has its battery, its size and the day it was first set.',
    meter: 'No vapour meter is in the register yet. Enter each with its calibration: readings of the air name it.',
    parcel: 'No parcel is in the register yet. Ore of one owner that wants a return of its own is a parcel.',
    authority:
      'No licence, permit or consent is in the register yet. The program reads no law: it only counts the days to the expiry that is entered.',
    limit:
      'No limit for air is set, and the program sets none. Copy a row from a paper, check it against that paper, and pick it: only then is a day compared with it.',
  },
  add: {
    battery: 'Enter a battery',
    plate: 'Enter a plate',
    meter: 'Enter a vapour meter',
    parcel: 'Enter a parcel',
    authority: 'Enter an authority',
    limit: 'Enter a limit',
  },
  addTitle: {
    battery: 'A new battery',
    plate: 'A new plate',
    meter: 'A new vapour meter',
    parcel: 'A new parcel',
    authority: 'A new authority',
    limit: 'A new limit',
  },
} as const;

/** How a registered thing stands, in short pieces. */
export const describePlant = {
  battery: (b: Body<'battery'>) =>
    sentence([b.stamps === undefined ? 'stamps not recorded' : `stamps: ${b.stamps}`, b.place, b.note, outOf(b)]),
  plate: (b: Body<'plate'>) =>
    sentence([
      b.metal === undefined ? 'metal not recorded' : plateMetalNames[b.metal],
      b.lengthM !== undefined && b.widthM !== undefined && `${spaced(String(b.lengthM))} m by ${spaced(String(b.widthM))} m`,
      b.set === undefined ? 'first setting not recorded' : `first set ${dayText(b.set)}`,
      b.note,
      outOf(b),
    ]),
  meter: (b: Body<'meter'>) =>
    sentence([
      b.principle,
      b.number !== undefined && `number ${b.number}`,
      b.calibrated
        ? `calibrated ${dayText(b.calibrated.on)}${b.calibrated.due === undefined ? '' : `, due ${dayText(b.calibrated.due)}`}`
        : 'calibration not recorded',
      b.owner !== undefined && `owner ${b.owner}`,
      b.note,
      outOf(b),
    ]),
  parcel: (b: Body<'parcel'>) =>
    sentence([b.ore ? massAsRead(b.ore.mass) : 'not weighed', b.owner !== undefined && `owner ${b.owner}`, b.note]),
  authority: (b: Body<'authority'>) =>
    sentence([
      `number ${b.number}`,
      `given by ${b.body}`,
      b.expiry === 'none stated' ? 'no expiry stated' : `last day ${dayText(b.expiry)}`,
      `covers ${b.covers}`,
      b.out !== undefined && `given up on ${dayText(b.out)}`,
    ]),
  limit: (b: Body<'limit'>) => sentence([limitText(b), b.picked === 'yes' ? 'picked by the site' : 'not picked', outOf(b)]),
} as const;
