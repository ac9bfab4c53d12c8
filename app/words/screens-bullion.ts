/** Texts of the room Bullion: what waits, the bars, and the page of one bar. It calls no figure certain and no bar fit to be sold. */

import type { BarFate } from '../core/book/bars.ts';
import type { FinenessClass } from '../core/book/fineness.ts';
import { massHead } from './figures.ts';
import { marked } from './notation.ts';

export const bullion = {
  title: 'Bullion',
  intro:
    'From sponge to bar to fineness to yield. A bar keeps its ties to the ore it came from; every fineness says how it was found and how sure it is.',
  back: 'To the bars',
  toRoom: 'Sponges that wait, bars, assays and yields: the room Bullion',

  next: 'Next',
  nextOf: {
    umpire: (n: number) =>
      n === 1
        ? 'One difference lies over its splitting limit and waits for an umpire’s figure.'
        : `${n} differences lie over their splitting limits and wait for an umpire’s figure.`,
    melt: (n: number) => (n === 1 ? 'One sponge is not melted yet.' : `${n} sponges are not melted yet.`),
    assay: (n: number) => (n === 1 ? 'One bar has no assay yet.' : `${n} bars have no assay yet.`),
    away: (n: number) => (n === 1 ? 'One assayed bar is here.' : `${n} assayed bars are here.`),
    none: 'Nothing waits in this room. Bars appear here once a sponge has been fired and melted.',
  },
  writeUp: 'Write up',
  newMelt: 'Write up a melt',
  newAssay: 'Write up an assay',
  newSettlement: 'Write up a settlement',
  newAway: 'Hand a bar over',

  waits: 'What waits',
  sponges: 'Sponges not melted',
  spongesNote: 'They still hold mercury and give it off where they lie.',
  spongesNone: 'No sponge waits to be melted.',
  sponge: 'Sponge of',
  fired: 'Fired',
  get spongeMass(): string {
    return massHead('Sponge');
  },
  meltIt: 'Melt it',
  unassayed: 'Bars with no assay',
  unassayedNone: 'No bar waits for an assay.',
  assayIt: 'Assay it',
  umpires: 'Differences over the splitting limit',
  umpiresNone: 'No settlement waits for an umpire.',
  umpireSays: (bar: string, difference: string, limit: string) =>
    `${bar}: ${difference} parts per thousand between the two, ${limit} allowed, and no umpire’s figure yet.`,
  umpireIt: 'Write the umpire’s figure',

  bars: 'Bars',
  barsNote: 'The newest first. ± U is at k = 2; an empty one is not known.',
  barsNone: 'No bar was poured yet. A melt makes bars.',
  bar: 'Bar',
  get mass(): string {
    return massHead('Mass');
  },
  U: '± U',
  gold: 'Gold, ‰',
  silver: 'Silver, ‰',
  get fineGold(): string {
    return massHead('Fine gold');
  },
  get fineSilver(): string {
    return massHead('Fine silver');
  },
  standing: 'Standing',
  more: (n: number) => `Show ${n} more`,
  notAssayed: 'not assayed',
  odd: 'cannot be',
  fates: { here: 'here', left: 'sent away', melted: 'melted again' } satisfies Readonly<Record<BarFate, string>>,
  ofSponges: (names: string) => `sponge of the ${names}`,
  ofBars: (labels: string) => `earlier bars ${labels}`,
  ofOther: (labels: string) => `other metal (${labels})`,
  classes: {
    certificate: 'certificate of another laboratory',
    titration: 'titration',
    proofed: 'fire assay with proofs',
    unproofed: 'fire assay without proofs, uncorrected',
    'by-parts': 'by the bars melted together, weighed in by mass',
    indicative: 'density, indicative only',
  } satisfies Readonly<Record<FinenessClass, string>>,

  one: {
    noSuch: 'There is no such bar in this book',
    title: (label: string) => `Bar ${label}`,
    poured: (day: string) => `poured ${day}`,
    do: 'What to do with it',
    assay: 'Write up an assay',
    settle: 'Settle it with the buyer',
    away: 'Hand it over',
    transfer: 'Write that it came back',
    outTurnWrite: 'Write up an out-turn',
    kept: 'Write where it is kept',
    holds: 'What it holds',
    holdsNone: 'No assay of this bar is written down: what it holds is not known.',
    base: 'Neither gold nor silver',
    baseBelow: 'Gold and silver together are over 1000 parts. That cannot be: both are kept as found; assay it again.',
    by: 'By',
    metal: 'Metal',
    permille: '‰',
    get grams(): string {
      return massHead('Fine');
    },
    goldName: 'Gold',
    silverName: 'Silver',
    noSampling: 'What sampling adds was not stated. It is not in U, and is often more than all the rest.',
    indicative: 'The gold rests on a density: an indication, and no basis for a settlement.',
    uNotKnown: 'How sure it is cannot be said: at least one term is not known.',
    termsOf: (metal: string) => `What makes the uncertainty of the ${metal}`,
    term: 'Term',
    termU: 'u, ‰ (k = 1)',
    shareOfU: 'Share of u²',
    origin: 'Where it came from',
    originNote: 'From the pot back to the mill.',
    steps: {
      melt: 'Melt',
      charges: 'Charges',
      bars: 'Earlier bars',
      lots: 'Lots',
      cleanUps: 'Clean-ups and other work',
      crushings: 'Crushings since the last clean-up of that type',
    },
    stepsMore: (n: number) => `and ${n} earlier`,
    assays: 'Assays',
    assaysNone: 'None is written down.',
    open: 'Open the entry',
    settlement: 'Settlement',
    settlementNote: 'A figure agreed between two parties. It stands beside the assays and changes none of them.',
    settlementNone: 'Not settled.',
    earlier: 'An earlier settlement; a later one counts.',
    moves: 'What became of it',
    movesNone: 'It is here, by the book; nothing was written of it since it was poured.',
    place: 'Where it is kept',
    placeHidden:
      'Not shown: only people whose work at the site is keeper or assayer see it here. This hides it from view and is no lock: whoever holds the folder can read the book.',
    placeNone: 'Nobody wrote down where it is kept.',
    placeNotPrinted: 'It is not printed on any paper and stands in no table that leaves.',
    outTurn: 'Ours and theirs',
    outTurnNote: 'Neither figure takes the place of the other.',
    what: 'What',
    get ours(): string {
      return massHead('Ours');
    },
    get theirs(): string {
      return massHead('Theirs');
    },
    get difference(): string {
      return massHead('Ours less theirs');
    },
    sentReceived: 'Weight: sent, and as they received it',
    afterMelt: 'Weight after they melted it',
    fineOf: (metal: string) => `Fine ${metal}`,
    creditedOf: (metal: string) => `Fine ${metal} credited`,
    keptBack: (metal: string) => `Fine ${metal} kept back`,
    severalBars: (n: number) => `This out-turn is of ${n} bars together; all figures are of them together.`,
    notKnown: 'not known',
    charge: (what: string, amount: string, currency: string) => `${what}: ${marked(amount)} ${currency}`,
    since: (day: string) => `since ${day}`,
    seal: (text: string) => `seal ${text}`,
    print: 'Print the bar record',
    paperSays:
      'The record certifies nothing. It repeats what was written down and what follows from it, and never where the bar is kept.',
    meltSheet: 'Melt sheet',
    remarks: 'To be looked at',
  },
} as const;

/** What an unfinished form of this room is called; `bar` is the bar it is about, where there is one. */
export const bullionDrafts = {
  melt: () => 'Melt',
  assay: (bar: string) => (bar === '' ? 'Assay' : `Assay of bar ${bar}`),
  settle: (bar: string) => (bar === '' ? 'Settlement' : `Settlement of bar ${bar}`),
  away: (bar: string) => (bar === '' ? 'Bar handed over' : `Bar ${bar} handed over`),
} as const;
