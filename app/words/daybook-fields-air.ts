/** The fields of an air reading and of a limit, in words. */
import { day, lastDayInUse, remark, text } from './daybook-fields-parts.ts';
import {
  airHeightNames,
  airModeNames,
  airQuestionNames,
  airSampleNames,
  airUnitNames,
  limitBasisNames,
  limitFormNames,
  limitPeopleNames,
  limitStatusNames,
  onOffNames,
  openShutNames,
} from './daybook-names-air.ts';
import { yesNoNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';
import { marked } from './notation.ts';

const moment = { is: 'moment' } as const;
const person = { is: 'ref', to: 'person' } as const;

export const airReadingFields: readonly FieldWords[] = [
  { key: 'sample', label: 'What was read', needed: true, first: true, shape: { is: 'one', names: airSampleNames } },
  { key: 'person', label: 'Whose breathing zone', first: true, only: { key: 'sample', has: ['personal'] }, shape: person },
  { key: 'place', label: 'Place', first: true, shape: text },
  { key: 'from', label: 'From', needed: true, first: true, shape: moment },
  { key: 'to', label: 'To (left out: a momentary reading)', first: true, shape: moment },
  { key: 'shows', label: 'The figure as shown, with < or > before it', needed: true, first: true, shape: text },
  { key: 'unit', label: 'Its unit', needed: true, first: true, shape: { is: 'one', names: airUnitNames } },
  { key: 'meter', label: 'Meter', shape: { is: 'ref', to: 'meter' } },
  { key: 'max', label: 'Highest figure seen meanwhile, same unit', shape: text },
  { key: 'mode', label: 'How it averages', shape: { is: 'one', names: airModeNames } },
  {
    key: 'zero',
    label: 'Zero in clean air',
    shape: {
      is: 'group',
      fields: [
        { key: 'before', label: 'Before', first: true, shape: text },
        { key: 'after', label: 'After', first: true, shape: text },
      ],
    },
  },
  { key: 'temperatureC', label: 'Air temperature', shape: { is: 'number', unit: '°C' } },
  { key: 'pressureKpa', label: 'Air pressure', shape: { is: 'number', unit: 'kPa' } },
  {
    key: 'normalised',
    get label() {
      return marked('The meter itself brings the figure to 25 °C and 101.325 kPa');
    },
    shape: { is: 'one', names: yesNoNames },
  },
  { key: 'height', label: 'Height', shape: { is: 'one', names: airHeightNames } },
  { key: 'distanceM', label: 'Distance from the source', shape: { is: 'number', unit: 'm' } },
  { key: 'activity', label: 'What was going on', shape: text },
  { key: 'fans', label: 'Fans', shape: { is: 'one', names: onOffNames } },
  { key: 'hood', label: 'Hood', shape: { is: 'one', names: onOffNames } },
  { key: 'doors', label: 'Doors', shape: { is: 'one', names: openShutNames } },
  {
    key: 'shift',
    label: 'The shift it belongs to',
    shape: {
      is: 'group',
      fields: [
        { key: 'from', label: 'Began', needed: true, first: true, shape: moment },
        { key: 'to', label: 'Ended', needed: true, first: true, shape: moment },
      ],
    },
  },
  { key: 'run', label: 'Run', shape: { is: 'ref', to: 'charge' } },
  { key: 'sampler', label: 'Who took the reading', shape: person },
  { key: 'sure', label: 'Asked about, and so all the same', shape: { is: 'many', names: airQuestionNames } },
  remark,
];

export const limitFields: readonly FieldWords[] = [
  { key: 'of', label: 'Restates', shape: { is: 'ref', to: 'limit' } },
  { key: 'label', label: 'What the site calls it', needed: true, first: true, shape: text },
  { key: 'mgM3', label: 'Figure, mg/m³', needed: true, first: true, shape: text },
  { key: 'basis', label: 'Averaged over', needed: true, first: true, shape: { is: 'one', names: limitBasisNames } },
  { key: 'people', label: 'For whom', needed: true, first: true, shape: { is: 'one', names: limitPeopleNames } },
  { key: 'body', label: 'Whose it is', needed: true, first: true, shape: text },
  { key: 'source', label: 'Source: the paper it was read in', first: true, shape: text },
  { key: 'picked', label: 'Days are compared with it', shape: { is: 'one', names: yesNoNames } },
  {
    key: 'checked',
    label: 'Checked against that paper',
    shape: {
      is: 'group',
      fields: [
        { key: 'by', label: 'By whom', needed: true, first: true, shape: text },
        { key: 'on', label: 'On', needed: true, first: true, shape: day },
      ],
    },
  },
  { key: 'form', label: 'Form of mercury', needed: true, first: true, shape: { is: 'one', names: limitFormNames } },
  { key: 'status', label: 'How binding', shape: { is: 'one', names: limitStatusNames } },
  { key: 'jurisdiction', label: 'Where it holds', shape: text },
  { key: 'notation', label: 'Printed beside it', shape: text },
  { key: 'edition', label: 'Edition', shape: text },
  { key: 'from', label: 'Holds from', shape: day },
  { key: 'to', label: 'Holds until', shape: day },
  { key: 'conflict', label: 'Where papers do not agree', shape: text },
  remark,
  lastDayInUse,
];
