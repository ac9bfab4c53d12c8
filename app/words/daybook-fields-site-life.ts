/** The fields of what else a site writes down: incidents, open days, checks of scales, checks that fall due. */
import { checks, day, mass, prose, remark, text, yesNo } from './daybook-fields-parts.ts';
import { checkDueNames, doneOrNotNames, yesNoNames } from './daybook-names-year.ts';
import type { FieldWords } from './daybook-shapes.ts';

const people = { is: 'refs', to: 'person' } as const;

export const incidentFields: readonly FieldWords[] = [
  { key: 'what', label: 'What happened', needed: true, first: true, shape: prose },
  { key: 'where', label: 'Where', first: true, shape: text },
  { key: 'people', label: 'Who was there', first: true, shape: people },
  { key: 'done', label: 'What was done', first: true, shape: prose },
  { key: 'told', label: 'Who was told', first: true, shape: text },
  { key: 'assessment', label: 'Medical assessment advised', first: true, shape: yesNo },
];

export const openDayFields: readonly FieldWords[] = [
  { key: 'visitors', label: 'Visitors, by count', needed: true, first: true, shape: { is: 'number' } },
  { key: 'children', label: 'Of these, children', first: true, shape: { is: 'number' } },
  { key: 'areas', label: 'Where they were', needed: true, first: true, shape: text },
  { key: 'covered', label: 'What was covered or shut', first: true, shape: text },
  { key: 'guides', label: 'Who led them', first: true, shape: people },
  checks,
  remark,
];

export const scaleCheckFields: readonly FieldWords[] = [
  { key: 'scale', label: 'Scale', needed: true, first: true, shape: { is: 'ref', to: 'scale' } },
  { key: 'standard', label: 'Check weight', needed: true, first: true, shape: mass },
  { key: 'read', label: 'What the scale showed', needed: true, first: true, shape: mass },
  { key: 'passed', label: 'Within the site’s own limit', needed: true, first: true, shape: { is: 'one', names: yesNoNames } },
  { key: 'limit', label: 'That limit', first: true, shape: mass },
  remark,
];

export const checkDueFields: readonly FieldWords[] = [
  { key: 'what', label: 'Which check', needed: true, first: true, shape: { is: 'one', names: checkDueNames } },
  { key: 'person', label: 'For whom', first: true, shape: { is: 'ref', to: 'person' } },
  { key: 'done', label: 'Done or not', needed: true, first: true, shape: { is: 'one', names: doneOrNotNames } },
  { key: 'next', label: 'Next due', first: true, shape: day },
  remark,
];
