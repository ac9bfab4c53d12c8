/** The fields of register entries and of the standing, in words, in the order they are read. */
import { accuracyNames } from './daybook-names.ts';
import type { FieldWords } from './daybook-shapes.ts';
import { doneNames, heldNames, mercuryNames, roleNames, vesselUseNames } from './labels.ts';

const text = { is: 'text' } as const;
const mass = { is: 'mass' } as const;
const day = { is: 'day' } as const;
const share = { is: 'share' } as const;

const where: readonly FieldWords[] = [
  { key: 'place', label: 'Where', shape: text },
  { key: 'since', label: 'Since', shape: day },
  { key: 'until', label: 'Until', shape: day },
];

export const standingFields: readonly FieldWords[] = [
  {
    key: 'held',
    label: 'What is held',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Held',
      fields: [
        { key: 'what', label: 'Mercury held', needed: true, first: true, shape: { is: 'one', names: heldNames } },
        ...where,
      ],
    },
  },
  {
    key: 'done',
    label: 'What is done',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Done',
      fields: [
        { key: 'what', label: 'Done with mercury', needed: true, first: true, shape: { is: 'one', names: doneNames } },
        ...where,
        {
          key: 'authority',
          label: 'Authority',
          first: true,
          only: { key: 'what', has: ['authority'] },
          shape: {
            is: 'group',
            fields: [
              { key: 'name', label: 'Which authority', needed: true, first: true, shape: text },
              { key: 'number', label: 'Its number', needed: true, first: true, shape: text },
              { key: 'expiry', label: 'Its last day', needed: true, first: true, shape: { is: 'expiry' } },
              { key: 'covers', label: 'What it covers', needed: true, first: true, shape: text },
            ],
          },
        },
      ],
    },
  },
  { key: 'note', label: 'Remark', shape: { is: 'text', long: true } },
];

export const personFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'person' } },
  { key: 'name', label: 'Name', needed: true, first: true, shape: text },
  { key: 'roles', label: 'Roles', needed: true, first: true, shape: { is: 'many', names: roleNames } },
  { key: 'note', label: 'Remark', shape: text },
  { key: 'left', label: 'Last day with the site', shape: day },
];

export const scaleFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'scale' } },
  { key: 'label', label: 'Name of the scale', needed: true, first: true, shape: text },
  { key: 'maximum', label: 'The most it weighs', needed: true, first: true, shape: mass },
  { key: 'd', label: 'Step of its display (d)', needed: true, first: true, shape: mass },
  { key: 's', label: 'Repeatability (standard deviation)', first: true, shape: mass },
  { key: 'linearity', label: 'Half-width of the linearity error', shape: mass },
  {
    key: 'certificate',
    label: 'Certificate',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'U', label: 'Expanded uncertainty U', needed: true, first: true, shape: mass },
        { key: 'k', label: 'Coverage factor k', shape: { is: 'number' } },
        { key: 'at', label: 'At the load', needed: true, first: true, shape: mass },
        { key: 'number', label: 'Certificate number', shape: text },
        { key: 'on', label: 'Calibrated on', shape: day },
        { key: 'due', label: 'Next due', first: true, shape: day },
      ],
    },
  },
  {
    key: 'accuracy',
    label: 'Class on its plate',
    shape: {
      is: 'group',
      fields: [
        { key: 'class', label: 'Accuracy class', needed: true, first: true, shape: { is: 'one', names: accuracyNames } },
        { key: 'e', label: 'Verification interval (e)', needed: true, first: true, shape: mass },
      ],
    },
  },
  { key: 'tolerance', label: 'Share of a weight that two standard deviations may reach', shape: share },
  { key: 'place', label: 'Where it stands', shape: text },
  { key: 'out', label: 'Last day in use', shape: day },
];

export const vesselFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'vessel' } },
  { key: 'label', label: 'Name of the vessel', needed: true, first: true, shape: text },
  { key: 'use', label: 'What it is', needed: true, first: true, shape: { is: 'one', names: vesselUseNames } },
  { key: 'tare', label: 'Weight when empty', first: true, shape: { is: 'weight' } },
  { key: 'mercury', label: 'Mercury in it', first: true, shape: { is: 'one', names: mercuryNames } },
  { key: 'seal', label: 'Seal number', first: true, shape: text },
  { key: 'place', label: 'Where it stands', shape: text },
  { key: 'note', label: 'Remark', shape: text },
  { key: 'out', label: 'Last day in use', shape: day },
];

export const retortFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'retort' } },
  { key: 'label', label: 'Name of the retort', needed: true, first: true, shape: text },
  { key: 'capacity', label: 'Amalgam that fills it to the brim', first: true, shape: mass },
  { key: 'owner', label: 'Owner', shape: text },
  {
    key: 'loan',
    label: 'Loan',
    shape: {
      is: 'group',
      fields: [
        { key: 'from', label: 'Lent by', needed: true, first: true, shape: text },
        { key: 'since', label: 'Lent since', needed: true, first: true, shape: day },
        { key: 'until', label: 'Lent until', shape: day },
      ],
    },
  },
  {
    key: 'brushed',
    label: 'Pipe and condenser',
    shape: {
      is: 'group',
      fields: [
        { key: 'on', label: 'Brushed out on', needed: true, first: true, shape: day },
        { key: 'got', label: 'What came out', needed: true, first: true, shape: { is: 'weight', volume: true } },
        { key: 'vessel', label: 'Into which vessel', shape: { is: 'ref', to: 'vessel' } },
      ],
    },
  },
  {
    key: 'inspected',
    label: 'Inspection',
    shape: {
      is: 'group',
      fields: [
        { key: 'on', label: 'Inspected on', needed: true, first: true, shape: day },
        { key: 'due', label: 'Next due', shape: day },
        { key: 'by', label: 'Inspected by', shape: text },
      ],
    },
  },
  { key: 'usualRatio', label: 'Usual sponge over charge', first: true, shape: share },
  { key: 'ratioBand', label: 'How far from it is still ordinary', shape: share },
  { key: 'lossBand', label: 'Gap within the band, as a share of the charge', shape: share },
  { key: 'lossAllowance', label: 'Gap within the band, as a mass', shape: mass },
  { key: 'place', label: 'Where it stands', shape: text },
  { key: 'note', label: 'Remark', shape: text },
  { key: 'out', label: 'Last day in use', shape: day },
];
