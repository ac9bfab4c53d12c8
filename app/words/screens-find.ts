/** Texts of the page Find and of its link in the head. */
import type { FoundThing } from '../core/book/findable.ts';
import type { Hidden } from '../core/book/may-see.ts';
import { dayText } from './dates.ts';

const count = (n: number, one: string, many: string): string => `${n.toLocaleString('en-GB')} ${n === 1 ? one : many}`;

export const findWords = {
  title: 'Find',
  key: 'F2',
  note: 'In the whole book',
  words: 'Words to find',
  hint: 'Every word must stand in it. Capitals and accents do not count.',
  narrow: 'Narrow it',
  what: 'What',
  anything: 'Anything',
  kind: 'Written up as',
  anyKind: 'Any kind of entry',
  from: 'From day',
  to: 'To day',
  things: {
    lot: 'Lots',
    bar: 'Bars',
    vessel: 'Vessels',
    scale: 'Scales',
    meter: 'Meters',
    retort: 'Retorts',
    battery: 'Batteries',
    plate: 'Plates',
    parcel: 'Parcels of ore',
    authority: 'Authorities',
    limit: 'Limits',
    person: 'People',
    document: 'Papers named',
    evidence: 'Pictures and files',
    entry: 'Entries',
  } satisfies Readonly<Record<FoundThing, string>>,
  before:
    'It looks through lots, bars, vessels, scales, meters, retorts, batteries, plates, parcels, authorities, limits, people by name and role, papers that entries name, pictures kept with them, and all that was written in entries.',
  found: (n: number, lookedIn: number) => `${n.toLocaleString('en-GB')} found, of ${lookedIn.toLocaleString('en-GB')} looked in`,
  some: (shown: number, total: number) => (shown < total ? `the first ${shown} of ${total.toLocaleString('en-GB')}` : `${total}`),
  all: (total: number, things: string) => `All ${total.toLocaleString('en-GB')}: ${things}`,
  more: 'A word or a day more will narrow it.',
  nothing: 'Nothing is found that holds every one of these words.',
  nothingHere: 'Nothing is found within this.',
  lookedIn: (n: number) =>
    `Looked in ${count(n, 'thing, paper or entry', 'things, papers and entries')}: lots, bars, what the registers hold, people by name and role, papers and pictures, and all that was written in entries, with what corrections said.`,
  within: (what: string, kind: string, from: string, to: string) =>
    `Only within: ${[what, kind, from === '' ? '' : `from ${dayText(from)}`, to === '' ? '' : `to ${dayText(to)}`].filter((part) => part !== '').join(', ')}.`,
  everywhere: 'Look for it without that',
  withheld: {
    'bar-place': 'Where bars are kept was not looked in: it is shown to people whose work here is keeper or assayer.',
    'personal-air':
      'What one person breathed, and the days of a person’s checks, were not looked in: they are shown to the safety officer.',
  } satisfies Readonly<Record<Hidden, string>>,
  stated: (day: string) => `as stated on ${dayText(day)}`,
  file: 'Picture or file',
  struck: 'struck',
} as const;
