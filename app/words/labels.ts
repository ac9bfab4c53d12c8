/** Names of the answers that stand in entries, as people read them. Each table holds every answer of its list; the types see to it. */
import type { Kind, RegisterKind } from '../core/kinds/index.ts';
import type { Role, roles } from '../core/kinds/person.ts';
import type { doings, holdings } from '../core/kinds/standing.ts';
import type { MercuryClass, vesselUses } from '../core/kinds/vessel.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const kindNames: NameOf<Kind> = {
  standing: 'Standing',
  person: 'Person',
  scale: 'Scale',
  vessel: 'Vessel',
  battery: 'Battery',
  plate: 'Plate',
  retort: 'Retort',
  meter: 'Vapour meter',
  parcel: 'Parcel',
  authority: 'Authority',
  limit: 'Limit for air',
  crushing: 'Crushing',
  receipt: 'Receipt of mercury',
  issue: 'Issue of mercury',
  return: 'Return of mercury',
  'clean-up': 'Clean-up',
  cleaning: 'Cleaning of amalgam',
  squeeze: 'Squeezing',
  'plate-work': 'Plate work',
  charge: 'Charge',
  unmake: 'Charge taken apart',
  firing: 'Firing',
  melt: 'Melt',
  assay: 'Assay',
  settlement: 'Settlement of a bar',
  'bar-kept': 'Keeping of a bar',
  transfer: 'Transfer',
  'out-turn': 'Out-turn',
  waste: 'Waste set aside',
  spill: 'Spill',
  found: 'Mercury found',
  incident: 'Incident',
  'open-day': 'Open day',
  'scale-check': 'Scale check',
  'check-due': 'Check due',
  'check-list': 'Check list of the site',
  'stop-rules': 'Stop rules',
  'site-figures': 'Figures of the account',
  'site-numbers': 'Numbers to call',
  retention: 'Keeping of records',
  'lead-times': 'Lead times',
  'site-notation': 'Words and units',
  'air-reading': 'Air reading',
  'stock-take': 'Stock-take',
  closing: 'Closing of a period',
  note: 'Note',
  correction: 'Correction',
  strike: 'Strike',
};

export const registerNames: NameOf<RegisterKind> = {
  person: 'People',
  scale: 'Scales',
  vessel: 'Vessels',
  battery: 'Batteries',
  plate: 'Plates',
  retort: 'Retorts',
  meter: 'Vapour meters',
  parcel: 'Parcels',
  authority: 'Authorities',
  limit: 'Limits for air',
};

export const roleNames: NameOf<Role> = {
  keeper: 'Keeper of the battery',
  'safety-officer': 'Safety officer',
  assayer: 'Assayer',
  helper: 'Helper',
  reader: 'Reader only',
};
export const roleOrder: readonly (typeof roles)[number][] = ['keeper', 'safety-officer', 'assayer', 'helper', 'reader'];

export const vesselUseNames: NameOf<(typeof vesselUses)[number]> = {
  flask: 'Flask',
  bottle: 'Bottle',
  jar: 'Jar',
  receiver: 'Receiver',
  dish: 'Dish',
  drum: 'Waste drum',
  other: 'Something else',
};

export const mercuryNames: NameOf<MercuryClass> = {
  new: 'New',
  strained: 'Strained',
  retorted: 'Retorted',
  mixed: 'Mixed',
  unknown: 'Not known',
};

export const heldNames: NameOf<(typeof holdings)[number]> = {
  none: 'No mercury',
  'in-place': 'Perhaps some in plates, floors or traps',
  stock: 'A stock of mercury',
};

export const doneNames: NameOf<(typeof doings)[number]> = {
  nothing: 'Nothing is done with it',
  'no-mercury-fed': 'Water or ore over plates, no mercury fed',
  clearing: 'Clearing legacy mercury',
  authority: 'Use under an authority',
};
