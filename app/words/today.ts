/** Texts of the Today room. */
import { dayText, momentText } from './dates.ts';

const days = (n: number): string => (n === 0 ? 'today' : n === 1 ? '1 day' : `${n} days`);
const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export const sectionKeys = [
  'standing',
  'first-steps',
  'safe',
  'to-fire',
  'awaiting',
  'bullion',
  'not-closed',
  'loose-firings',
  'flags',
  'due',
  'drafts',
  'not-understood',
] as const;
export type SectionKey = (typeof sectionKeys)[number];

export const todayWords = {
  title: 'Today',
  next: 'Next',
  writeUp: 'Write up',
  forms: {
    receipt: 'Mercury received or already here',
    'clean-up': 'Clean-up',
    charge: 'Charge',
    firing: 'Firing',
    note: 'Note',
  },
  nothing: 'Nothing is open, due or out of step, as far as this book tells.',
  nothingSays: 'It knows only what was written in it.',
  lastEntry: (moment: string) => `Last entry written ${momentText(moment)}`,
  sections: {
    standing: { title: 'Standing', note: '' },
    'first-steps': { title: 'First steps', note: 'What the first weighing will ask for' },
    safe: { title: 'In the safe', note: 'Not charged yet' },
    'to-fire': { title: 'Charged, not fired', note: '' },
    awaiting: { title: 'Runs waiting for a weight', note: '' },
    bullion: { title: 'Bars with no assay', note: '' },
    'not-closed': { title: 'Runs to look at', note: 'Of the last 90 days' },
    'loose-firings': { title: 'Firings without a charge', note: '' },
    flags: { title: 'To look at', note: 'Entries of the last 30 days, reservations first' },
    due: { title: 'Due', note: 'Past, or within its lead time' },
    drafts: { title: 'Left unfinished', note: 'Drafts in this window' },
    'not-understood': { title: 'Not understood here', note: '' },
  } satisfies Readonly<Record<SectionKey, { title: string; note: string }>>,
  standing:
    'This site has not stated what mercury it holds and what is done with it. Every page and paper carries the question until it has.',
  stateIt: 'State the standing',
  steps: {
    person: {
      label: 'Enter a person',
      why: 'Each entry says who wrote it, by the name or the part they play here: begin with whoever writes this book.',
    },
    standing: {
      label: 'State the standing',
      why: 'What is held and what is done here: everything else is read against it, and it prints on every paper.',
    },
    scale: {
      label: 'Enter a scale',
      why: 'A weight without its scale is kept, but how sure it is cannot be said.',
    },
    vessel: { label: 'Enter a vessel', why: 'Mercury goes into a flask or bottle that has a name and a weight when empty.' },
    stock: {
      label: 'Write up the mercury that is already here',
      why: 'The standing says that a stock is held. Until it is weighed into the book, no account of the mercury can close.',
    },
    retort: {
      label: 'Enter a retort',
      why: 'A charge says which retort it went into; its pipe and condenser have a book of their own.',
    },
    plate: {
      label: 'Enter a plate',
      why: 'Where amalgam is scraped off plates: each then has its own record. Without plates, leave it out.',
    },
    meter: {
      label: 'Enter a meter',
      why: 'Where the air is read: a reading names its meter and what the meter cannot show. It can wait.',
    },
    limit: {
      label: 'Pick a limit',
      why: 'Which figure for air holds here is for the authority of the place. None is set until the site picks it; it can wait.',
    },
  },
  stepDone: 'done',
  stepLater: 'left for later',
  skip: 'Skip for now',
  takeUpAgain: 'Take it up again',
  nextOf: {
    steps: (label: string) => label,
    fire: (charge: string) => `Write up the firing: ${charge}`,
    weigh: (charge: string, what: string) => `Weigh ${what}: ${charge}`,
    charge: (n: number) => (n === 1 ? 'Charge the lot from the safe' : `Charge the ${n} lots from the safe`),
    cleanUp: 'Write up a clean-up',
  },
  awaited: { firing: 'the firing', sponge: 'the sponge', mercury: 'the mercury' },
  lots: (n: number, labels: string, grams: string) =>
    `${count(n, 'lot', 'lots')}${labels === '' ? '' : ` (${labels})`}, ${grams}`,
  fromCleanUp: (name: string) => name,
  since: (n: number) => (n === 0 ? 'since today' : `for ${days(n)}`),
  toFire: (name: string, grams: string) => `${name}: ${grams} charged`,
  waitsFor: (name: string, what: string) => `${name}: ${what} not weighed`,
  gap: (name: string, gap: string, charge: string) => `${name}: gap ${gap} of ${charge} charged`,
  looseFiring: (moment: string) =>
    `Firing of ${momentText(moment)} names no charge: write the charge up, then correct the firing to name it.`,
  reservation: 'reservation',
  allMarked: (n: number) => `${n} more: all entries with a mark`,
  dueScale: (name: string, day: string) => `Calibration of ${name}: ${dayText(day)}`,
  dueRetort: (name: string, day: string) => `Inspection of ${name}: ${dayText(day)}`,
  dueAuthority: (name: string, day: string) => `Authority “${name}” ends: ${dayText(day)}`,
  dueCheck: (name: string, day: string) => `${name}: ${dayText(day)}`,
  dueDrum: (name: string, day: string) => `Drum “${name}” must go by ${dayText(day)}`,
  dueMeter: (name: string, day: string) => `Calibration of the meter ${name}: ${dayText(day)}`,
  duePerson: (check: string, person: string, day: string) => `${check}, ${person}: ${dayText(day)}`,
  dueCount: (day: string, every: number) =>
    `Stock-take of the whole, every ${days(every)} by the site’s own word: ${dayText(day)}`,
  nothingDue: 'Nothing is past and nothing falls due.',
  lookedAhead: (until: string, leads: number, own: readonly string[]) =>
    `Looked ahead to ${dayText(until)} (${days(leads)})${own.length === 0 ? '' : `; ${own.join(', ')}`}.`,
  ownLead: (thing: string, until: string) => `${thing}: to ${dayText(until)}`,
  personsDue: 'The days of a person’s checks are shown to the safety officer.',
  leads: 'Lead times',
  overdue: (n: number) => (n === 1 ? 'past by 1 day' : `past by ${n} days`),
  dueIn: (n: number) => (n === 0 ? 'due today' : n === 1 ? 'in 1 day' : `in ${n} days`),
  draft: (name: string, moment: string) => (moment === '' ? name : `${name}, last touched ${momentText(moment)}`),
  draftOf: {
    standing: 'Standing',
    correction: (name: string) => `Correction: ${name}`,
    strike: (name: string) => `Strike: ${name}`,
    note: (name: string) => `Note on ${name}`,
    firing: (name: string) => `Firing: ${name}`,
    later: (name: string) => `Weight added to ${name}`,
    restated: (kind: string, name: string) => `${kind}: ${name}`,
    other: (name: string) => `Form “${name}”`,
    unread: (name: string) => `${name}: this draft could not be read; it is kept`,
  },
  takeUp: 'Take it up',
  unknown: (n: number) =>
    `${count(n, 'entry', 'entries')} of a kind this program does not know, written by a newer version. ${n === 1 ? 'It is' : 'They are'} carried along and count in no figure here.`,
  look: 'Look',
} as const;
