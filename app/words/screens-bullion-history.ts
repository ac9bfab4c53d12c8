/** Texts of the room's histories: what each source gave over time, and what was usual of it before. */
import type { HistoryKind } from '../core/book/bullion-history.ts';
import { marked } from './notation.ts';

interface KindWords {
  readonly title: string;
  readonly note: string;
  readonly chart: string;
  readonly what: string;
  /** Head of the values, with their unit. */
  readonly value: string;
  readonly none: string;
  /** The name of its file. */
  readonly file: string;
}

export const historyWords = {
  title: 'History of each source',
  link: 'Fineness, sponge and shrinkage of each source over time',
  get intro() {
    return marked(
      'Each value is held against what the same source gave before it. Usual is the median of the earlier values, give or take twice their robust spread (1.4826 times the median absolute deviation), once there are five. Outside it is a reason to look, and no judgment of the run: the run page judges by the bands this site set.',
    );
  },
  toYields: 'Yields by clean-up, parcel and campaign',
  kinds: {
    fineness: {
      title: 'Fineness of bars',
      note: 'Gold in bars that were assayed or certified, by what their melt was made of. A density, and a bar known by its parts alone, are left out.',
      chart: 'Fineness of bars by source over time, parts per thousand',
      what: 'Bar',
      value: 'Gold, ‰',
      none: 'No bar with a source has an assay yet.',
      file: 'fineness',
    },
    sponge: {
      title: 'Sponge ratio',
      note: 'Sponge over charge of runs that wait for nothing, by source and retort. Charges caught together are left out.',
      chart: 'Sponge ratio by source and retort over time, per cent',
      what: 'Charge',
      value: 'Sponge, %',
      none: 'No run of amalgam has both its weights yet.',
      file: 'sponge-ratio',
    },
    shrinkage: {
      title: 'Shrinkage in melting',
      note: 'What a melt lost, before prills, over what went in, by the source of its sponges. It is mercury, dirt and metal in slag together, and no weighing here tells them apart.',
      chart: 'Shrinkage of melts by source over time, per cent',
      what: 'Melt',
      value: 'Shrinkage, %',
      none: 'No melt of sponge has its weights yet.',
      file: 'shrinkage',
    },
  } satisfies Readonly<Record<HistoryKind, KindWords>>,
  severalSources: 'Several sources',
  unknownSource: 'Source not recorded',
  ofRetort: (source: string, retort: string) => `${source}, ${retort}`,
  latest: (shown: number, all: number) =>
    `The latest ${shown} of ${all} values of a source are drawn and listed; the CSV has all.`,
  U: '± U',
  usual: 'Usual before',
  spread: '± two spreads',
  stands: 'Against it',
  marks: {
    early: 'too few before it',
    usual: 'within',
    outside: 'outside',
  },
  hint: 'Point at a value, or go through them with the arrow keys.',
  legend: [
    'Ring: fewer than five values before it. Filled dot: within what was usual. Diamond: outside it.',
    'Upright stroke: the value’s own uncertainty, k = 2, where it is known. Shaded: usual until then; dashed: its median.',
    'All panels have one scale, which does not begin at nothing.',
  ],
  told: (name: string, day: string, value: string, unit: string) => `${name}, ${day}: ${value} ${unit}`,
  toldUsual: (told: string, median: string, half: string, earlier: number, stands: string) =>
    `${told}; usual ${median} ± ${half} by ${earlier} before it: ${stands}`,
  toldEarly: (told: string) => `${told}; too few before it to say`,
  permille: '‰',
  percent: '%',
  copySvg: 'Copy the drawing as SVG',
  copyCsv: 'Copy the table as CSV',
  csvHead: ['source', 'retort', 'id', 'happened', 'value', 'u', 'usual_median', 'usual_half_width', 'earlier', 'stands'],
} as const;
