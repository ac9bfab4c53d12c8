/** The fields of a melt. */
import { checks, key, remark, text, weight } from './daybook-fields-parts.ts';
import type { FieldWords } from './daybook-shapes.ts';

const pieces = (one: string, ...more: readonly FieldWords[]): FieldWords['shape'] => ({
  is: 'list',
  one,
  fields: [
    key,
    { key: 'label', label: 'Number or name', needed: true, first: true, shape: text },
    { key: 'weight', label: 'Weight', needed: true, first: true, shape: weight },
    ...more,
  ],
});

export const meltFields: readonly FieldWords[] = [
  {
    key: 'sponges',
    label: 'Sponges melted',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Sponge',
      fields: [
        { key: 'charge', label: 'Sponge of the charge', needed: true, first: true, shape: { is: 'ref', to: 'charge' } },
        { key: 'weight', label: 'Weight at melting', first: true, shape: weight },
      ],
    },
  },
  {
    key: 'added',
    label: 'Metal added',
    shape: pieces(
      'Metal',
      { key: 'bar', label: 'If it is an earlier bar, which', shape: { is: 'ref', to: 'bar' } },
      { key: 'prills', label: 'If it is prills, of which melt', shape: { is: 'ref', to: 'melt' } },
    ),
  },
  {
    key: 'slags',
    label: 'Old slag melted again',
    shape: {
      is: 'list',
      one: 'Old slag',
      fields: [
        { key: 'melt', label: 'Slag of the melt', needed: true, first: true, shape: { is: 'ref', to: 'melt' } },
        { key: 'weight', label: 'Weight', first: true, shape: weight },
      ],
    },
  },
  { key: 'flux', label: 'Flux', shape: text },
  { key: 'bars', label: 'Bars', needed: true, first: true, shape: pieces('Bar') },
  { key: 'samples', label: 'Samples taken', shape: pieces('Sample') },
  { key: 'prills', label: 'Prills picked from the slag', first: true, shape: weight },
  { key: 'slag', label: 'Slag kept', first: true, shape: weight },
  checks,
  remark,
];
