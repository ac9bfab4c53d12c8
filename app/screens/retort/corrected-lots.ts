/** Which lots of a charge no longer read as they were first written: label and weight of the clean-up, weight at charging. It only points there. */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Lot } from '../../core/book/lots.ts';
import type { Body } from '../../core/kinds/index.ts';

export type CorrectedPart = 'label' | 'weight' | 'charged';

/** The lot a clean-up made, of which this one may be a part. */
export function wholeLot(book: Book, lot: Lot): Lot {
  const parent = lot.parent === null ? undefined : book.lots.all.get(lot.parent);
  return parent ? wholeLot(book, parent) : lot;
}

const differ = (a: unknown, b: unknown): boolean => JSON.stringify(a) !== JSON.stringify(b);

/** Label or weight of the lot that the clean-up's own corrections changed. */
export function correctedInCleanUp(book: Book, lot: Lot): readonly CorrectedPart[] {
  const whole = wholeLot(book, lot);
  const reading = book.current.byId.get(whole.madeBy);
  if (reading?.kind !== 'clean-up' || reading.corrections.length === 0) return [];
  const key = whole.id.slice(reading.id.length + 1);
  const of = (body: unknown) => (body as Body<'clean-up'>).lots.find((row) => row.key === key);
  const [was, now] = [of(reading.entry.body), of(reading.body)];
  return [
    ...(was?.label === now?.label ? [] : ['label' as const]),
    ...(differ(was?.weight, now?.weight) ? ['weight' as const] : []),
  ];
}

/** Whether the row's weight at charging was corrected. */
export function correctedAtCharging(reading: Reading<'charge'>, key: string): readonly CorrectedPart[] {
  if (reading.corrections.length === 0) return [];
  const of = (body: unknown) => (body as Body<'charge'>).rows.find((row) => row.key === key) as { weight?: unknown } | undefined;
  return differ(of(reading.entry.body)?.weight, of(reading.body)?.weight) ? ['charged'] : [];
}
