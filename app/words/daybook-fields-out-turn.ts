/** The fields of where a bar is kept and of an out-turn. */
import { mass, remark, text, weight } from './daybook-fields-parts.ts';
import type { FieldWords } from './daybook-shapes.ts';

export const barKeptFields: readonly FieldWords[] = [
  { key: 'bar', label: 'Which bar', needed: true, first: true, shape: { is: 'ref', to: 'bar' } },
  { key: 'place', label: 'Where it is kept', needed: true, first: true, shape: text },
  { key: 'seal', label: 'Seal number', first: true, shape: text },
  { key: 'present', label: 'Who was there', shape: { is: 'refs', to: 'person' } },
  remark,
];

const found: FieldWords['shape'] = {
  is: 'group',
  fields: [
    { key: 'permille', label: 'Parts per thousand', first: true, shape: text },
    { key: 'fine', label: 'Fine metal', first: true, shape: mass },
    { key: 'fineU', label: 'Standard uncertainty of the fine metal', shape: mass },
    { key: 'credited', label: 'Fine metal paid for', shape: mass },
  ],
};

export const outTurnFields: readonly FieldWords[] = [
  { key: 'transfers', label: 'What it answers', needed: true, first: true, shape: { is: 'refs', to: 'transfer' } },
  { key: 'party', label: 'Refiner or buyer', shape: text },
  { key: 'received', label: 'Weight as they received it', first: true, shape: weight },
  { key: 'melted', label: 'Weight after they melted it', first: true, shape: weight },
  { key: 'gold', label: 'Gold, as they found it', first: true, shape: found },
  { key: 'silver', label: 'Silver, as they found it', first: true, shape: found },
  {
    key: 'deductions',
    label: 'Metal they kept back',
    shape: {
      is: 'list',
      one: 'Deduction',
      fields: [
        { key: 'what', label: 'For what', needed: true, first: true, shape: text },
        {
          key: 'metal',
          label: 'Metal',
          needed: true,
          first: true,
          shape: { is: 'one', names: { gold: 'Gold', silver: 'Silver' } },
        },
        { key: 'mass', label: 'How much', needed: true, first: true, shape: mass },
      ],
    },
  },
  {
    key: 'charges',
    label: 'What they charged',
    shape: {
      is: 'list',
      one: 'Charge in money',
      fields: [
        { key: 'what', label: 'For what', needed: true, first: true, shape: text },
        { key: 'amount', label: 'Amount', needed: true, first: true, shape: text },
        { key: 'currency', label: 'Currency', needed: true, first: true, shape: text },
      ],
    },
  },
  { key: 'document', label: 'Their document', shape: text },
  remark,
];
