/**
 * Texts of the room Air: its overview and the page of a day. A day stands below, at or above a figure that the site entered, or nobody can tell; nothing
 * here says more than that.
 */
import type { AirHow } from '../core/book/air-verdicts.ts';
import type { ExposureFinding } from '../core/exposure.ts';
import type { Verdict } from '../core/exposure-verdict.ts';
import { marked } from './notation.ts';

export const airRoom = {
  title: 'Air',
  get intro() {
    return marked(
      'Readings of mercury in the air, and what they say of a day. Only a reading says what was in the air: a mercury balance is no measure of it. 2.5 mg, less than a scale at a retort can show, bring 100 m³ to 0.025 mg/m³.',
    );
  },
  defers: 'What a figure means for people is decided by local rules and by people licensed for it.',
  write: 'Write down a reading',
  toPlanning: 'Planning pages',
  toLimits: 'Limits of this site',
  days: 'Days with readings',
  daysNote: (n: number) => (n === 1 ? 'one day' : `${n} days`),
  none: 'No reading is written down yet. Begin with a reading of the air before work, where people stand.',
  back: 'To the air room',
  notShown: (n: number) =>
    `${n === 1 ? 'One day' : `${n} days`} of personal readings ${n === 1 ? 'is' : 'are'} not shown: they are for the safety officer. This is no lock: whoever has the folder can read them.`,
  hidden:
    'These readings are of a person and are shown to the safety officer only. This is no lock: whoever has the folder can read them.',
  gone: 'There is no such day in this book.',
  columns: {
    day: 'Day',
    who: 'Person or place',
    readings: 'Readings',
    twa: 'Over 8 hours',
    verdict: 'Against what this site picked',
  },
  next: 'What to do next',
  nextNoLimit: 'No limit is picked. Exposure is computed, and no verdict is given.',
  nextMeters: (names: string) => `Out of date by the register: ${names}. Readings stay as they are, marked.`,
  nextNoMeter: 'No meter is in the register. A reading without one says little to a stranger.',
  enterMeter: 'Enter the meter',
  nextRuns: (n: number) => `${n === 1 ? 'One run has' : `${n} runs have`} no reading of the air that names it.`,
  nextNothing: 'Nothing is out of date, and every run has a reading.',
  picked: (n: number) => (n === 1 ? 'One limit is picked.' : `${n} limits are picked.`),
  day: {
    title: (day: string) => `The air on ${day}`,
    shift: (from: string, to: string) => `Shift as written down: ${from} to ${to}`,
    noShift: (from: string, to: string) => `No shift was written down: first reading to last, ${from} to ${to}`,
    figures: 'What the readings allow to be said',
    figure: 'Figure',
    value: 'Lowest to highest it can have been',
    twa: 'Dose over 8 hours',
    mean: 'Mean over the time that was read',
    quarter: 'Highest quarter of an hour',
    moment: 'Highest moment',
    worst: 'Worst 8 hours of the shift',
    shiftMean: 'Mean over the whole shift',
    unknown: 'cannot be said from these readings',
    sampled: (read: string, not: string) => `${read} were read, ${not} were not.`,
    verdicts: 'Against the limits this site picked',
    noLimit: 'No limit is picked for this day, so there is no verdict. The figures stand by themselves.',
    publicOnly: 'A place of visitors is held against figures for the public only.',
    readings: 'The readings, as shown',
    spots: 'momentary',
    idlh: 'A reading at or above 10 mg/m³, the figure immediately dangerous to life or health (NIOSH): leave, keep others away, call the numbers of your site.',
    print: 'Readings can be opened one by one; each keeps what was not recorded as not recorded.',
    limit: 'Limit',
    how: 'Compared',
    range: 'Figure of the day',
    verdict: 'Verdict',
    from: 'From',
    to: 'To',
    shown: 'Shown',
    place: 'Where, doing what',
  },
  samples: { personal: 'at a person', area: 'where people work', 'visitor-area': 'where visitors go' },
} as const;

export const airVerdictWords: Readonly<Record<Verdict, string>> = {
  below: 'below the figure you entered',
  at: 'at the figure you entered',
  above: 'above the figure you entered',
  'cannot tell': 'cannot tell',
};

export const airHowWords: Readonly<Record<AirHow, string>> = {
  '8h': 'dose over 8 hours',
  '15min': 'highest quarter of an hour',
  ceiling: 'highest moment',
  'mean-sampled': 'mean over what was read',
  'moments-only': 'momentary readings only',
  'worst-8h': 'worst 8 hours of a longer shift',
  'brief-scala': 'limit reduced for the long shift (Brief and Scala), mean of the shift',
  'eight-over-h': 'limit reduced for the long shift (8 over its hours), mean of the shift',
};

export const airFindingWords: Readonly<Record<ExposureFinding, string>> = {
  'unsampled-time': 'Part of the time has no reading. It is not taken as clean: the upper end is open.',
  'below-detection': 'A reading below what the meter can tell counts from nothing up to that figure.',
  'over-range': 'A reading over the meter’s range counts as at least that figure: no upper end.',
  'shift-over-8h': 'The shift is longer than 8 hours.',
};
