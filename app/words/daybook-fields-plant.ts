/** The fields of the registers of the working year: batteries, plates, meters, parcels and authorities. */
import { day, lastDayInUse, mass, remark, share, text } from './daybook-fields-parts.ts';
import { goldActNames } from './daybook-names-bullion.ts';
import { plateMetalNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

export const batteryFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'battery' } },
  { key: 'label', label: 'Name of the battery', needed: true, first: true, shape: text },
  { key: 'stamps', label: 'Stamps in it', first: true, shape: { is: 'number' } },
  { key: 'place', label: 'Where it stands', first: true, shape: text },
  remark,
  lastDayInUse,
];

export const plateFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'plate' } },
  { key: 'label', label: 'Name of the plate', needed: true, first: true, shape: text },
  { key: 'battery', label: 'Battery it lies below', first: true, shape: { is: 'ref', to: 'battery' } },
  { key: 'order', label: 'Place down the flow (1 is nearest the mortar)', first: true, shape: { is: 'number' } },
  { key: 'metal', label: 'Metal', first: true, shape: { is: 'one', names: plateMetalNames } },
  { key: 'lengthM', label: 'Length', first: true, shape: { is: 'number', unit: 'm' } },
  { key: 'widthM', label: 'Width', first: true, shape: { is: 'number', unit: 'm' } },
  { key: 'set', label: 'First set with mercury', first: true, shape: day },
  remark,
  lastDayInUse,
];

export const meterFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'meter' } },
  { key: 'label', label: 'Name of the meter', needed: true, first: true, shape: text },
  { key: 'principle', label: 'How it measures', first: true, shape: text },
  { key: 'number', label: 'Its number', first: true, shape: text },
  { key: 'owner', label: 'Owner', shape: text },
  {
    key: 'calibrated',
    label: 'Calibration',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'on', label: 'Calibrated on', needed: true, first: true, shape: day },
        { key: 'due', label: 'Next due', first: true, shape: day },
        { key: 'by', label: 'Calibrated by', shape: text },
      ],
    },
  },
  remark,
  lastDayInUse,
];

export const parcelFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'parcel' } },
  { key: 'label', label: 'Name of the parcel', needed: true, first: true, shape: text },
  { key: 'owner', label: 'Whose it is', first: true, shape: text },
  {
    key: 'ore',
    label: 'What came in',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'mass', label: 'Ore or concentrate brought', needed: true, first: true, shape: mass },
        { key: 'u', label: 'Its standard uncertainty', shape: share },
      ],
    },
  },
  remark,
];

export const authorityFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'authority' } },
  { key: 'name', label: 'Licence, permit or consent', needed: true, first: true, shape: text },
  { key: 'number', label: 'Its number', needed: true, first: true, shape: text },
  { key: 'body', label: 'Who gave it', needed: true, first: true, shape: text },
  { key: 'covers', label: 'What it covers', needed: true, first: true, shape: text },
  { key: 'gold', label: 'What it lets the site do with gold', shape: { is: 'many', names: goldActNames } },
  { key: 'from', label: 'Its first day', first: true, shape: day },
  { key: 'expiry', label: 'Its last day', needed: true, first: true, shape: { is: 'expiry' } },
  { key: 'out', label: 'Given up on', shape: day },
];
