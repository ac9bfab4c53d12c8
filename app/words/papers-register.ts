/** Texts of the mercury register: container by container, what came in and out, by whom and under which papers, and what a weighing then found. */
import { massHead, massUnit } from './figures.ts';
import { marked } from './notation.ts';

export const registerPaper = {
  name: 'Mercury register',
  all: (from: string, to: string) => `By container, ${from} to ${to}`,
  one: (vessel: string, from: string, to: string) => `${vessel}, ${from} to ${to}`,
  number: 'Every container on the book',
  numberOne: (id: string) => `Filed under the container’s own entry, ${id}`,

  containers: 'Containers',
  container: 'Container',
  class: 'Mercury',
  seal: 'Seal',
  place: 'Kept at',
  get byBook(): string {
    return massHead('By the book');
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  lastWeighed: 'Last weighed or seal seen',
  never: 'never on the book',
  total: 'In containers',
  noContainers: 'No container is on the book.',
  containersNote:
    'Mercury in plates, boxes, lots, retorts and sponge stands in the mercury account of the same period; this register holds what is in containers, waste drums among them.',

  use: 'Use',
  uses: { flask: 'flask', bottle: 'bottle', jar: 'jar', receiver: 'receiver', dish: 'dish', drum: 'drum', other: 'other' },
  classes: { new: 'new', strained: 'strained', retorted: 'retorted', mixed: 'mixed', unknown: 'class not known' },
  noSeal: 'open, or no seal on the record',
  tare: 'Empty, as stated',
  out: 'Out of use since',
  note: 'Note',

  day: 'Day',
  what: 'What, with whom, under which papers',
  get in(): string {
    return massHead('In');
  },
  get outG(): string {
    return massHead('Out');
  },
  get balance(): string {
    return massHead('Balance');
  },
  known: 'Known as',
  by: 'By',
  carried: (day: string) => `Carried from before ${day}`,
  atEnd: 'At the end, by the book',
  ranOut: 'ran out',
  gatheredUp: 'gathered up again',
  counted: 'count against the book',
  noMovements: 'Nothing came or went in this time.',

  weighings: 'Weighed or looked at',
  get found(): string {
    return massHead('Found');
  },
  get expected(): string {
    return massHead('By the book before');
  },
  get difference(): string {
    return massHead('Difference');
  },
  reason: 'Reason, as noted',
  noReason: 'none noted',
  sealStands: (seal: string) => `seal ${seal} stands: not opened, not weighed`,
  unanswered: (why: string) => `could not be counted: ${why}`,
  notFound: (note: string) => `not found${note === '' ? '' : `: ${note}`}`,
  firstCount: 'first count: what was there before the book',
  noWeighings: 'It was not weighed or looked at in this time. Its balance rests on what came and went alone.',

  from: (who: string) => `from ${who}`,
  to: (who: string) => `to ${who}`,
  document: (d: string) => `document ${d}`,
  underSeal: (s: string) => `seal ${s}`,
  carrier: (c: string) => `carrier ${c}`,
  purpose: (p: string) => `for ${p}`,
  code: (c: string) => `waste code ${c}`,
  started: (d: string) => `begun ${d}`,
  due: (d: string) => `to go by ${d}`,
  theirs: (m: string, day: string) => `weighed there as ${marked(m)} on ${day}`,
  ways: {
    bought: 'bought',
    given: 'given',
    'already-here': 'already here when the book began',
    'moved-in': 'moved in from another site',
  },

  losses: 'Losses of this time, kept apart',
  lossesNote:
    'What was weighed, what was estimated, and what nobody can account for are three different things and are not added up here.',
  measured: 'Measured: spilled and not gathered up',
  estimated: 'Estimated or by difference:',
  unaccounted: 'Not accounted for, from counts of single places',
  wholeAccount: 'Not accounted for, by the whole account of this time',
  get grams(): string {
    return massUnit();
  },
  item: 'Item',

  get notAir(): string {
    return `A register that balances says nothing about the air: ${marked('2.5')}\u00a0mg of mercury, far below these scales, brings 100\u00a0m³ of air to ${marked('0.025')}\u00a0mg/m³.`;
  },
} as const;
