/** The form of mercury received: what stands in it, and the entry it makes. */
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';

export interface ReceiptValues {
  vessel: string;
  weight: WeighingEntry;
  way: string;
  from: string;
  document: string;
  seal: string;
}

/** `scale`: the one used last. */
export const receiptPlan = (scale: string): FormPlan<ReceiptValues> => ({
  name: 'receipt',
  kind: 'receipt',
  start: () => ({ vessel: '', weight: noWeighing(scale), way: '', from: '', document: '', seal: '' }),
  body: (v) => ({
    vessel: textOr(v.vessel),
    weight: weightOf(v.weight),
    way: textOr(v.way),
    from: textOr(v.from),
    document: textOr(v.document),
    seal: textOr(v.seal),
  }),
});
