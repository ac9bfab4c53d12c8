/** Every field of every kind of entry in words. A kind without a line here does not compile; a field without one fails a test. */
import type { Kind } from '../core/kinds/index.ts';
import { personFields, retortFields, scaleFields, standingFields, vesselFields } from './daybook-fields-registers.ts';
import { chargeFields, cleanUpFields, firingFields, receiptFields } from './daybook-fields-work.ts';
import type { FieldWords } from './daybook-shapes.ts';

const entry = { is: 'ref', to: 'entry' } as const;
const prose = { is: 'text', long: true } as const;

export const fieldsOf: Readonly<Record<Kind, readonly FieldWords[]>> = {
  standing: standingFields,
  person: personFields,
  scale: scaleFields,
  vessel: vesselFields,
  retort: retortFields,
  receipt: receiptFields,
  'clean-up': cleanUpFields,
  charge: chargeFields,
  firing: firingFields,
  note: [
    { key: 'text', label: 'Note', needed: true, shape: prose },
    { key: 'about', label: 'About', shape: entry },
  ],
  correction: [
    { key: 'corrects', label: 'Corrects', needed: true, shape: entry },
    { key: 'why', label: 'Why', needed: true, shape: prose },
    { key: 'happened', label: 'When it happened, as it should read', shape: { is: 'moment' } },
    { key: 'body', label: 'As it should read', needed: true, shape: { is: 'body' } },
  ],
  strike: [
    { key: 'strikes', label: 'Strikes', needed: true, shape: entry },
    { key: 'why', label: 'Why', needed: true, shape: prose },
  ],
};
