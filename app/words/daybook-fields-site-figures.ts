/** The fields of the figures a site chose for its mercury account. */
import { remark, share, text } from './daybook-fields-parts.ts';
import type { FieldWords } from './daybook-shapes.ts';

const why: FieldWords = { key: 'why', label: 'Who or what says so', needed: true, first: true, shape: text };

export const siteFiguresFields: readonly FieldWords[] = [
  {
    key: 'residualShare',
    label: 'Mercury left in sponge',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'middle', label: 'As a share of the sponge', needed: true, first: true, shape: share },
        { key: 'u', label: 'Its standard uncertainty', needed: true, first: true, shape: share },
        why,
      ],
    },
  },
  {
    key: 'falseAlarm',
    label: 'False alarm of the sequence test',
    first: true,
    shape: { is: 'group', fields: [{ key: 'value', label: 'False alarm', needed: true, first: true, shape: share }, why] },
  },
  {
    key: 'lotDays',
    label: 'Lots out of step',
    first: true,
    shape: {
      is: 'group',
      fields: [{ key: 'value', label: 'After days in store', needed: true, first: true, shape: { is: 'number' } }, why],
    },
  },
  remark,
];
