/** Texts of the air record. It repeats readings and what they allow to be said; a day stands below, at or above a figure the site entered, or nobody can tell. */
import { marked } from './notation.ts';
import { degreeUnit } from './temperatures.ts';

export const airPaper = {
  name: 'Air record',
  ofRun: (run: string) => `Air at ${run}`,
  number: (id: string) => `Filed under ${id}`,
  noneOfRun: 'No reading of a place names this run. What was in the air is not known from this book.',
  heldBack: (n: number) =>
    `${n === 1 ? 'One day' : `${n} days`} of readings at a person ${n === 1 ? 'is' : 'are'} left out: they go on the personal air record, which is the safety officer’s, and on no other paper.`,
  readings: 'Readings, exactly as shown',
  readingsNote: 'Nothing was brought to another temperature or pressure, and no figure from a planning page is on this paper.',
  no: 'No.',
  time: 'From, to',
  shown: 'Shown',
  most: 'Highest seen',
  zero: 'Zero before, after',
  where: 'Height, doing what',
  meterNo: 'Meter',
  thisRun: 'at this run',
  conditions: 'Round the readings',
  get air(): string {
    return `${degreeUnit()}, kPa`;
  },
  fans: 'Fans; hood; doors',
  mode: 'How read',
  byMeter: 'meter normalises',
  notByMeter: 'meter does not normalise',
  sampler: 'Read by',
  note: 'Remark',
  distance: (m: string) => `${m} m from the source`,
  meters: 'Meters',
  meter: 'Meter, principle, number',
  owner: 'Owner',
  calibration: 'Calibrated',
  calibrated: (on: string, by: string) => `${on}${by === '' ? '' : `, ${by}`}`,
  due: (day: string) => `due ${day}`,
  late: 'OUT OF DATE when it was read',
  noMeter: 'not named',
  gaps: 'Time nobody read',
  gap: (from: string, to: string, long: string) => `${from} to ${to}, ${long}`,
  noGaps: 'No time of the shift is without a reading.',
  uncounted: (n: number) =>
    n === 1
      ? 'One reading is of hours another one counts already; it stands in the list and in no figure.'
      : `${n} readings are of hours others count already; they stand in the list and in no figure.`,
  limits: 'Where these limits come from',
  limit: 'Limit',
  source: 'Source; looked up',
  looked: (by: string, on: string) => `looked up by ${by}, ${on}`,
  conflict: (text: string) => `Papers do not agree: ${text}`,
  cautions: 'Cautions',
  get cautionList(): readonly string[] {
    return [
      'What a figure means for people is decided by local rules and by people licensed for it. “Below” says below the figure this site entered, and nothing more.',
      `No mercury balance is a measure of the air: ${marked('2.5')} mg, less than a scale at a retort can show, bring 100 m³ to ${marked('0.025')} mg/m³.`,
      'A reading at a place is not what a person there breathed.',
    ];
  },
} as const;

export const personalAirPaper = {
  name: 'Personal air record',
  all: (person: string, days: number) => `${person}, ${days} days with readings`,
  number: (id: string) => `Filed under ${id}`,
  whoFor:
    'This paper says what one person breathed. It is for that person, the safety officer and whoever the law names: not for the wall, and not with other papers. Printing it is no lock: whoever holds the daybook’s folder can read it there.',
  cautions: 'Cautions',
  cautionList: [
    'What a figure means for this person is for a doctor and for people licensed for it to say. “Below” says below the figure this site entered, and nothing more.',
    'The figure is of the air at mouth and nose, outside any mask: a respirator changes nothing about it.',
    'Days without a reading are not on this paper, and nothing is known of them from it. Results of medical tests never stand in this book.',
  ],
} as const;
