/**
 * Texts of the Mercury room. What is not accounted for is called that and nothing else, no sentence takes the balance for a measure of the air, and a
 * stock below nothing is told as it stands.
 */

import type { NoYield } from '../core/book/yields.ts';
import { massHead, massUnit } from './figures.ts';
import { marked } from './notation.ts';

const times = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export const stockGroups = ['store', 'circuit', 'amalgam', 'sponge', 'condenser', 'waste'] as const;
export type StockGroup = (typeof stockGroups)[number];

export const mercuryRoom = {
  title: 'Mercury',
  intro: 'Where it is by the book, what came and went, and what is not accounted for.',
  index: 'Pages of the room Mercury',
  newest: 'The newest answer',
  noCount:
    'No count of the whole site is on the book yet. Until there is one, an account ends with what the book says, and a loss is seen only where something was weighed again.',
  toAccount: 'Open this account',
  countNow: 'Count the whole site',
  toWhole: 'Account of the whole book',
  next: 'What to do next',
  toRoom: 'To the answer of this count',
  nextDeeds: {
    count: 'Count the whole site: an answer needs a count at its end.',
    countAgain: (days: number) =>
      `The last count is ${times(days, 'day', 'days')} old. What was lost since then is not seen until the next one.`,
    close: (n: number) => `${times(n, 'counted period is', 'counted periods are')} not closed yet.`,
    step: (n: number) => `${times(n, 'thing is', 'things are')} out of step: look at them before the answer is used.`,
    signal: (day: string) =>
      `The periods in a row give a signal in the one to ${day}: small differences point the same way, which no single period shows.`,
    stepNone: 'Nothing that the program looks for is out of step. That clears nobody.',
    lookFor: 'What is missing is more than the errors usually make. Begin with what makes most of the doubt.',
  },
  rooms: {
    room: { name: 'Overview', says: 'The newest answer, and what to do next.' },
    stocks: { name: 'Where it is', says: 'Every place and what it holds by the book, now.' },
    account: { name: 'Account', says: 'Where did the mercury go, over any period: both questions, line by line.' },
    count: { says: 'Weigh or answer every place, one after the other.' },
    close: { says: 'Write an account down as a statement to be signed; every closing and what later entries made of it.' },
    periods: { says: 'One period after the other, with a test over all of them.' },
    step: { says: 'What an auditor would raise, each thing with its entry.' },
    movements: { says: 'Everything the figures are sums of.' },
    yields: { says: 'Bar over ore of each clean-up.' },
  },
  stocks: 'Where it is',
  stocksNote: 'By the book, now',
  stocksNone: 'No entry has moved any mercury yet. Write up what was here when the book began.',
  firstReceipt: 'Write up mercury that was here',
  groups: {
    store: 'Store and bottles',
    circuit: 'In circuit',
    amalgam: 'Amalgam and charges',
    sponge: 'Sponge',
    condenser: 'Condensers and pipes',
    waste: 'Residues and waste',
  } satisfies Readonly<Record<StockGroup, string>>,
  place: 'Place',
  get grams(): string {
    return massHead('Mercury');
  },
  get gramsOnly(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  basis: 'Its last movement',
  known: 'How known',
  negative: 'below nothing',
  negativeSays:
    'More went out of this place than the book brought into it. Look for a receipt, a return or an issue that was not written up.',
  how: 'Working',
  howOf: (what: string) => `Working of ${what}`,
  all: 'In all places',
  noU: 'not known',
  writeUp: 'Write up',
  otherPlaces: (n: number) => `${times(n, 'other place', 'other places')} together`,
  showMore: (n: number) => `Show ${times(n, 'more place', 'more places')}`,
  earlier: (n: number) => `${times(n, 'movement', 'movements')} before these`,
  moved: (day: string, from: string, to: string) => `${day}: ${from} → ${to}`,
  holds: 'Holds',
  gold: 'Gold in strained mercury',
  goldNote: 'A range, never a constant',
  goldSays: (share: string) =>
    `Mercury strained through cloth or leather carries gold, between ${share} of its weight: what counts as gold does not count as mercury above.`,
  goldIn: 'Strained mercury in',
  get goldFrom(): string {
    return massHead('Gold, at least');
  },
  get goldTo(): string {
    return massHead('Gold, at most');
  },
  goldNone: 'No vessel on the book holds strained mercury.',

  account: 'Account of a period',
  accountTitle: 'Mercury account',
  period: 'Period',
  counted: (from: string | null, to: string) =>
    `${from === null ? 'beginning of the book' : `count of ${from}`} → count of ${to}`,
  closed: (version: number) => `closed, version ${version}`,
  notClosed: 'not closed',
  sinceCount: (from: string) => `count of ${from} → now (no count at its end)`,
  ownDays: 'Days of your own choice',
  from: 'First day',
  fromHint: 'Left empty: from the first entry.',
  to: 'Last day',
  toHint: 'Left empty: to the last entry.',
  show: 'Show this period',
  whole: 'The whole book',
  answer: 'The answer',
  sum: {
    there: 'Was there',
    came: 'Came',
    went: 'Went',
    left: 'Is there',
    unaccounted: 'Not accounted for',
  },
  sumOf: 'What was there and came, less what went and is there',
  scale: {
    name: 'Not accounted for, against nothing, against the detectable loss and against what is usual here',
    nothing: 'nothing',
    detectable: 'detectable',
    usual: 'as usual',
    found: 'not accounted for',
    says: (found: string, detectable: string, usual: string | null) =>
      `Not accounted for: ${found}. Detectable loss: ${detectable}.${usual === null ? '' : ` As usual here it would be ${usual}.`}`,
  },
  notComputable: 'not computable',
  usualRate: 'Usual here',
  usualPer: { tonne: 'a tonne of ore', run: 'a run', month: 'a month' },
  usualFrom: 'From the counted periods',
  expected: 'As usual it would be',
  beyond: 'Beyond that',
  zUsual: 'Beyond it, against its standard uncertainty',
  amount: { tonne: 'tonnes of ore in this period', run: 'runs in this period', month: 'months of this period' },
  expectedFormula: 'the usual rate, times what this period had of it',
  beyondFormula: 'not accounted for, less what is usual; what both share, as a scale or a count, cancels or adds with its sign',
  lostTo: 'its movements, each with its entry',
  print: 'Print this account',
  doubts: 'What makes the doubt',
  doubtsNote: 'And what would cut it',
  doubtOf: 'Source',
  doubtShare: 'Of the variance',
  doubtCut: 'What would cut it',
  doubtEntry: 'Entry',
  doubtOpen: 'open',
  doubtsRest: (n: number, share: string) => `${times(n, 'smaller source', 'smaller sources')} together: ${share}.`,
  doubtsSay:
    'Shares of one variance. What several weighings have in common, as one scale, was added with its sign before it was squared; the shares say where a better weighing would help most.',
  doubtsNone:
    'No error of any weighing or estimate in it is known, so nothing can be told of the doubt. Enter how sure the scales and estimates are.',
  line: 'Line',
  lines: (n: number) => times(n, 'movement', 'movements'),
  uFormula: 'what two readings share, as one scale, cancels or adds with its sign before it is squared',
  verdict: 'What it says',
  z: 'Against its standard uncertainty',
  zText: (z: string) => `|z| = ${z}`,
  zFormula: 'not accounted for, divided by its standard uncertainty (k = 1)',
  noLevel: 'Without a known uncertainty nobody can say whether this is a loss or the scales.',
  gain: 'The sign is below nothing: more is there, or went out, than the book brought in. Look for a receipt, a find or a return that was not written up.',
  detectable: 'Detectable loss',
  get detectableFormula() {
    return marked('3.2897 times the standard uncertainty: 5\u00a0% false alarm, 95\u00a0% found');
  },
  lost: 'Lost in all, with what was spilled and not gathered up',
  perTonne: 'Not accounted for, a tonne of ore',
  ore: 'Ore put through',
  paths: 'Ways it was lost',
  pathsNote: 'Bounds, not findings',
  path: 'Way',
  get posted(): string {
    return massHead('Posted');
  },
  get low(): string {
    return massHead('At least');
  },
  get high(): string {
    return massHead('At most');
  },
  pathsSay: 'What the entries post, and between what it can lie. They may not be added up.',
  wrongPeriod: 'This period cannot be shown',

  yields: 'Yield of each clean-up',
  yieldsShort: 'Yields',
  yieldsNote: 'Gross: bar over ore, newest first',
  moreCleanUps: (n: number) => `Show ${times(n, 'earlier clean-up', 'earlier clean-ups')}`,
  yieldsNone: 'No clean-up is on the book yet.',
  cleanUp: 'Clean-up',
  get bar(): string {
    return massHead('Bar');
  },
  ton: 'Ore, t',
  yield: 'Yield, g/t',
  yieldWhy: {
    'nothing-crushed': 'none: no ore is stated for it',
    'of-the-campaign': 'none of its own: what it gave, and the ore it states, are of the whole campaign',
    'not-melted': 'none yet: nothing of it was melted',
    'partly-melted': 'none yet: part of it is still in the safe',
  } satisfies Readonly<Record<NoYield, string>>,
  shared: 'shared',
  sharedSays:
    'Where a melt took sponges of several clean-ups, its bars are shared out between them by weight: those rows say “shared”.',
  yieldFormula: 'bar, divided by ore in tonnes',

  movements: 'Movements',
  movementsNote: 'Newest first',
  movementsOf: (place: string) => `Movements: ${place}`,
  movementsAll: 'All movements',
  movementsCount: (n: number) => times(n, 'movement', 'movements'),
  accountNone:
    'No mercury has come into this book yet, so every line of an account is nothing. Begin with the mercury that is already here.',
  movementsNone: 'Nothing moved here.',
  filter: 'Only of the place',
  anyPlace: 'every place',
  day: 'Day',
  fromPlace: 'From',
  toPlace: 'To',
  get gramsMoved(): string {
    return massUnit();
  },
  entry: 'Entry',
  newer: 'Newer',
  older: 'Older',
  page: (n: number, of: number) => `Page ${n} of ${of}`,
  pages: 'Pages of movements',
  back: 'To the room Mercury',
  noPlace: 'No movement on this book names this place',
} as const;
