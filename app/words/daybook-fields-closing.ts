/** The fields of a closing. It is written by the page that closes a period, and read here. */
import { remark, text } from './daybook-fields-parts.ts';
import type { FieldWords } from './daybook-shapes.ts';

const entry = { is: 'ref', to: 'entry' } as const;
const grams = (key: string, label: string): FieldWords => ({ key, label, needed: true, shape: { is: 'grams' } });

export const closingFields: readonly FieldWords[] = [
  { key: 'opening', label: 'After the stock-take', first: true, shape: entry },
  { key: 'closing', label: 'Up to and with the stock-take', needed: true, first: true, shape: entry },
  { key: 'version', label: 'Version', needed: true, first: true, shape: { is: 'number' } },
  { key: 'replaces', label: 'Next version of', first: true, shape: entry },
  {
    key: 'figures',
    label: 'Figures as closed',
    needed: true,
    shape: {
      is: 'group',
      fields: [
        grams('opening_g', 'Opening stock'),
        grams('receipts_g', 'Received'),
        grams('found_g', 'Found'),
        grams('removals_g', 'Handed over'),
        grams('released_g', 'Spilled and not gathered up'),
        grams('closing_g', 'Closing stock'),
        grams('unaccounted_g', 'Not accounted for'),
        grams('u_g', 'Its standard uncertainty'),
      ],
    },
  },
  {
    key: 'adjustments',
    label: 'Adjustments to earlier closings',
    shape: {
      is: 'list',
      one: 'Adjustment',
      fields: [{ key: 'of', label: 'Of the closing', needed: true, shape: entry }, grams('g', 'Adjustment')],
    },
  },
  {
    key: 'ends',
    label: 'End marks it rests on',
    needed: true,
    shape: {
      is: 'list',
      one: 'Desk',
      fields: [
        { key: 'desk', label: 'Desk', needed: true, shape: text },
        { key: 'entries', label: 'Entries', needed: true, shape: { is: 'number' } },
        { key: 'endMark', label: 'End mark', needed: true, shape: text },
      ],
    },
  },
  { key: 'statement', label: 'Hash of the statement', needed: true, shape: text },
  { key: 'paper', label: 'Hash of the paper', needed: true, shape: text },
  { key: 'falseAlarm', label: 'False alarm of the sequence test', shape: { is: 'share' } },
  remark,
];
