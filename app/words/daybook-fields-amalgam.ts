/** The fields of work on amalgam and plates: cleaning, squeezing, plate work, a charge taken apart. */
import { checks, estimate, lots, mass, poured, remark, strained, text, weight } from './daybook-fields-parts.ts';
import { circuitNames, plateDoingNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

const residue: FieldWords['shape'] = {
  is: 'group',
  fields: [
    { key: 'weight', label: 'Weight', needed: true, first: true, shape: weight },
    { key: 'label', label: 'Label on it', shape: text },
  ],
};

export const cleaningFields: readonly FieldWords[] = [
  { key: 'lots', label: 'Lots that went in', first: true, shape: { is: 'refs', to: 'lot' } },
  {
    key: 'dirty',
    label: 'Dirty amalgam straight from the circuit',
    shape: {
      is: 'group',
      fields: [
        { key: 'weight', label: 'Dirty amalgam', needed: true, first: true, shape: weight },
        { key: 'from', label: 'From which part', needed: true, first: true, shape: { is: 'one', names: circuitNames } },
      ],
    },
  },
  { key: 'added', label: 'Mercury put to it', first: true, shape: poured('Mercury put to it', 'From which vessel') },
  { key: 'made', label: 'Balls and lots made', needed: true, first: true, shape: lots },
  { ...strained, first: true },
  { key: 'skimmings', label: 'Skimmings', shape: residue },
  { key: 'iron', label: 'Iron taken out with the magnet', shape: residue },
  checks,
  remark,
];

export const squeezeFields: readonly FieldWords[] = [
  { key: 'lots', label: 'Lots that went in', needed: true, first: true, shape: { is: 'refs', to: 'lot' } },
  { key: 'made', label: 'Balls and lots made', needed: true, first: true, shape: lots },
  { ...strained, first: true },
  { key: 'through', label: 'Squeezed through', first: true, shape: text },
  remark,
];

export const plateWorkFields: readonly FieldWords[] = [
  { key: 'plate', label: 'Plate', needed: true, first: true, shape: { is: 'ref', to: 'plate' } },
  { key: 'what', label: 'What was done', needed: true, first: true, shape: { is: 'one', names: plateDoingNames } },
  { key: 'applied', label: 'Mercury put on', first: true, shape: poured('Mercury put on', 'From which vessel') },
  { key: 'made', label: 'Scale or amalgam got', first: true, shape: lots },
  { key: 'held', label: 'Thought to have held before', shape: estimate },
  { key: 'holds', label: 'Thought to hold now', shape: estimate },
  { key: 'silver', label: 'Silver put on', shape: mass },
  checks,
  remark,
];

export const unmakeFields: readonly FieldWords[] = [
  { key: 'charge', label: 'Charge', needed: true, first: true, shape: { is: 'ref', to: 'charge' } },
  { key: 'why', label: 'Why', needed: true, first: true, shape: text },
];
