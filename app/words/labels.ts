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
  retort: 'Retort',
  receipt: 'Receipt of mercury',
  'clean-up': 'Clean-up',
  charge: 'Charge',
  firing: 'Firing',
  note: 'Note',
  correction: 'Correction',
  strike: 'Strike',
};

export const registerNames: NameOf<RegisterKind> = {
  person: 'People',
  scale: 'Scales',
  vessel: 'Vessels',
  retort: 'Retorts',
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
