/** Words of the plan of plates with amalgam by plate. */
import { massHead } from './figures.ts';

const many = (n: number, one: string, more: string): string => (n === 1 ? `one ${one}` : `${n} ${more}`);
const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

export const platesDrawn = {
  title: 'Amalgam by plate',
  link: 'Amalgam by plate',
  intro:
    'The plates as registered, from the mortar down the flow, with the amalgam scraped from each as weighed on the labels of its balls. It is amalgam, not gold: how much gold is in it is known when it is retorted and assayed.',
  plan: 'Plan',
  noPlates: 'No plate is registered yet.',
  register: 'Register a plate',
  period: 'Period',
  all: 'All that was written',
  campaign: (day: string): string => `Campaign up to the clean-up of ${day}`,
  running: 'Campaign that still goes on',
  chart: (period: string): string => `Amalgam by plate: ${period}`,
  battery: (name: string, stamps: number | undefined): string =>
    stamps === undefined ? name : `${name}, ${many(stamps, 'stamp', 'stamps')}`,
  noBattery: 'Plates of no registered battery',
  noPlace: 'place down the flow not registered',
  noSize: 'size not registered',
  outOfUse: 'no longer in use',
  size: (length: string, width: string): string => `${length} × ${width} m`,
  none: 'nothing that names it alone',
  share: (text: string): string => `${text} of what names one plate`,
  cleanUps: (n: number): string => many(n, 'entry', 'entries'),
  together: (text: string, names: readonly string[]): string => `${text} from ${listed(names)} together, not divided`,
  told: (name: string, parts: readonly string[]): string => `${name}: ${parts.join(', ')}`,
  hint: 'Point at a plate, or reach it with Tab and the arrow keys, to have it told here; Enter shows its clean-ups.',
  legend: [
    'Hatching: the closer the lines, the more amalgam, in quarters of the plate that gave most. An empty plate: nothing was written that names it alone. The figure stands under each.',
    'A broken outline: its size is not registered, and it is drawn like the others. Where every size is registered the plates are to scale among each other.',
    'A bracket: an amount scraped from those plates together. It is in no plate’s figure, because nothing says how it divides.',
  ],
  table: 'Amalgam by plate, as a table',
  what: 'Plate',
  get amalgam(): string {
    return massHead('Amalgam');
  },
  shareHead: 'Share',
  entries: 'Written in',
  togetherRow: (names: readonly string[]): string => `${listed(names)}, together`,
  unsaid: 'Of plates or of a place not written, and no plate named',
  elsewhere: 'Of mortar, traps, pan, concentrate or floor: of no plate',
  total: 'All amalgam of the period',
  of: (name: string): string => `Clean-ups of ${name}`,
  ofNote: 'Every entry with a ball that names this plate, alone or with others',
  ofNone: 'No clean-up of this period names this plate.',
  day: 'Day',
  entry: 'Entry',
  alone: 'From it alone',
  shared: 'From it and others',
  copySvg: 'Copy the plan as SVG',
  copyCsv: 'Copy the table as CSV',
  csv: ['battery', 'plate', 'place', 'length m', 'width m', 'amalgam g', 'share', 'entries'],
} as const;
