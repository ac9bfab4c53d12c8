/**
 * Texts of the papers. A paper repeats what was entered and what follows from it; no word here says that anything may be done, and every answer
 * that nobody gave reads "not recorded".
 */

import type { Flag } from '../core/book/flags.ts';
import type { Awaited } from '../core/book/runs.ts';
import { massHead, massUnit } from './figures.ts';
import { flagText } from './flags.ts';
import { marked } from './notation.ts';
import { checkText } from './run-checks.ts';
import { temperatureText } from './temperatures.ts';

/** Texts of the frame around every paper. */
export const frameWords = {
  page: (n: number, of: number) => `page ${n} of ${of}`,
  standing: 'Standing',
  standingStated: (on: string) => `On ${on}, by the site itself. It is the site’s own word and permits nothing.`,
  standingLater: (on: string) =>
    `Only later, on ${on}, by the site itself; at the time of this paper nothing was stated. It is the site’s own word and permits nothing.`,
  noStanding: 'No standing stated: the site has not said what mercury it holds and what it does with it.',
  held: 'Held',
  done: 'Done',
  stated: 'Stated',
  standingNote: 'Note',
  reservations: 'Reservations',
  noReservations: 'None on the record.',
  notUnderstood: (n: number, kinds: string) =>
    `${n} ${n === 1 ? 'entry' : 'entries'} of a kind this program does not know (${kinds}) could not be read. What they say is not on this paper: print it with the program that wrote them.`,
  adrift: (n: number) =>
    `${n} ${n === 1 ? 'correction or strike names an entry' : 'corrections or strikes name entries'} that ${n === 1 ? 'is' : 'are'} not in the book here: another desk’s journal may be missing.`,
  isNot:
    'This paper repeats what was entered and what follows from it. It is no approval, permit or certificate, and no measure of the air. The place’s rules and its licensed people come first.',
  covers: (entries: number, newest: string, version: string) =>
    `Covers ${entries} ${entries === 1 ? 'entry' : 'entries'}, the newest written ${newest} · program version ${version}`,
  desk: (desk: string, entries: number) => `Desk ${desk}, ${entries} ${entries === 1 ? 'entry' : 'entries'}, end mark`,
  endMarksBehind: (n: number) => `The end marks of the ${n} desks it covers stand at the end of the paper.`,
  endMarks: 'What this paper covers',
  deskHead: 'Desk',
  entriesHead: 'Entries',
  endMarkHead: 'End mark',
  unprintable: (code: string) => `[U+${code}]`,
} as const;

export const heldWords = {
  none: 'none',
  'in-place': 'mercury may be in plates, floors or traps',
  stock: 'a stock of mercury',
} as const;

export const doneWords = {
  nothing: 'nothing',
  'no-mercury-fed': 'ore or water over plates, no mercury fed',
  clearing: 'clearing legacy mercury',
  authority: 'use under an authority',
} as const;

export const standingWords = {
  at: (place: string) => ` (${place})`,
  since: (day: string) => `since ${day}`,
  until: (day: string) => `until ${day}`,
  authority: (name: string, number: string, expiry: string, covers: string) =>
    `${name}, number ${number}, ${expiry}, covering ${covers}`,
  expires: (day: string) => `last day ${day}`,
  noExpiry: 'no last day stated',
} as const;

/** A flag's sentence, with a check named by its question. */
export const remarkText = (flag: Flag): string =>
  flagText(flag.code === 'check-no' ? { ...flag, data: { ...flag.data, check: checkText(String(flag.data.check)) } } : flag);

export const notRecorded = 'not recorded';
export const notKnown = 'not known';

const awaited: Readonly<Record<Awaited, string>> = {
  firing: 'a firing',
  sponge: 'the sponge’s weight',
  mercury: 'the mercury’s weight',
};

/** Texts of the run sheet. */
export const runSheet = {
  name: 'Run sheet',
  subject: (retort: string, day: string, verdict: string) =>
    verdict === '' ? `${retort}, ${day}` : `${retort}, ${day}: ${verdict}`,
  number: (id: string) => `Filed under its first charge, ${id}`,
  open: (awaits: readonly Awaited[]) =>
    `This run is not closed: it still waits for ${awaits.map((a) => awaited[a]).join(' and ')}. What cannot be reckoned before is left out.`,
  together: (n: number) =>
    `${n} charges were fired into one receiver and are judged together. What each of them gave of the mercury was not weighed, and no figure is made up for it.`,
  uUnknown:
    'How sure the gap is cannot be said: at least one weighing in it has no known uncertainty, so whether the run closes cannot be judged against it.',
  missingLots: (n: number, g: string) =>
    `${n} ${n === 1 ? 'lot' : 'lots'} that belonged here ${n === 1 ? 'was' : 'were'} not found: ${g} by the label, not in any figure below.`,

  figures: 'The run in figures',
  figuresAsAt: (n: number) =>
    `As it stood at opening ${n}, the last one whose sponge and mercury were both weighed. The run has gone on since.`,
  item: 'Item',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  charge: 'Charge, as weighed at charging',
  lessSponge: 'less sponge left in the retort',
  drivenOff: 'Driven off',
  lessMercury: 'less mercury caught',
  lessWater: 'less water weighed',
  gap: 'Gap',
  gapWithWater: 'Gap, mercury and water together: cannot be told apart',
  waterUnknown: 'not weighed',
  waterPartly: (g: string) => `${g}, not in every firing`,
  weighedSponge: 'Sponge weighed so far',
  weighedMercury: 'Mercury weighed so far',
  weighedWater: 'Water weighed so far',
  share: 'Against the charge and the usual',
  comesTo: 'Comes to',
  gapWithU: 'Gap with its uncertainty (k = 2)',
  gapNoU: 'how sure it is: not known',
  gapOfCharge: 'Gap as a share of the charge',
  band: 'Band: a gap that needs no remark',
  bandUpTo: (g: string, rule: string) => `from nothing up to ${g}; ${rule}`,
  spongeRatio: 'Sponge ratio (sponge of charge)',
  usual: 'Usual sponge ratio',
  usualHistory: (ratio: string, runs: number) => `${ratio}, the middle one of ${runs} earlier runs of this source`,
  usualSite: (ratio: string) => `${ratio}, as set by the site`,
  usualNone: 'none on the record; 25 to 50\u00a0% draws no remark, starting value of this program',
  ratioBand: (band: string) => `, ${band} either way`,
  caughtUpper: 'Caught of what was driven off, at most',
  caughtWhy: 'At most, because what mercury the sponge still holds is counted as gold here.',
  get notAir(): string {
    return `A balance cannot show what is in the air: ${marked('2.5')}\u00a0mg of mercury, far below these weighings, brings 100\u00a0m³ of air to ${marked('0.025')}\u00a0mg/m³. Only a vapour reading tells.`;
  },
  exact: 'Amounts are exact sums of the readings; the only rounding is in U and in shares.',
  openings: 'As it stood at each opening',
  openingsNote: 'The last sponge counts; mercury and water add up over the firings.',
  opening: 'Opening',
  get sponge(): string {
    return massHead('Sponge');
  },
  get mercury(): string {
    return massHead('Mercury');
  },
  get water(): string {
    return massHead('Water');
  },
  get gapG(): string {
    return massHead('Gap');
  },
  ofCharge: 'of charge',
  ratio: 'Ratio',
  caught: 'Caught, at most',
  perCharge: 'Charge by charge',
  perChargeNote: 'Mercury was caught together: there is none to show for a single charge.',
  chargeN: (n: number, when: string) => `Charge ${n}, ${when}`,
  get chargeG(): string {
    return massHead('Charge');
  },

  findings: 'What the figures say',
  causes: 'What usually lies behind it, the likeliest first',
  next: 'What to weigh or look at next',

  wentIn: 'What went in',
  wentInOf: (n: number, of: number, when: string) => `Charge ${n} of ${of}, ${when}`,
  retort: 'Retort',
  chargedAt: 'Charged',
  recordedBy: 'Recorded by',
  witness: 'Seen by',
  holds: 'Holds',
  holdsWords: { amalgam: 'amalgam', mercury: 'mercury to be cleaned', residues: 'residues' },
  fill: 'Filled',
  lining: 'Lining',
  lute: 'Lute',
  note: 'Note',
  lot: 'Lot',
  get label(): string {
    return massHead('By label');
  },
  get charging(): string {
    return massHead('At charging');
  },
  get drift(): string {
    return massHead('Drift');
  },
  what: 'What it is, and what was taken',
  take: { whole: 'whole', part: 'a part', 'not-found': 'NOT FOUND', unwritten: 'its clean-up is not written up yet' },
  rest: (label: string, g: string, how: string) => `a part; the rest is “${label}”, ${g}, ${how}`,
  restWeighed: 'weighed',
  restReckoned: 'by subtraction',
  looked: (where: string) => `NOT FOUND; looked: ${where}`,
  lotsTotal: 'Lots',
  total: 'Charge',
  driftTotal: 'label and drift: whole lots only',
  others: 'Besides lots',
  otherWhat: { cake: 'earlier cake', mercury: 'mercury', residue: 'residues' },
  fromVessel: (vessel: string) => `from ${vessel}`,
  sources: {
    'inside-plate': 'inside plate',
    'outside-plate': 'outside plate',
    mortar: 'mortar',
    trap: 'trap',
    pan: 'pan',
    concentrate: 'concentrate',
    scale: 'plate scale',
    floor: 'floor',
    several: 'several sources',
  },
  states: { 'scraped-wet': 'scraped wet', drained: 'drained', squeezed: 'squeezed', dried: 'dried' },
  made: (day: string) => `of ${day}`,
  seal: (seal: string) => `seal ${seal}`,
  noLots: 'No lots were charged.',

  firing: 'Firing',
  firingN: (n: number, of: number) => (of === 1 ? 'Firing' : n === 1 ? `Firing 1 of ${of}` : `Firing ${n} of ${of}, a re-fire`),
  noFiring: 'No firing is written up yet.',
  lit: 'Lit',
  firstMercury: 'First mercury',
  lastMercury: 'Last mercury',
  finish: 'Finishing heat',
  opened: 'Opened',
  atOpening: 'At opening',
  happened: 'Happened',
  measured: (c: string) => `${temperatureText(c)} measured`,
  stood: (hours: string) => `temperature not measured, stood ${hours}\u00a0h`,
  mercuryTo: 'Mercury went to',
  mercuryState: 'Mercury was weighed',
  mercuryStates: { dry: 'dry', wet: 'wet', unknown: 'dry or wet not known' },
  colour: 'Sponge looked',
  fuel: 'Fuel',
  luteSeen: 'Seen at the lute',
  fromTo: (from: string, to: string) => `${from} to ${to}`,

  checks: 'Checks before, during and after',
  checksNote:
    'Answers as recorded, with who recorded them above. An answer lets nobody through; the place’s own list and its licensed people come first.',
  phases: { before: 'Before', during: 'During', after: 'After' },
  question: 'Asked',
  answer: 'Answer',
  answers: { yes: 'yes', no: 'NO', na: 'does not apply' },
  unanswered: (questions: string) => `Not recorded: ${questions}.`,
  otherChecks: 'The site’s own',
  ofFiring: (n: number) => `firing ${n}`,
  ofChargeN: (n: number) => `charge ${n}`,

  condenser: 'Condenser and pipe of this retort',
  condenserOpen: 'This run stands on the condenser’s book once sponge and mercury are weighed.',
  condenserNone: 'Nothing stands on this condenser’s book.',
  before: 'On its book before this run',
  thisRun: 'This run’s gap',
  after: 'On its book after this run',
  cannotTell: 'Not on its book: water or mercury, cannot tell, between nothing and',
  lost: 'Above what it can hold: lost at the retort',
  lostOrWater: 'Above what it can hold: lost at the retort, or water',
  unexplained: 'More came out than the book held',
  most: (g: string) => `The most ever brushed out of it is ${g}.`,
  neverBrushed: 'It was never brushed out on the record, so nothing is put down to it.',
  since: (runs: number, g: string, day: string, cannotTell: string) =>
    `${runs === 1 ? 'One run' : `${runs} runs`} ${day === '' ? 'on its book' : `since it was brushed out on ${day}`}, this one included; gaps together ${g}${cannotTell === '' ? '' : `, and up to ${cannotTell} more that may be water`}.`,

  remarks: 'Remarks',
  noRemarks: 'None.',

  changes: 'Corrections, strikes and notes',
  noChanges: 'No entry of this run was corrected or struck.',
  changedBy: (who: string, when: string) => `${who}, written ${when}`,
  corrected: (what: string) => `Correction of ${what}`,
  struck: (what: string) => `Struck: ${what}`,
  struckCorrection: (what: string) => `Struck: a correction of ${what}`,
  noted: (what: string) => `Note about ${what}`,
  why: (why: string) => `Why: ${why}`,
  field: 'Field',
  oldReading: 'Read before',
  newReading: 'Reads now',
  asItStood: 'As it stood',
  nothingThere: 'nothing',
  sameReading: 'It changed no reading.',
  notTaken: 'This correction cannot be read as this kind of entry and changes nothing.',
  kinds: {
    charge: 'the charge',
    firing: 'the firing',
    'clean-up': 'the clean-up',
    scale: 'the scale',
    retort: 'the retort',
  } as Readonly<Record<string, string>>,
  happenedField: 'when it happened',
  entryOf: (kind: string, when: string) => `${kind} of ${when}`,

  readings: 'Readings',
  readingsNote: 'Every weight above rests on one of these lines.',
  reading: 'What',
  asRead: 'As read',
  scale: 'Scale',
  scaleN: 'Scale no.',
  get net(): string {
    return massHead('Net');
  },
  get uShort(): string {
    return massHead('± U');
  },
  gross: (g: string) => `gross ${marked(g)}`,
  tare: (t: string) => `tare ${marked(t)}`,
  ofVessel: (v: string) => `tare of ${v}`,
  volume: (v: string, c: string) => `${marked(v)} at ${temperatureText(c)}`,
  stated: (m: string) => `stated ${marked(m)}`,
  statedBy: (who: string) => `by ${who}`,
  statedU: (u: string) => `u ${marked(u)}`,
  noScale: 'not named',
  noScaleNeeded: '–',
  labelOf: (lot: string) => `${lot}, label`,
  chargedOf: (lot: string) => `${lot}, at charging`,
  restOf: (lot: string) => `${lot}, the rest`,
  spongeOf: (n: string) => `Sponge${n}`,
  mercuryOf: (n: string) => `Mercury${n}`,
  waterOf: (n: string) => `Water${n}`,
  afterFiring: (n: number) => `, firing ${n}`,
  whichCharge: (n: number) => `, charge ${n}`,
  scales: 'Scales',
  step: 'Step',
  calibration: 'Calibration',
  certificate: (number: string, U: string, k: string, at: string) =>
    `certificate${number}: U ${marked(U)} (k = ${marked(k)}) at ${marked(at)}`,
  certificateOn: (day: string) => `of ${day}`,
  certificateDue: (day: string) => `due ${day}`,
  accuracy: (c: string, e: string) => `no certificate; class ${c}, e = ${marked(e)}`,
  uncertified: 'no certificate on the record',

  signatures: 'Recorded by',
  signaturesNote: 'A signature here says who wrote the record, nothing more.',
  writer: 'Name on the record',
  wrote: 'Wrote',
  wroteTimes: (kind: string, n: number, first: string, last: string) => `${kind}, ${n} times, ${first} to ${last}`,
  signature: 'Signature and day',
  unknownThing: (id: string) => `not in the book here (${id})`,
  nobody: 'nobody named',
  about: ' (time about right)',
  dayOnly: ' (day only)',
  formOf: (number: string, page: string) => `paper form ${number}${page}`,
  formPage: (page: string) => `, page ${page}`,
  copied: (book: string, page: string) => `copied from ${book}${page}`,
  kept: (n: number) => `${n} ${n === 1 ? 'picture or document' : 'pictures or documents'} kept with it`,
  papersKept: 'From and with',
} as const;
