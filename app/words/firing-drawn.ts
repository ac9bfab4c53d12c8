/** Words of the drawing of a firing along the clock: lanes, marks, what was not written, and what the marks mean. */
import type { FireStage, FireStretch } from '../core/book/fire-times.ts';
import { minutesText } from './air-planned.ts';
import { temperatureText } from './temperatures.ts';

const joined = (names: readonly string[]): string => names.join(', ');

export const firingDrawn = {
  title: 'The firing along the clock',
  titleOf: (n: number, of: number): string => `The firing along the clock, firing ${n} of ${of}`,
  note: 'Drawn from what was written up, and nothing else',
  chart: (day: string): string => `The firing along the clock, ${day}`,
  hint: 'Point at anything in the drawing, or reach it with Tab and the arrow keys, to have it told here; Enter opens its entry.',
  noTimes: 'No time of this firing was written, so there is nothing to draw it along. What was written stands in the table.',
  lanes: {
    fire: 'Fire',
    times: 'Times',
    water: 'Cooling water',
    stops: 'Interruptions',
    seen: 'Noticed',
    checks: 'Checks',
    opening: 'Opening',
    temperature: 'Temperature',
    air: 'Air at the run',
  },
  stages: {
    lit: 'fire lit',
    firstMercury: 'first mercury',
    lastMercury: 'last mercury',
    finishFrom: 'finishing heat from',
    finishTo: 'finishing heat to',
    opened: 'opened',
  } satisfies Record<FireStage, string>,
  stretches: {
    heating: 'heating up',
    coming: 'mercury coming over',
    finishing: 'finishing heat',
    cooling: 'shut, cooling',
  } satisfies Record<FireStretch['what'], string>,
  notWritten: 'not written',
  notWrittenOf: (names: readonly string[]): string => `not written: ${joined(names)}`,
  noneWritten: 'none written',
  untimed: 'without a time',
  lasting: (minutes: number): string => minutesText(minutes),
  at: (clock: string, what: string): string => `${what} ${clock}`,
  told: (when: string, what: string, said: string): string => `${when}: ${[what, said].filter((t) => t !== '').join(': ')}`,
  fromTo: (from: string, to: string): string => `${from}\u00a0to\u00a0${to}`,

  waterBefore: (answer: string): string => `running before the fire: ${answer}`,
  waterKept: (answer: string): string => `kept on until cold: ${answer}`,
  ofWater: (text: string): string => `cooling water ${text}`,
  waterBeforeShort: 'running before the fire',
  waterKeptShort: 'kept on until cold',
  turned: { water: { on: 'on', off: 'off' }, fire: { on: 'fire on again', off: 'fire off' } },
  turnedOn: (what: string, clock: string): string => `${what} ${clock}, turning off not written`,
  turnedWhat: { water: { on: 'cooling water on', off: 'cooling water off' }, fire: { on: 'fire on again', off: 'fire off' } },
  phases: { before: 'before', during: 'during', after: 'after' },
  checksOf: (phase: string, answered: number, of: number, no: number): string =>
    `${phase}: ${answered} of ${of} answered${no === 0 ? '' : `, ${no} “no”`}`,
  saidNo: (questions: readonly string[]): string => `answered no: ${questions.join('; ')}`,
  seenAtLute: (text: string): string => `at the lute: ${text}`,
  lookedIn: 'looked at',
  readAtRetort: (text: string): string => `${text} read at the retort`,
  hotLine: (text: string): string => `marked as opened hot above ${text}`,
  incident: 'incident',
  incidentSays: (text: string): string => `incident written for this time; it names no run: ${text}`,

  measured: (c: number): string => `${temperatureText(c)} measured at the opening`,
  measuredHot: (c: number, limit: number): string =>
    `${temperatureText(c)} measured at the opening: above ${temperatureText(limit)}, marked as opened hot`,
  stood: (hours: string): string => `stood ${hours} h, not measured`,
  notMeasured: 'not written whether it was measured',
  noTemperature: 'no temperature was noted during the fire',
  heldBack: (n: number): string =>
    `${n === 1 ? 'one reading' : `${n} readings`} at a person not shown here: what one person breathed is not for everybody`,
  noAir: 'no reading of the air names this run in this time',
  temperaturePanel: (unit: string): string => `Temperature read at the retort, ${unit}`,
  airPanel: 'Mercury in the air at the run, mg/m³',
  aimedFrom: (c: number): string => `aimed at, from ${temperatureText(c)}`,
  aimedTo: (c: number): string => `aimed at, up to ${temperatureText(c)}`,
  above: 'Above what is drawn:',
  rules: (what: string, when: string, act: string | undefined): string =>
    `This site stops the fire, ${what}: “${when}”${act === undefined ? '' : `, then “${act}”`}. The rule is the site’s own words: nothing here is reckoned against it.`,

  table: 'The firing along the clock, as a table',
  columns: { when: 'When', what: 'What', said: 'As written', entry: 'Entry' },
  csv: ['when', 'until', 'what', 'as written', 'entry'],
  copySvg: 'Copy the drawing as SVG',
  copyCsv: 'Copy the table as CSV',
  legend: [
    'Bars of the fire, each between two times that were both written: dotted, heating up; filled, mercury coming over; crossed, finishing heat; hatched, shut and cooling. Where one of the two was not written there is no bar.',
    'A filled dot: a time that was stamped, or an answer yes. A cross: an answer no, or something turned off. A ring: a remark, or checks of which some were not answered. A diamond: the opening, and on a scale a momentary reading. A triangle: an incident of this time.',
    'A bar with a broken outline: something stood off, or stood without being measured. A triangle lying at the edge: it was before or after what is drawn. An open square at the left: written without a time.',
    'Checks and cooling water stand at the time of the entry they were answered in: an answer has no time of its own.',
  ],
} as const;
