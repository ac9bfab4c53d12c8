/** Texts of the page of one lot. */

import type { LotWeighing } from '../core/book/lot-story.ts';
import { massHead, massUnit } from './figures.ts';

const when: Readonly<Record<LotWeighing['when'], string>> = {
  made: 'When it was made, on its label',
  charged: 'When it was charged',
};

export const lotPage = {
  title: (label: string) => `Lot ${label}`,
  note: (made: string, fate: string) => `Made ${made} · ${fate}`,
  weights: 'On the scale',
  weightsNote: 'Each time it was weighed',
  when,
  occasion: 'When',
  day: 'Day',
  get weight(): string {
    return massHead('Net');
  },
  get u(): string {
    return `± ${massUnit()}`;
  },
  get drift(): string {
    return massHead('Against its label');
  },
  entry: 'Entry',
  facts: 'On its label',
  state: 'State',
  source: 'From',
  seal: 'Seal',
  madeBy: 'Made by',
  from: 'Where it came from',
  fromNote: 'Through splitting, cleaning and squeezing',
  splitFrom: 'Split from',
  madeFrom: 'Made from',
  origin: 'Entry its metal came from',
  get originWeight(): string {
    return massHead('Of its weight');
  },
  became: 'What became of it',
  inSafe: 'It is in the safe, not yet charged.',
  charge: 'Charge it',
  label: 'Print its label',
  run: 'It went into this run:',
  split: 'It was split into:',
  worked: 'It was cleaned or squeezed, and these came out:',
  workedNothing: 'It was cleaned or squeezed, and no lot came out.',
  left: 'It was handed over:',
  notFound: 'It was not found when this was charged, and still stands on the book:',
  entries: 'Its entries',
  entriesNote: 'That made it, name it or correct these',
  back: 'Back to the retort room',
  noSuch: 'No such lot',
  noSuchSays: 'There is no lot under this address in this daybook. Its entry may be struck, or still be on another desk.',
} as const;
