/** Texts of the drawing of a day's air, of what stands beside a raw reading, of the form of a reading, and of the page of limits. */
import type { CannotTell } from '../core/book/air-beside.ts';
import { marked } from './notation.ts';

export const airDayWords = {
  drawing: 'The day drawn',
  gap: (from: string, to: string, long: string) => `Not read: ${from} to ${to} (${long}).`,
  copySvg: 'Copy the drawing',
  copyCsv: 'Copy as a table',
  csv: ['From', 'To', 'As shown', 'mg/m³', 'Sign', 'Place', 'Height', 'What was going on', 'Meter'],
  notRead: 'not read',
  beside: 'Beside the raw figures',
  besideSays:
    'The figure as shown stays the record. What needs the temperature or pressure of the air cannot be told where that was not recorded, and a figure the meter has brought to 25 °C itself is not brought there again.',
  ofRun: 'The air at this run',
  toAir: 'To the days of the air, with their gaps and how they stand to limits',
  columns: {
    from: 'From',
    place: 'Place, what was going on',
    shown: 'As shown',
    get normalised() {
      return marked('At 25 °C and 101.325 kPa');
    },
    ppb: 'Parts per thousand million',
    share: 'Of what air can hold',
  },
} as const;

export const cannotTellWords: Readonly<Record<CannotTell, string>> = {
  'temperature-not-recorded': 'cannot be told: temperature not recorded',
  'pressure-not-recorded': 'cannot be told: pressure not recorded',
  'by-the-meter': 'brought there by the meter',
};

export const airReadingWords = {
  title: 'A reading of the air',
  margin: 'As the meter shows it, with its < or >. What was not read stays not recorded.',
  when: 'When',
  offset: (offset: string) => `The clock stands at ${offset} from UTC at these times.`,
  offsets: (from: string, to: string) => `The clock changes in between: ${from} from UTC at the beginning, ${to} at the end.`,
  showed: 'What the meter showed',
  where: 'Where, and of whom',
  going: 'What was going on',
  air: 'The air itself',
  more: 'Shift, run and remarks',
  asked: 'Asked about',
  calibrated: (on: string, due: string | undefined) => `Calibrated ${on}${due === undefined ? '' : `, due ${due}`}.`,
  outOfDate: 'Out of date by the register. The reading is kept, marked.',
  notCalibrated: 'No calibration of this meter is in the register.',
  noMeters: 'No meter is in the register yet.',
} as const;

export const airLimitsWords = {
  title: 'Limits',
  intro:
    'Figures as they were read in the paper named beside each. They change, and a paper may be out of date: look each up with the body itself before using it here. None is set until this site enters and picks it, and no figure of this list is a default.',
  inForce: 'Picked by this site',
  inForceNote: 'Days are compared with these and with nothing else.',
  none: 'No limit is picked. Exposure is computed, and no verdict is given.',
  work: 'For people at work',
  public: 'For the public and visitors',
  publicNote: 'A place of visitors is held against these only. The two are never mixed.',
  disagree: 'Where papers do not agree',
  disagreeSays: 'Both stand here side by side. Which one holds for this site is for the body itself to say.',
  own: 'Enter a limit of your own',
  columns: {
    limit: 'Limit; form of mercury',
    figure: 'Figure; averaged over',
    body: 'Whose; how binding',
    source: 'Read in',
    checked: 'Looked up',
    conflict: 'What the other paper says',
    use: 'Enter it',
  },
  useShort: 'Use\u00a0this\u00a0row',
  notRecorded: 'not recorded',
  noEdition: 'edition not recorded',
  notHere: 'not looked up by anybody here yet',
  noDates:
    'None of these papers was read for the days between which its figure holds. They stay not recorded until this site enters them.',
  holds: (from: string | undefined, to: string | undefined) =>
    `holds ${from === undefined ? '' : `from ${from}`}${from !== undefined && to !== undefined ? ' ' : ''}${to === undefined ? '' : `to ${to}`}`,
  checkedBy: (by: string, on: string) => `${by}, ${on}`,
  back: 'To the limits',
  gone: 'There is no such row.',
  form: (label: string) => `Enter: ${label}`,
  formSays:
    'The row is filled in as it was read. Look it up in its paper, say who did and when, and say whether days are compared with it. Nothing is picked until you do.',
} as const;
