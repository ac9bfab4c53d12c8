/** Texts of the transfer sheet. It repeats what moved and puts both weights side by side; who decides whether a thing may travel is named and left blank. */
import { massHead, massUnit } from './figures.ts';

export const transferPaper = {
  name: 'Transfer sheet',
  subject: (what: string, way: string, party: string, day: string) => `${what} ${way} ${party}, ${day}`,
  ways: { out: 'to', in: 'from' },
  number: (id: string) => `Filed under its own entry, ${id}`,

  moved: 'What moved',
  way: 'Way',
  wayTexts: { out: 'out of this site', in: 'into this site' },
  what: 'What',
  things: { mercury: 'Mercury', amalgam: 'Amalgam', sponge: 'Sponge', bar: 'Bar', plate: 'Plate', waste: 'Waste or sweepings' },
  thing: 'Which',
  noThing: 'not named',
  party: 'Other party',
  day: 'Day',
  purpose: 'For what',
  counts: 'Counted here as',
  countsTexts: { disposal: 'handed over, with a known content', loss: 'a loss' },
  document: 'Document',
  theirDocument: 'Their document',
  carrier: 'Carrier',
  seal: 'Seal',
  by: 'Recorded by',
  witness: 'Seen by',
  note: 'Note',
  papersKept: 'From and with',

  weights: 'Weights, side by side',
  item: 'Weight',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  asRead: 'As read',
  ours: 'Ours',
  theirs: (on: string) => `Theirs, of ${on}`,
  difference: 'Theirs less ours',
  noOurs: 'Our own weight is not on the record.',
  noTheirs: 'The other side’s weight is not on the record yet. It is written beside ours when it comes, and replaces nothing.',
  agrees: 'The two differ by no more than their uncertainties together explain (k = 2).',
  differs:
    'The two differ by more than their uncertainties together explain (k = 2): ask both for seal, tare, unit and scale before anything is settled.',
  cannotTell: 'How sure at least one of the two is was not recorded, so whether they agree cannot be told.',

  mercury: 'Mercury in it, as the account books it',
  mercuryFrom: 'From',
  mercuryTo: 'To',
  known: 'Known as',
  noMercury: 'The mercury account books nothing for this transfer.',
  share: (share: string, u: string, basis: string) => `Share of mercury: ${share}${u}${basis}.`,
  shareU: (u: string) => `, u ${u}`,
  shareBasis: (b: string) => `, by ${b}`,

  decides: 'Who decides',
  decidesNote:
    'This sheet declares nothing: it is no consignment note, no dangerous-goods note, no customs paper and no permit. Each line is answered by the one named, in writing, before anything moves.',
  question: 'What has to be answered',
  whom: 'By whom',
  reference: 'Answered by, reference and day',
  questions: [
    ['Whether it may leave, or come, at all; whether it counts as waste and under which code', 'the authority for this place'],
    ['Whether consent to cross a border is needed, and from whom', 'the authorities on both sides'],
    ['How it is packed, marked, labelled and carried, and by which vehicle', 'the carrier, by its own rules'],
    ['Whether it is taken in, in what container, up to what content', 'the receiver, and the authority that oversees it'],
    ['Which papers travel with it and who signs them', 'carrier, receiver and authority'],
    ['What it weighed on arrival, and whether the seal was whole', 'the receiver'],
  ],
  handed: 'Handed over and taken',
  handedNote: 'A signature here says who handed over or took what stands above, nothing more.',
  role: 'Who',
  name2: 'Name',
  signature: 'Signature, day and hour',
  roles: ['Handed over by', 'Carried by', 'Taken by'],
} as const;
