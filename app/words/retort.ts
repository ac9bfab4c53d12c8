/** Texts of the Retort room: the safe, the list of runs, and the names of answers of clean-ups, charges, firings and receipts. */

import type { Fate } from '../core/book/lots.ts';
import type { Awaited } from '../core/book/runs.ts';
import type { ChargeKind } from '../core/kinds/charge.ts';
import type { cleanUpTypes, LotSource, LotState } from '../core/kinds/clean-up.ts';
import type { spongeColours } from '../core/kinds/firing.ts';
import type { receiptWays } from '../core/kinds/receipt.ts';
import type { FindingCode } from '../core/run.ts';
import { massHead } from './figures.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const lotStateNames: NameOf<LotState> = {
  'scraped-wet': 'Scraped, wet',
  drained: 'Drained',
  squeezed: 'Squeezed',
  dried: 'Dried',
};
export const lotSourceNames: NameOf<LotSource> = {
  'inside-plate': 'Inside plates',
  'outside-plate': 'Outside plates',
  mortar: 'Mortar box',
  trap: 'Traps',
  pan: 'Pan',
  concentrate: 'Concentrate',
  scale: 'Plate scale',
  floor: 'Floor and sweepings',
  several: 'Several of these',
};
export const cleanUpNames: NameOf<(typeof cleanUpTypes)[number]> = {
  routine: 'Routine',
  mid: 'Mid-term',
  general: 'General',
  final: 'Final',
};
export const chargeKindNames: NameOf<ChargeKind> = { amalgam: 'Amalgam', mercury: 'Mercury to be cleaned', residues: 'Residues' };
export const colourNames: NameOf<(typeof spongeColours)[number]> = {
  yellow: 'Clean yellow',
  grey: 'Grey',
  white: 'White or silvery',
  black: 'Black',
};
export const receiptNames: NameOf<(typeof receiptWays)[number]> = {
  'already-here': 'It was here when this book began',
  bought: 'Bought',
  given: 'Given',
  'moved-in': 'Moved in from another place',
};
export const fateNames: NameOf<Fate> = {
  'in-safe': 'in the safe',
  charged: 'charged',
  split: 'split',
  worked: 'cleaned or squeezed',
  left: 'handed over',
  'not-found': 'not found',
};

/** What a run waits for, as its state in the list. */
export const awaitedNames: NameOf<Awaited> = {
  firing: 'open, awaiting firing',
  sponge: 'awaiting sponge',
  mercury: 'awaiting mercury',
};
/** What a closed run came to, in a few words. */
export const findingNames: NameOf<FindingCode> = {
  closes: 'closes',
  'within-band': 'within the band',
  'short-of-mercury': 'short of mercury',
  'more-out-than-in': 'more out than in',
  'heavy-sponge': 'heavy sponge',
  'light-sponge': 'light sponge',
  'water-not-known': 'water not known',
};

/** How a run stands, in the same words on every page and paper: what it waits for, else what its numbers show. */
export function verdictText(awaits: readonly Awaited[], findings: readonly FindingCode[]): string {
  const [first] = awaits;
  if (first === undefined) return findings.map((finding) => findingNames[finding]).join(', ');
  return awaits.length > 1 ? `${awaitedNames.sponge}, ${awaitedNames.mercury}` : awaitedNames[first];
}

const days = (n: number) => (n === 1 ? '1 day' : `${n} days`);

export const retort = {
  title: 'Retort',
  intro: 'From the balls in the safe to sponge and mercury: every weight that goes in, and every weight that comes out.',
  writeUp: 'Write up',
  newCleanUp: 'Clean-up',
  newCharge: 'Charge a retort',
  newFiring: 'Firing without its charge',
  newReceipt: 'Mercury received',
  needRetort: 'No retort is in the register yet. Enter it first: a charge names the retort it went into.',
  enterRetort: 'Enter a retort',
  back: 'Back to the retort room',
  nextCleanUp: 'Nothing is in the safe yet. Begin with the clean-up that made the balls or lots.',
  nextAgain: 'Nothing is in the safe and no run is open. The next thing here is a clean-up.',
  nextCharge: (n: number, sum: string) =>
    `${n === 1 ? '1 lot waits' : `${n} lots wait`} in the safe, ${sum}. Next: charge a retort.`,
  nextRun: (n: number) => (n === 1 ? 'One run is open. Next: go on with it.' : `${n} runs are open. Next: go on with them.`),
  safe: 'In the safe',
  safeNote: 'Balls and lots not yet charged',
  safeEmpty: 'Nothing is in the safe by this book. A clean-up puts its balls or lots here.',
  lot: 'Ball or lot',
  state: 'State',
  source: 'From',
  get weight(): string {
    return massHead('Weight');
  },
  age: 'Age',
  from: 'Made by',
  ageOf: (n: number) => (n <= 0 ? 'today' : days(n)),
  cleanUpOf: (day: string) => `Clean-up of ${day}`,
  splitOf: (day: string) => `Rest, charge of ${day}`,
  seal: (seal: string) => `seal ${seal}`,
  sum: (n: number) => (n === 1 ? '1 lot' : `${n} lots`),
  missing: 'Not found',
  missingNote: 'Still on the book',
  missedAt: 'Missed at',
  runs: 'Runs',
  runsNote: 'Newest first',
  runsEmpty: 'No charge has been written up yet.',
  runDay: 'Day',
  runRetort: 'Retort',
  get runCharge(): string {
    return massHead('Charge');
  },
  get runGap(): string {
    return massHead('Gap');
  },
  runRatio: 'Sponge, % of charge',
  runState: 'State',
  struck: 'struck out',
  togetherMark: 'caught together',
  chargeOf: (day: string, name: string) => `${day}, ${name}`,
  chargeNamed: (day: string, name: string, sum: string) => `${day}, ${name}, ${sum}`,
  ballsMore: (labels: string, more: number) => `${labels} and ${more} more`,
  dayAndBalls: (day: string, balls: string) => (balls === '' ? day : `${day}, ${balls}`),
  loose: 'Open ends',
  looseFiring: (moment: string) => `Firing of ${moment} names no charge yet.`,
  looseLot: (label: string, day: string) => `“${label}” was charged on ${day}, and its clean-up is not written up.`,
  lookAt: 'Look at it',
  condensers: 'Condensers',
  upTo: (g: string) => `0 to ${g}`,
  condensersNote: 'What each holds by the book',
  condenser: {
    get held(): string {
      return massHead('On its book');
    },
    get most(): string {
      return massHead('Most ever brushed out');
    },
    get together(): string {
      return massHead('Their gaps together');
    },
    get cannotTell(): string {
      return massHead('Water or mercury, cannot tell');
    },
    since: 'Runs since brushing',
    soFar: 'Runs so far',
    never: 'never brushed out',
  },
  notRecorded: 'not recorded',
  unknownCharge: 'No such run',
  unknownChargeSays: 'There is no charge under this address in this daybook. It may still be on another desk.',
} as const;
