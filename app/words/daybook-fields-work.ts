/** The fields of entries of work, in words, in the order they are read. */
import {
  checks,
  key,
  mercuryWeight,
  oreFields,
  remark,
  scrapedLots,
  strained,
  text,
  vessel,
  weight,
  yesNo,
} from './daybook-fields-parts.ts';
import { mercuryStateNames, otherNames, takeNames, turnedNames } from './daybook-names.ts';
import type { FieldWords } from './daybook-shapes.ts';
import { chargeKindNames, cleanUpNames, colourNames, receiptNames } from './retort.ts';

const moment = { is: 'moment' } as const;

export const receiptFields: readonly FieldWords[] = [
  { key: 'vessel', label: 'Vessel', needed: true, first: true, shape: vessel },
  { key: 'weight', label: 'Mercury received', needed: true, first: true, shape: mercuryWeight },
  { key: 'way', label: 'How it came', needed: true, first: true, shape: { is: 'one', names: receiptNames } },
  { key: 'from', label: 'From whom', first: true, shape: text },
  { key: 'document', label: 'Document', first: true, shape: text },
  { key: 'seal', label: 'Seal number', first: true, shape: text },
];

export const cleanUpFields: readonly FieldWords[] = [
  { key: 'type', label: 'Type of clean-up', needed: true, first: true, shape: { is: 'one', names: cleanUpNames } },
  { key: 'where', label: 'Batteries or plates', shape: text },
  { key: 'parcel', label: 'Only of the parcel', shape: { is: 'ref', to: 'parcel' } },
  {
    key: 'ore',
    label: 'Ore since the last of its type',
    first: true,
    shape: { is: 'group', fields: oreFields },
  },
  { key: 'lots', label: 'Balls and lots', needed: true, first: true, shape: scrapedLots },
  strained,
  { key: 'present', label: 'Who was there', shape: { is: 'refs', to: 'person' } },
  { key: 'locked', label: 'Seal or lock it was put away under', shape: text },
  checks,
  remark,
];

const found = ['whole', 'part', 'not-found'];
const weighed = ['whole', 'part', 'unwritten'];

export const chargeFields: readonly FieldWords[] = [
  { key: 'retort', label: 'Retort', needed: true, first: true, shape: { is: 'ref', to: 'retort' } },
  { key: 'holds', label: 'What it is', shape: { is: 'one', names: chargeKindNames } },
  {
    key: 'rows',
    label: 'Lots',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Row',
      fields: [
        key,
        { key: 'take', label: 'Taken', needed: true, first: true, shape: { is: 'one', names: takeNames } },
        {
          key: 'lot',
          label: 'Ball or lot',
          needed: true,
          first: true,
          only: { key: 'take', has: found },
          shape: { is: 'ref', to: 'lot' },
        },
        { key: 'label', label: 'Label on it', needed: true, first: true, only: { key: 'take', has: ['unwritten'] }, shape: text },
        {
          key: 'weight',
          label: 'Weight at charging',
          needed: true,
          first: true,
          only: { key: 'take', has: weighed },
          shape: weight,
        },
        { key: 'rest', label: 'Weight of the rest', first: true, only: { key: 'take', has: ['part'] }, shape: weight },
        { key: 'looked', label: 'Where it was looked for', only: { key: 'take', has: ['not-found'] }, shape: text },
      ],
    },
  },
  {
    key: 'others',
    label: 'Put in besides',
    shape: {
      is: 'list',
      one: 'Cake, mercury or residue',
      fields: [
        key,
        { key: 'what', label: 'What', needed: true, first: true, shape: { is: 'one', names: otherNames } },
        { key: 'label', label: 'Its name', needed: true, first: true, shape: text },
        { key: 'weight', label: 'Weight', needed: true, first: true, shape: mercuryWeight },
        { key: 'vessel', label: 'From which vessel', shape: vessel },
      ],
    },
  },
  { key: 'fill', label: 'How full the retort is', shape: { is: 'share' } },
  { key: 'lining', label: 'Lining', shape: text },
  { key: 'lute', label: 'Lute', shape: text },
  { key: 'pipeClear', label: 'Pipe proved clear', shape: yesNo },
  { key: 'waterOn', label: 'Cooling water on', shape: yesNo },
  { key: 'dry', label: 'Amalgam dry when weighed', first: true, shape: yesNo },
  checks,
  remark,
];

export const firingFields: readonly FieldWords[] = [
  {
    key: 'heats',
    label: 'Charges fired',
    needed: true,
    first: true,
    shape: {
      is: 'list',
      one: 'Heat',
      fields: [
        { key: 'charge', label: 'Charge', first: true, shape: { is: 'ref', to: 'charge' } },
        { key: 'sponge', label: 'Sponge', first: true, shape: weight },
        { key: 'colour', label: 'Colour of the sponge', shape: { is: 'one', names: colourNames } },
      ],
    },
  },
  { key: 'retort', label: 'Retort', shape: { is: 'ref', to: 'retort' } },
  { key: 'lit', label: 'Lit', shape: moment },
  { key: 'firstMercury', label: 'First mercury', shape: moment },
  { key: 'lastMercury', label: 'Last mercury', shape: moment },
  { key: 'finishFrom', label: 'Finishing heat from', shape: moment },
  { key: 'finishTo', label: 'Finishing heat to', shape: moment },
  { key: 'opened', label: 'Opened', first: true, shape: moment },
  {
    key: 'noted',
    label: 'Noted along the fire',
    shape: {
      is: 'list',
      one: 'Note of the fire',
      fields: [
        { key: 'at', label: 'When', needed: true, first: true, shape: moment },
        { key: 'temperatureC', label: 'Temperature read at the retort', first: true, shape: { is: 'number', unit: '°C' } },
        { key: 'water', label: 'Cooling water turned', shape: { is: 'one', names: turnedNames } },
        { key: 'fire', label: 'Fire turned', shape: { is: 'one', names: turnedNames } },
        { key: 'what', label: 'What was seen or done', first: true, shape: text },
      ],
    },
  },
  {
    key: 'aimedC',
    label: 'Temperatures aimed at in the main run',
    shape: {
      is: 'group',
      fields: [
        { key: 'from', label: 'From', needed: true, first: true, shape: { is: 'number', unit: '°C' } },
        { key: 'to', label: 'To', needed: true, first: true, shape: { is: 'number', unit: '°C' } },
      ],
    },
  },
  {
    key: 'opening',
    label: 'How it was known to have cooled',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'measuredC', label: 'Temperature measured at the retort', first: true, shape: { is: 'number', unit: '°C' } },
        { key: 'stoodHours', label: 'Not measured, only stood', shape: { is: 'number', unit: 'h' } },
      ],
    },
  },
  {
    key: 'mercury',
    label: 'Mercury caught',
    first: true,
    shape: {
      is: 'group',
      fields: [
        { key: 'weight', label: 'Mercury', needed: true, first: true, shape: mercuryWeight },
        { key: 'vessel', label: 'Into which vessel', needed: true, first: true, shape: vessel },
        { key: 'state', label: 'Dry or wet', first: true, shape: { is: 'one', names: mercuryStateNames } },
      ],
    },
  },
  { key: 'water', label: 'Water that came over', shape: weight },
  { key: 'fuel', label: 'Fuel', shape: text },
  { key: 'lute', label: 'Smoke, smell or stain at the lute', shape: text },
  checks,
  remark,
];
