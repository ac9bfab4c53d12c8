/** Problems of air readings, limits and a meter's table in plain words: what, where, what to do. Asking accuses nobody. */

import { decimalFromNumber } from '../core/decimal.ts';
import { shownText } from './air-figures.ts';
import { momentText } from './dates.ts';
import { decimalText } from './figures.ts';
import { markName } from './notation.ts';
import type { ProblemData, ProblemTexts } from './problems.ts';
import { degreeUnit, temperatureText } from './temperatures.ts';

const shown = (d: ProblemData): string => shownText({ shows: String(d.read), unit: d.unit === 'ug/m3' ? 'ug/m3' : 'mg/m3' });

/** A figure to so many places; what is none is left as it came. */
const figure = (value: number, places: number): string =>
  Number.isFinite(value) ? decimalText(decimalFromNumber(value), places) : String(value);

export const airProblems: ProblemTexts = {
  'air-figure': () =>
    `This is not a figure as a meter shows it: digits with a ${markName()}, and < or > before them where the meter shows one. The unit is picked beside it.`,
  'air-person-missing': () => 'A personal reading is one person’s: say whose breathing zone it was.',
  'air-person-not-asked': () =>
    'A reading of a place is nobody’s breathing zone: leave the person out, or call it a personal reading.',
  'air-place-missing': () => 'A reading of a place names the place: say where the meter stood.',
  'air-no-end': () => 'A mean is taken over a time: say when it ended, or call the reading momentary.',
  'air-spot-lasts': () => 'A momentary reading has no end: leave the end out, or call it a mean.',
  'air-max-of-spot': () => 'A momentary reading has no highest figure of its own: leave it out, or say when the reading ended.',
  'air-reversed': (d) =>
    `It ends (${momentText(String(d.to))}) before it begins (${momentText(String(d.from))}): check the two times, their days and their offsets.`,
  'air-overlap': (d) =>
    `There is a reading of the same ${momentText(String(d.from))} to ${momentText(String(d.to))} already, so an hour would count twice: correct the times of one of them.`,
  'air-meter-elsewhere': (d) =>
    `This meter was reading something else from ${momentText(String(d.from))} to ${momentText(String(d.to))}: pick the other meter, or correct the times.`,
  'air-temperature-asked': (d) =>
    `Was the air at ${temperatureText(d.read ?? '')}? ${degreeUnit() === '°C' && Number(d.read) > 45 ? `${d.read} °F would be ${figure(((Number(d.read) - 32) * 5) / 9, 0)} °C. ` : ''}Correct it, or tick that the temperature is so.`,
  'air-figure-asked': (d) =>
    `Was it ${shown(d)}? Air at ${temperatureText(d.temperatureC ?? '')} holds no more than ${figure(Number(d.holds), 1)} mg/m³. The unit may be a thousandfold off. Correct it, or tick that the figure was read so. If it is so, leave the place first.`,
  'air-unit-asked': (d) =>
    `Was it ${shown(d)}? What this meter showed before is about a thousand times away from it, as milligrams from micrograms. Correct the unit, or tick that it was read so.`,
  'limit-zero': () => 'A limit of nothing is no limit: write down the figure of the source.',
  'limit-without-source': () => 'A limit without its source is hearsay: name the paper it was read in, with its page or address.',
  'limit-unchecked': () =>
    'Days are compared only with a limit that somebody looked up: say who checked it against its paper, and when.',
  'limit-other-form': () =>
    'Over plates and retorts there is mercury vapour: a limit for another form is kept, but days are not compared with it.',
  'limit-dates-reversed': () => 'Its last day lies before its first: check the two.',
  'continuous-at-work': () =>
    'A figure for breathing day and night is one for the public: say that it is for the public, or pick what it is averaged over.',
  'meter-column': (d) => `The table has no column headed “${d.heading}”: pick the columns as they are headed.`,
  'meter-time': (d) =>
    `“${d.read}” is no time of day with its date, such as 2026-03-14 09:05:00: correct the table, and read it again.`,
  'meter-mark': (d) => `“${d.read}” is no sign of a meter: it is <, > or left empty.`,
  'meter-order': (d) => `“${d.read}” is not after the time before it: the rows have to run forwards, each to its own end.`,
  'meter-ends': () => 'Nothing says when the last row ends: give the time at which the meter was stopped.',
};
