/** Texts of the parcel return: what one owner's ore gave. */

import type { NoParcelYield } from '../core/book/parcel-yields.ts';
import { massHead } from './figures.ts';

export const parcelPaper = {
  name: 'Parcel return',
  subject: (label: string, owner: string | null) => (owner === null ? label : `${label}, ${owner}`),
  number: (id: string) => `Filed under the entry of the parcel, ${id}`,
  isNot:
    'This return repeats what was written down of the parcel and what follows from it. It settles nothing between owner and site, and states no value.',

  parcel: 'The parcel',
  label: 'Parcel',
  owner: 'Owner',
  ore: 'Ore',
  oreFrom: { register: 'as the register of parcels states it', crushings: 'as its crushings add up' },
  oreText: (tonnes: string, u: string, from: string) => `${tonnes} t, ${u}, ${from}`,
  oreU: (tonnes: string) => `u ${tonnes} t`,
  noOreU: 'uncertainty not stated',

  sources: 'Clean-ups it has its gold from',
  cleanUp: 'Clean-up',
  get bullion(): string {
    return massHead('Bullion');
  },
  get fine(): string {
    return massHead('Fine gold');
  },
  how: 'How',
  alone: 'of this parcel alone',
  allocated: 'allocated',
  total: 'Together',
  none: 'None yet.',
  rule: 'Allocated: the clean-up stands for ore of more than one parcel since the last clean-up of its type, and its gold was shared by mass of ore. How far that may be from what each parcel really gave is in no uncertainty here.',
  noLate:
    'What a general clean-up, plate scale and pan give, and what plates still hold, belongs to the campaign and is in no parcel unless the clean-up names it.',
  outTurn: 'Some of the fine gold is as the out-turn of a refiner or buyer states it, not by an assay of this site.',

  yield: 'Yield',
  of: 'Yield of',
  grams: 'g per tonne',
  dwt: 'dwt per long ton',
  U: '± U (k = 2), g per tonne',
  gross: 'Bullion, gross: bar weight with its silver and base',
  fineGold: 'Gold, fine: by the assays of its bars',
  why: {
    'nothing-crushed': 'Not computable: nothing was crushed of it, or nobody wrote down how much.',
    'not-melted': 'Not computable yet: nothing of it has been melted.',
    'partly-melted': 'Not computable yet: part of it still lies in the safe.',
  } satisfies Readonly<Record<NoParcelYield, string>>,
  notAssayed: 'No fine yield: not every bar in it has an assay.',

  recovery: 'Recovery of gold',
  recoveryNote: 'By the assays of its ore and tailings in this book, as plain means. The three agree only where the gold closes.',
  noRecovery: 'Not computable: there is no assay of its ore or tailings, or no fine gold.',
  head: 'Head, by assay',
  tails: 'Tailings, by assay',
  byHead: 'Against the assay head',
  byHeadAndTail: 'By head and tailings',
  byCalculatedHead: 'Against the calculated head',
  calculatedHead: 'Calculated head: product and tailings',
  unaccounted: 'Gold not accounted for',
  percent: (text: string) => `${text} %`,
  gPerTonne: (text: string) => `${text} g per tonne`,
} as const;
