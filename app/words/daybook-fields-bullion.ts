/** The fields of an assay and of a settlement. */
import { mass, remark, text } from './daybook-fields-parts.ts';
import {
  methodNames,
  otherMetalNames,
  resultUnitNames,
  samplingNames,
  settlementRuleNames,
  subjectNames,
} from './daybook-names-bullion.ts';
import type { FieldWords } from './daybook-shapes.ts';

const by = (...has: string[]) => ({ key: 'method', has });
const of = (...has: string[]) => ({ key: 'subject', has });
const bar = { is: 'ref', to: 'bar' } as const;
const assay = { is: 'ref', to: 'assay' } as const;

export const assayFields: readonly FieldWords[] = [
  { key: 'subject', label: 'What was assayed', needed: true, first: true, shape: { is: 'one', names: subjectNames } },
  { key: 'bar', label: 'Which bar', first: true, only: of('bar'), shape: bar },
  { key: 'charge', label: 'Sponge of the charge', first: true, only: of('sponge'), shape: { is: 'ref', to: 'charge' } },
  {
    key: 'parcel',
    label: 'Of which parcel',
    first: true,
    only: of('ore', 'tailings', 'concentrate'),
    shape: { is: 'ref', to: 'parcel' },
  },
  {
    key: 'vessel',
    label: 'Out of which vessel',
    first: true,
    only: of('mercury', 'residue', 'waste'),
    shape: { is: 'ref', to: 'vessel' },
  },
  { key: 'which', label: 'Which one, in words', shape: text },
  { key: 'method', label: 'How', needed: true, first: true, shape: { is: 'one', names: methodNames } },
  {
    key: 'replicates',
    label: 'Samples',
    needed: true,
    first: true,
    only: by('fire-assay'),
    shape: {
      is: 'list',
      one: 'Sample',
      fields: [
        { key: 'sample', label: 'Sample taken', needed: true, first: true, shape: mass },
        { key: 'cornet', label: 'Gold after parting (cornet)', needed: true, first: true, shape: mass },
        { key: 'bead', label: 'Gold and silver before parting (bead)', shape: mass },
      ],
    },
  },
  {
    key: 'proofs',
    label: 'Proofs',
    first: true,
    only: by('fire-assay'),
    shape: {
      is: 'list',
      one: 'Proof',
      fields: [
        { key: 'taken', label: 'Gold taken', needed: true, first: true, shape: mass },
        { key: 'found', label: 'Gold found', needed: true, first: true, shape: mass },
        { key: 'silverLoss', label: 'Silver lost in cupelling', shape: mass },
      ],
    },
  },
  {
    key: 'titrations',
    label: 'Titrations',
    needed: true,
    first: true,
    only: by('titration'),
    shape: {
      is: 'list',
      one: 'Titration',
      fields: [
        { key: 'sample', label: 'Sample taken', needed: true, first: true, shape: mass },
        { key: 'volumeMl', label: 'Solution used, ml', needed: true, first: true, shape: text },
        { key: 'normality', label: 'Its strength, equivalents to the litre', needed: true, first: true, shape: text },
      ],
    },
  },
  { key: 'air', label: 'Weight in air', needed: true, first: true, only: by('density'), shape: mass },
  { key: 'water', label: 'Weight in water', needed: true, first: true, only: by('density'), shape: mass },
  {
    key: 'waterDensity',
    label: 'Density of the water, g/cm³',
    needed: true,
    first: true,
    only: by('density'),
    shape: text,
  },
  { key: 'airDensity', label: 'Density of the air, g/cm³', only: by('density'), shape: text },
  {
    key: 'other',
    label: 'The second metal, as taken',
    needed: true,
    first: true,
    only: by('density'),
    shape: { is: 'one', names: otherMetalNames },
  },
  {
    key: 'result',
    label: 'Result as stated',
    needed: true,
    first: true,
    only: by('outside'),
    shape: {
      is: 'group',
      fields: [
        { key: 'unit', label: 'Stated in', needed: true, first: true, shape: { is: 'one', names: resultUnitNames } },
        { key: 'gold', label: 'Gold', first: true, shape: text },
        { key: 'goldU', label: 'Uncertainty of the gold', shape: text },
        { key: 'silver', label: 'Silver', first: true, shape: text },
        { key: 'silverU', label: 'Uncertainty of the silver', shape: text },
        { key: 'mercury', label: 'Mercury', shape: text },
        { key: 'mercuryU', label: 'Uncertainty of the mercury', shape: text },
        { key: 'k', label: 'Coverage factor stated with them (left out: standard uncertainties)', shape: { is: 'number' } },
      ],
    },
  },
  { key: 'certificate', label: 'Number of the certificate', first: true, only: by('outside'), shape: text },
  { key: 'laboratory', label: 'Laboratory', shape: text },
  {
    key: 'sampling',
    label: 'Sampling',
    shape: {
      is: 'group',
      fields: [
        {
          key: 'method',
          label: 'How the sample was taken',
          needed: true,
          first: true,
          shape: { is: 'one', names: samplingNames },
        },
        { key: 'positions', label: 'Where on it', shape: text },
        { key: 'u', label: 'What sampling adds, standard uncertainty in parts per thousand', shape: text },
      ],
    },
  },
  { key: 'limit', label: 'Replicates may differ by, parts per thousand', shape: text },
  { key: 'balanceU', label: 'Standard uncertainty of one weighing', only: by('fire-assay'), shape: mass },
  {
    key: 'repeatability',
    label: 'Standard deviation of one determination, parts per thousand',
    only: by('fire-assay', 'titration'),
    shape: text,
  },
  {
    key: 'proofScatter',
    label: 'Standard deviation of one proof, parts per thousand',
    only: by('fire-assay'),
    shape: text,
  },
  remark,
];

export const settlementFields: readonly FieldWords[] = [
  { key: 'bar', label: 'Which bar', needed: true, first: true, shape: bar },
  { key: 'site', label: 'Our figure, parts of gold per thousand', needed: true, first: true, shape: text },
  { key: 'siteAssay', label: 'Our assay', shape: assay },
  { key: 'other', label: 'Their figure, parts of gold per thousand', needed: true, first: true, shape: text },
  { key: 'otherAssay', label: 'Their assay', shape: assay },
  { key: 'limit', label: 'Splitting limit, parts per thousand', needed: true, first: true, shape: text },
  {
    key: 'rule',
    label: 'Rule of the contract beyond the limit',
    needed: true,
    first: true,
    shape: { is: 'one', names: settlementRuleNames },
  },
  { key: 'umpire', label: 'Umpire’s figure, parts of gold per thousand', first: true, shape: text },
  { key: 'umpireAssay', label: 'Umpire’s assay', shape: assay },
  { key: 'siteSilver', label: 'Our figure, parts of silver per thousand', shape: text },
  { key: 'otherSilver', label: 'Their figure, parts of silver per thousand', shape: text },
  { key: 'silverLimit', label: 'Splitting limit for silver, parts per thousand', shape: text },
  { key: 'umpireSilver', label: 'Umpire’s figure, parts of silver per thousand', shape: text },
  { key: 'contract', label: 'Contract', first: true, shape: text },
  { key: 'party', label: 'The other party', shape: text },
  remark,
];
