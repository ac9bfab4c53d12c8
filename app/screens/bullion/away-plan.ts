/** The form of a bar handed over: to whom, with which paper, and its weight as it goes. */
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';
import { draftName } from './hrefs.ts';

export interface AwayValues {
  bar: string;
  party: string;
  weight: WeighingEntry;
  purpose: string;
  document: string;
  carrier: string;
  seal: string;
  note: string;
}

export const awayPlan = (bar: string, scale: string): FormPlan<AwayValues> => ({
  name: draftName('away', bar),
  kind: 'transfer',
  start: () => ({ bar, party: '', weight: noWeighing(scale), purpose: '', document: '', carrier: '', seal: '', note: '' }),
  body: (v) => ({
    way: 'out',
    what: 'bar',
    party: textOr(v.party),
    bar: textOr(v.bar),
    weight: weightOf(v.weight),
    purpose: textOr(v.purpose),
    document: textOr(v.document),
    carrier: textOr(v.carrier),
    seal: textOr(v.seal),
    note: textOr(v.note),
  }),
});
