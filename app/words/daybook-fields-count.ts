/** The fields of a stock-take: each place once, and how it was answered. */
import { estimate, remark, text, weight } from './daybook-fields-parts.ts';
import { countNames, countScopeNames, yesNoNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

export const stockTakeFields: readonly FieldWords[] = [
  { key: 'scope', label: 'What is counted', shape: { is: 'one', names: countScopeNames } },
  {
    key: 'lines',
    label: 'Places',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Place',
      fields: [
        { key: 'place', label: 'Place', needed: true, first: true, shape: { is: 'ref', to: 'place' } },
        { key: 'how', label: 'How it was answered', needed: true, first: true, shape: { is: 'one', names: countNames } },
        {
          key: 'seal',
          label: 'Seal number',
          needed: true,
          first: true,
          only: { key: 'how', has: ['sealed'] },
          shape: text,
        },
        {
          key: 'weight',
          label: 'Mercury weighed',
          needed: true,
          first: true,
          only: { key: 'how', has: ['weighed'] },
          shape: { ...weight, volume: true },
        },
        {
          key: 'estimate',
          label: 'Estimate',
          needed: true,
          first: true,
          only: { key: 'how', has: ['estimated'] },
          shape: estimate,
        },
        {
          key: 'sealBroken',
          label: 'The seal was broken',
          only: { key: 'how', has: ['weighed', 'unanswered'] },
          shape: { is: 'one', names: yesNoNames },
        },
        { key: 'newSeal', label: 'New seal', only: { key: 'how', has: ['weighed'] }, shape: text },
        { key: 'note', label: 'Remark', only: { key: 'how', has: ['not-found'] }, shape: text },
        { key: 'why', label: 'Why not', needed: true, first: true, only: { key: 'how', has: ['unanswered'] }, shape: text },
      ],
    },
  },
  remark,
];
