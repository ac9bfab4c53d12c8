/** The fields of a day's crushing and of mercury on its way: issued, returned, spilled, found. */
import {
  checks,
  mass,
  mercuryShare,
  mercuryWeight,
  oreFields,
  poured,
  remark,
  text,
  vessel,
  yesNo,
} from './daybook-fields-parts.ts';
import { circuitNames, fedNames, feedNames, foundNames, issueNames, oreByNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

const battery = { is: 'ref', to: 'battery' } as const;

export const crushingFields: readonly FieldWords[] = [
  { key: 'battery', label: 'Battery', needed: true, first: true, shape: battery },
  { key: 'feed', label: 'What was fed', needed: true, first: true, shape: { is: 'one', names: feedNames } },
  { key: 'mercuryFed', label: 'Mercury fed with it', needed: true, first: true, shape: { is: 'one', names: fedNames } },
  {
    key: 'ore',
    label: 'Ore',
    first: true,
    shape: {
      is: 'group',
      fields: [...oreFields, { key: 'by', label: 'How it was counted', first: true, shape: { is: 'one', names: oreByNames } }],
    },
  },
  { key: 'parcel', label: 'Parcel', first: true, shape: { is: 'ref', to: 'parcel' } },
  { key: 'stamps', label: 'Stamps running', shape: { is: 'number' } },
  { key: 'dropsAMinute', label: 'Drops a minute', shape: { is: 'number' } },
  { key: 'hours', label: 'Hours run', first: true, shape: { is: 'number', unit: 'h' } },
  remark,
];

export const issueFields: readonly FieldWords[] = [
  { key: 'vessel', label: 'From which vessel', needed: true, first: true, shape: vessel },
  { key: 'to', label: 'Issued to', needed: true, first: true, shape: { is: 'one', names: issueNames } },
  { key: 'into', label: 'Into which vessel', first: true, only: { key: 'to', has: ['vessel'] }, shape: vessel },
  { key: 'weight', label: 'Mercury issued', needed: true, first: true, shape: mercuryWeight },
  { key: 'battery', label: 'Battery', first: true, shape: battery },
  { key: 'plate', label: 'Plate', shape: { is: 'ref', to: 'plate' } },
  {
    key: 'doses',
    label: 'The same by doses',
    shape: {
      is: 'group',
      fields: [
        { key: 'count', label: 'Number of doses', needed: true, first: true, shape: { is: 'number' } },
        { key: 'each', label: 'Each dose', needed: true, first: true, shape: mass },
      ],
    },
  },
  { key: 'condition', label: 'How the plates looked', shape: text },
  remark,
];

export const returnFields: readonly FieldWords[] = [
  { key: 'vessel', label: 'Into which vessel', needed: true, first: true, shape: vessel },
  { key: 'from', label: 'From which part', needed: true, first: true, shape: { is: 'one', names: circuitNames } },
  { key: 'weight', label: 'Mercury returned', needed: true, first: true, shape: mercuryWeight },
  { key: 'how', label: 'How it was got', first: true, shape: text },
  { key: 'battery', label: 'Battery', shape: battery },
];

export const spillFields: readonly FieldWords[] = [
  { key: 'where', label: 'Where', needed: true, first: true, shape: text },
  { key: 'lost', label: 'What is thought to have run out', first: true, shape: mercuryWeight },
  { key: 'vessel', label: 'Out of which vessel', first: true, shape: vessel },
  { key: 'recovered', label: 'Gathered up', first: true, shape: poured('Mercury gathered up', 'Into which vessel') },
  {
    key: 'insideIssue',
    label: 'Already inside an issue that is written down',
    needed: true,
    first: true,
    shape: yesNo,
  },
  { key: 'cleaned', label: 'How it was cleaned up', shape: text },
  { key: 'told', label: 'Who was told', shape: text },
  remark,
];

export const foundFields: readonly FieldWords[] = [
  { key: 'where', label: 'Where it was found', needed: true, first: true, shape: text },
  { key: 'what', label: 'What it is', needed: true, first: true, shape: { is: 'one', names: foundNames } },
  { key: 'weight', label: 'Weight', needed: true, first: true, shape: mercuryWeight },
  { key: 'vessel', label: 'Into which vessel or drum', needed: true, first: true, shape: vessel },
  { key: 'share', label: 'Mercury in it', first: true, shape: mercuryShare },
  checks,
  remark,
];
