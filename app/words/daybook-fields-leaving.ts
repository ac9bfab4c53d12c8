/** The fields of what leaves the site or comes to it, and of waste set aside. */
import { checks, day, mercuryShare, mercuryWeight, remark, text, vessel, weight } from './daybook-fields-parts.ts';
import { countsNames, thingNames, wasteFromNames, wayNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

export const transferFields: readonly FieldWords[] = [
  { key: 'way', label: 'Which way', needed: true, first: true, shape: { is: 'one', names: wayNames } },
  { key: 'what', label: 'What moved', needed: true, first: true, shape: { is: 'one', names: thingNames } },
  { key: 'party', label: 'The other party', needed: true, first: true, shape: text },
  { key: 'vessel', label: 'Vessel', first: true, only: { key: 'what', has: ['mercury', 'waste'] }, shape: vessel },
  { key: 'lot', label: 'Ball or lot', first: true, only: { key: 'what', has: ['amalgam'] }, shape: { is: 'ref', to: 'lot' } },
  {
    key: 'charge',
    label: 'Sponge of the charge',
    first: true,
    only: { key: 'what', has: ['sponge'] },
    shape: { is: 'ref', to: 'charge' },
  },
  { key: 'bar', label: 'Bar', first: true, only: { key: 'what', has: ['bar'] }, shape: { is: 'ref', to: 'bar' } },
  { key: 'plate', label: 'Plate', first: true, only: { key: 'what', has: ['plate'] }, shape: { is: 'ref', to: 'plate' } },
  { key: 'weight', label: 'Weight here', first: true, shape: mercuryWeight },
  { key: 'purpose', label: 'For what', first: true, shape: text },
  {
    key: 'counts',
    label: 'How its mercury counts',
    first: true,
    only: { key: 'way', has: ['out'] },
    shape: { is: 'one', names: countsNames },
  },
  { key: 'share', label: 'Mercury in it', shape: mercuryShare },
  { key: 'document', label: 'Document', shape: text },
  { key: 'carrier', label: 'Carrier', shape: text },
  { key: 'seal', label: 'Seal number', shape: text },
  checks,
  {
    key: 'theirs',
    label: 'As the other side weighed it',
    shape: {
      is: 'group',
      fields: [
        { key: 'weight', label: 'Their weight', needed: true, first: true, shape: mercuryWeight },
        { key: 'on', label: 'Weighed there on', needed: true, first: true, shape: day },
        { key: 'document', label: 'Their document', shape: text },
      ],
    },
  },
  remark,
];

export const wasteFields: readonly FieldWords[] = [
  { key: 'drum', label: 'Into which drum', needed: true, first: true, shape: vessel },
  { key: 'what', label: 'What it is', needed: true, first: true, shape: text },
  { key: 'weight', label: 'Weight', needed: true, first: true, shape: weight },
  { key: 'share', label: 'Mercury in it', first: true, shape: mercuryShare },
  { key: 'from', label: 'Where its mercury came from', first: true, shape: { is: 'one', names: wasteFromNames } },
  { key: 'vessel', label: 'Out of which vessel', first: true, only: { key: 'from', has: ['vessel'] }, shape: vessel },
  { key: 'code', label: 'Waste code', shape: text },
  { key: 'started', label: 'Drum begun on', shape: day },
  { key: 'due', label: 'Must go by', first: true, shape: day },
  remark,
];
