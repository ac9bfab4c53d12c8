/** Names of answers in assays and settlements. Each table holds every answer of its list; the types see to it. */

import type { OtherMetal } from '../core/density.ts';
import type { AssayMethod, AssaySubject, ResultUnit, samplingMethods } from '../core/kinds/assay.ts';
import type { goldActs } from '../core/kinds/authority.ts';
import type { SettlementRule } from '../core/umpire.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const subjectNames: NameOf<AssaySubject> = {
  ore: 'Ore',
  tailings: 'Tailings',
  concentrate: 'Concentrate',
  sponge: 'Sponge',
  bar: 'Bar',
  mercury: 'Mercury',
  residue: 'Residue',
  waste: 'Waste',
};

export const methodNames: NameOf<AssayMethod> = {
  'fire-assay': 'Fire assay',
  titration: 'Titration of silver',
  density: 'Weighed in air and water: indicative only',
  outside: 'Certificate of another laboratory',
};

export const samplingNames: NameOf<(typeof samplingMethods)[number]> = {
  dip: 'Dipped from the molten metal',
  drill: 'Drilled',
  cut: 'Cut',
  granulated: 'Granulated',
  grab: 'Grab sample',
  split: 'Split or quartered',
  whole: 'The whole was taken',
  other: 'Another way',
};

export const resultUnitNames: NameOf<ResultUnit> = {
  permille: 'Parts per thousand',
  'g-t': 'Grams per tonne',
  'dwt-long-ton': 'Pennyweights per long ton',
  'ozt-long-ton': 'Troy ounces per long ton',
  'ozt-short-ton': 'Troy ounces per short ton',
};

export const otherMetalNames: NameOf<OtherMetal> = { silver: 'Silver', copper: 'Copper' };

export const settlementRuleNames: NameOf<SettlementRule> = {
  'nearer-mean': 'Mean of the umpire and the nearer party',
  median: 'The middle one of the three',
  'umpire-between': 'The umpire where between the parties, else as the nearer mean',
};

export const goldActNames: NameOf<(typeof goldActs)[number]> = {
  possess: 'Have it',
  melt: 'Melt it',
  sell: 'Sell it or send it away',
};
