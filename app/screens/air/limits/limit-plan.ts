/** A limit entered out of a row that was read in a paper: the row filled in, neither checked nor picked. */
import { type LimitRow, limitFromRow } from '../../../core/limit-rows.ts';
import type { FormPlan } from '../../../daybook/form.svelte.ts';
import { limitFields } from '../../../words/daybook-fields-air.ts';
import { bodyOf, filled, oneOfEach, type Typed } from '../../daybook/typed.ts';
import { limitDraft } from '../drafts.ts';

const usual = { scale: '', unit: 'g' } as const;

export const limitPlan = (row: LimitRow, offset: string): FormPlan<{ fields: Typed }> => ({
  name: limitDraft(row.key),
  kind: 'limit',
  start: () => ({ fields: filled(limitFields, limitFromRow(row), usual) }),
  full: () => ({ fields: oneOfEach(limitFields) }),
  body: ({ fields }) => bodyOf(limitFields, fields, offset),
});
