/**
 * A limit for mercury in air as the site enters it: whose it is, what it is averaged over, for whom, how binding, out of which paper, and who
 * looked that up and when. The program sets none: a day is compared only with limits that the site picked, and nothing is compared with a limit
 * that nobody checked. Rows kept as safety.md 2 asks.
 */
import { rule } from '../read.ts';
import { day, decimalText, id, label } from '../shapes.ts';
import { z } from '../zod.ts';

export const limitForms = ['elemental-vapour', 'other'] as const;
/** `continuous`: breathed day and night, for the public only. */
export const limitBases = ['8h', '15min', 'ceiling', 'continuous'] as const;
export const limitPeople = ['work', 'public'] as const;
export const limitStatuses = ['legal', 'indicative', 'recommendation', 'guidance', 'not-in-force'] as const;

export type LimitBasis = (typeof limitBases)[number];
export type LimitPeople = (typeof limitPeople)[number];

interface Shape {
  readonly source?: string | undefined;
  readonly picked?: 'yes' | 'no' | undefined;
  readonly checked?: unknown;
  readonly basis: LimitBasis;
  readonly people: LimitPeople;
  readonly form: string;
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

const at = (field: keyof Shape, holds: (limit: Shape) => boolean, code: string) => {
  const path: PropertyKey[] = [field];
  return [holds, { params: { code }, path }] as const;
};

export const limit = z
  .strictObject({
    of: id.optional(),
    label,
    body: label,
    jurisdiction: label.optional(),
    form: z.enum(limitForms),
    /** Milligrams of mercury in a cubic metre, as the source prints it, brought to that unit. */
    mgM3: decimalText.refine(...rule((t: string) => /[1-9]/.test(t), 'limit-zero')),
    basis: z.enum(limitBases),
    people: z.enum(limitPeople),
    status: z.enum(limitStatuses).optional(),
    /** What is printed beside it: skin, a class of carcinogens. */
    notation: label.optional(),
    edition: label.optional(),
    /** Days between which it holds. */
    from: day.optional(),
    to: day.optional(),
    /** The paper it was read in. */
    source: label.optional(),
    checked: z.strictObject({ by: label, on: day }).optional(),
    /** Where two papers of one body do not agree, what the other says. */
    conflict: label.optional(),
    /** Whether days are compared with it. Left out: they are not. */
    picked: z.enum(['yes', 'no']).optional(),
    note: label.optional(),
    out: day.optional(),
  })
  .refine(...at('source', (l) => l.source !== undefined, 'limit-without-source'))
  .refine(...at('checked', (l) => l.picked !== 'yes' || l.checked !== undefined, 'limit-unchecked'))
  .refine(...at('basis', (l) => l.basis !== 'continuous' || l.people === 'public', 'continuous-at-work'))
  .refine(...at('picked', (l) => l.picked !== 'yes' || l.form === 'elemental-vapour', 'limit-other-form'))
  .refine(...at('to', (l) => l.from === undefined || l.to === undefined || l.from <= l.to, 'limit-dates-reversed'));
