/** The fields of the lists a site keeps for itself: what it asks, when it stops, whom it calls, how long it keeps. */
import { remark, text } from './daybook-fields-parts.ts';
import { dueThingNames, keptRecordNames, numberUseNames, stopThingNames } from './daybook-names-site.ts';
import type { FieldWords } from './daybook-shapes.ts';
import { workNames } from './work-cautions.ts';

const check = { is: 'check' } as const;
const named: FieldWords = { key: 'check', label: 'Question', needed: true, first: true, shape: check };
const asks: FieldWords = { key: 'asks', label: 'How it is asked', needed: true, first: true, shape: text };

export const checkListFields: readonly FieldWords[] = [
  { key: 'work', label: 'For which work', needed: true, first: true, shape: { is: 'one', names: workNames } },
  {
    key: 'added',
    label: 'Asked besides',
    shape: {
      is: 'list',
      one: 'Question',
      fields: [{ key: 'check', label: 'Its short name', needed: true, first: true, shape: text }, asks],
    },
  },
  { key: 'worded', label: 'In other words', shape: { is: 'list', one: 'Wording', fields: [named, asks] } },
  {
    key: 'leftOut',
    label: 'Left out',
    shape: {
      is: 'list',
      one: 'Question left out',
      fields: [named, { key: 'why', label: 'Why', needed: true, first: true, shape: text }],
    },
  },
  { key: 'reviewed', label: 'Looked over by', first: true, shape: text },
  remark,
];

export const stopRulesFields: readonly FieldWords[] = [
  {
    key: 'rules',
    label: 'When the fire is stopped',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Rule',
      fields: [
        { key: 'of', label: 'What is watched', needed: true, first: true, shape: { is: 'one', names: stopThingNames } },
        { key: 'when', label: 'Stop when', needed: true, first: true, shape: text },
        { key: 'act', label: 'And then', first: true, shape: text },
      ],
    },
  },
  { key: 'setBy', label: 'Set by', first: true, shape: { is: 'ref', to: 'person' } },
  remark,
];

export const siteNumbersFields: readonly FieldWords[] = [
  {
    key: 'numbers',
    label: 'Numbers to call',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Number',
      fields: [
        { key: 'for', label: 'Whom it reaches', needed: true, first: true, shape: { is: 'one', names: numberUseNames } },
        { key: 'number', label: 'Number', needed: true, first: true, shape: text },
        { key: 'name', label: 'Name, and when they answer', first: true, shape: text },
      ],
    },
  },
  remark,
];

export const retentionFields: readonly FieldWords[] = [
  {
    key: 'periods',
    label: 'How long records are kept',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Period',
      fields: [
        { key: 'records', label: 'Which records', needed: true, first: true, shape: { is: 'one', names: keptRecordNames } },
        { key: 'years', label: 'Years', needed: true, first: true, shape: { is: 'number' } },
        { key: 'source', label: 'By which rule', needed: true, first: true, shape: text },
        { key: 'which', label: 'Which of them', shape: text },
      ],
    },
  },
  remark,
];

export const leadTimesFields: readonly FieldWords[] = [
  {
    key: 'leads',
    label: 'How long before',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Lead time',
      fields: [
        { key: 'of', label: 'Of what', needed: true, first: true, shape: { is: 'one', names: dueThingNames } },
        { key: 'days', label: 'Days before its day', needed: true, first: true, shape: { is: 'number' } },
      ],
    },
  },
  { key: 'countEvery', label: 'Days from one stock-take of the whole to the next', first: true, shape: { is: 'number' } },
  remark,
];
