/**
 * The small shapes that entries are made of: ids, texts, days, masses as read, weighings as written down. A shape only says what can be read at
 * all; whether it makes sense in this book is asked in `book/rules.ts`.
 */
import { isPlainGrams, massFromText } from './mass.ts';
import { rule } from './read.ts';
import { isDay, isMoment } from './time.ts';
import { z } from './zod.ts';

/** Control characters, and the marks that reverse the direction of text: neither belongs in a record. */
const unprintable = /[\u0000-\u0008\u000b-\u001f\u007f\u202a-\u202e\u2066-\u2069\ud800-\udfff]/u;

const idText = /^[a-z0-9][a-z0-9-]{5,63}$/;
/** Whether the text is an id: what the schema below asks. */
export const isId = (text: string): boolean => idText.test(text);

/** An id the asker made up: small letters, digits and hyphens. */
export const id = z.string().refine(...rule(isId, 'not-an-id'));

/** A thing made by an entry (a lot, a child lot): the entry's id, a stroke, the thing's key in it. */
export const partId = z
  .string()
  .refine(...rule((t: string) => /^[a-z0-9][a-z0-9-]{5,63}(\/[a-z0-9]{1,8}){1,6}$/.test(t), 'not-an-id'));

/** The key of a part inside its entry. */
export const partKey = z.string().refine(...rule((t: string) => /^[a-z0-9]{1,8}$/.test(t), 'not-a-key'));

const text = (most: number) =>
  z
    .string()
    .max(most)
    .refine(...rule((t: string) => t.trim() !== '', 'empty-text'))
    .refine(...rule((t: string) => !unprintable.test(t), 'unprintable'));

/** A label, a name, a number on a document. */
export const label = text(120);
/** Free writing. */
export const prose = text(4000);

export const day = z.string().refine(...rule(isDay, 'not-a-day'));
export const moment = z.string().refine(...rule(isMoment, 'not-a-moment'));

/** A mass exactly as read, with its unit. */
export const mass = z.string().check((context) => {
  if (isPlainGrams(context.value)) return;
  const got = massFromText(context.value, '');
  if (!got.ok)
    for (const p of got.problems)
      context.issues.push({ code: 'custom', input: context.value, params: { code: p.code, ...p.data } });
});

const aboveNought = /[1-9]/;

/** A mass above nothing. */
export const someMass = mass.refine(
  ...rule((t: string) => {
    if (isPlainGrams(t)) return aboveNought.test(t);
    const got = massFromText(t, '');
    return !got.ok || got.value.ug > 0;
  }, 'mass-zero'),
);

/** A figure that is no mass, kept as it was read: a plain decimal, not below nothing. */
export const decimalText = z.string().refine(...rule((t: string) => /^\d{1,12}(\.\d{1,12})?$/.test(t), 'decimal-text'));

export const finite = z.number();
export const positive = z.number().gt(0);
export const share = z.number().min(0).max(1);

/** Yes, no, or the question does not apply here. Left out: not recorded. */
export const answer = z.enum(['yes', 'no', 'na']);

/**
 * A weight and how it was come by:
 * - `scale`: read off a scale of the register, gross less tare; the tare may be a vessel's, and is written down with it;
 * - `volume`: mercury by volume, with the temperature it was read at;
 * - `stated`: somebody else's figure (an invoice, an old book), with a standard uncertainty where one is known.
 */
export const weight = z.discriminatedUnion('how', [
  z.strictObject({ how: z.literal('scale'), scale: id.optional(), gross: mass, tare: mass.optional(), vessel: id.optional() }),
  z.strictObject({
    how: z.literal('volume'),
    volume: z.string().refine(...rule((t: string) => /^\d+(\.\d+)? (ml|l|fl-oz-imp|fl-oz-us)$/.test(t), 'volume-text')),
    volumeUMl: z.number().min(0).optional(),
    temperatureC: z.number().min(-38.83).max(356.62),
    temperatureUC: z.number().min(0).optional(),
  }),
  z.strictObject({ how: z.literal('stated'), mass, u: mass.optional(), by: label.optional() }),
]);
export type Weight = z.infer<typeof weight>;

/** The name that a question is kept under. */
export const shortName = text(60);

/** One question of a check list and its answer; `by`: who answered, where that is not who wrote the entry. */
export const checked = z.strictObject({ check: z.string().max(60), answer, by: id.optional(), note: label.optional() });
export type Checked = z.infer<typeof checked>;
