/** Fields that several kinds of entry share, in words. */
import { answerNames } from './daybook-names.ts';
import type { FieldWords } from './daybook-shapes.ts';
import { lotSourceNames, lotStateNames } from './retort.ts';

export const text = { is: 'text' } as const;
export const prose = { is: 'text', long: true } as const;
export const mass = { is: 'mass' } as const;
export const day = { is: 'day' } as const;
export const share = { is: 'share' } as const;
export const weight = { is: 'weight' } as const;
export const mercuryWeight = { is: 'weight', volume: true } as const;
export const vessel = { is: 'ref', to: 'vessel' } as const;
export const yesNo = { is: 'one', names: answerNames } as const;

export const key: FieldWords = { key: 'key', label: 'Row', needed: true, shape: { is: 'key' } };
export const remark: FieldWords = { key: 'note', label: 'Remark', shape: text };
export const lastDayInUse: FieldWords = { key: 'out', label: 'Last day in use', shape: day };

export const checks: FieldWords = {
  key: 'checks',
  label: 'Checks',
  shape: {
    is: 'list',
    one: 'Check',
    fields: [
      { key: 'check', label: 'Question', needed: true, first: true, shape: { is: 'check' } },
      { key: 'answer', label: 'Answer', needed: true, first: true, shape: yesNo },
      { key: 'by', label: 'Answered by', shape: { is: 'ref', to: 'person' } },
      { key: 'note', label: 'Remark', shape: text },
    ],
  },
};

/** A ball or lot that is made. */
export const lotFields: readonly FieldWords[] = [
  key,
  { key: 'label', label: 'Label', needed: true, first: true, shape: text },
  { key: 'weight', label: 'Weight', needed: true, first: true, shape: weight },
  { key: 'state', label: 'State', shape: { is: 'one', names: lotStateNames } },
  { key: 'source', label: 'Where it came from', shape: { is: 'one', names: lotSourceNames } },
  { key: 'seal', label: 'Seal number', shape: text },
];
export const lots = { is: 'list', one: 'Lot', fields: lotFields } as const;
/** A ball or lot of a clean-up: it may also name the plates it was scraped from. */
export const scrapedLots = {
  is: 'list',
  one: 'Lot',
  fields: [...lotFields, { key: 'plates', label: 'Scraped from which plates', shape: { is: 'refs', to: 'plate' } }],
} as const satisfies FieldWords['shape'];

/** Mercury weighed, and the vessel it went to or came from. */
export const poured = (weighed: string, vesselLabel: string): FieldWords['shape'] => ({
  is: 'group',
  fields: [
    { key: 'weight', label: weighed, needed: true, first: true, shape: mercuryWeight },
    { key: 'vessel', label: vesselLabel, needed: true, first: true, shape: vessel },
  ],
});
export const strained: FieldWords = {
  key: 'strained',
  label: 'Mercury strained off',
  shape: poured('Strained mercury', 'Into which vessel'),
};

/** Ore put through, counted or weighed. */
export const oreFields: readonly FieldWords[] = [
  { key: 'mass', label: 'Ore put through', needed: true, first: true, shape: mass },
  { key: 'u', label: 'Its standard uncertainty', shape: share },
];

/** Mercury as a share of something weighed. */
export const mercuryShare: FieldWords['shape'] = {
  is: 'group',
  fields: [
    { key: 'value', label: 'Mercury as a share of the weight', needed: true, first: true, shape: share },
    { key: 'u', label: 'Standard uncertainty of the share', shape: share },
    { key: 'basis', label: 'How the share is known', shape: text },
  ],
};

/** An estimate of mercury held, with the method that was used. */
export const estimate: FieldWords['shape'] = {
  is: 'group',
  fields: [
    { key: 'mass', label: 'Mercury, estimated', needed: true, first: true, shape: mass },
    { key: 'method', label: 'Method of estimating', needed: true, first: true, shape: text },
    { key: 'sharedU', label: 'Uncertainty of the method', shape: share },
    { key: 'ownU', label: 'Uncertainty of this estimate alone', shape: share },
  ],
};
