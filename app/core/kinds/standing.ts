/**
 * What a site holds and what it does with mercury, in its own words: two lists that may hold several answers and differ by place. It is the
 * site's statement, shown on every paper; it proves and permits nothing.
 */
import { rule } from '../read.ts';
import { day, label, prose } from '../shapes.ts';
import { z } from '../zod.ts';

/** Mercury held: none; perhaps in plates, floors, traps; a stock. */
export const holdings = ['none', 'in-place', 'stock'] as const;
/** What is done: nothing; ore or water over plates with no mercury fed; clearing legacy mercury; use under an authority. */
export const doings = ['nothing', 'no-mercury-fed', 'clearing', 'authority'] as const;

const where = { place: label.optional(), since: day.optional(), until: day.optional() };

const doing = z
  .strictObject({
    what: z.enum(doings),
    ...where,
    authority: z
      .strictObject({
        name: label,
        number: label,
        /** Its last day, or that none is stated on it. */
        expiry: z.union([day, z.literal('none stated')]),
        covers: label,
      })
      .optional(),
  })
  .refine(
    ...rule(
      (d: { what: string; authority?: unknown }) => d.what !== 'authority' || d.authority !== undefined,
      'authority-missing',
    ),
  )
  .refine(
    ...rule(
      (d: { what: string; authority?: unknown }) => d.what === 'authority' || d.authority === undefined,
      'authority-not-asked',
    ),
  );

/** Two answers for one place of which one says "none" or "nothing" contradict each other. */
const contradicts = (none: string) => (list: readonly { what: string; place?: string | undefined }[]) =>
  !list.some((a) => a.what === none && list.some((b) => b !== a && a.place === b.place));

export const standing = z.strictObject({
  held: z
    .array(z.strictObject({ what: z.enum(holdings), ...where }))
    .min(1)
    .max(20)
    .refine(...rule(contradicts('none'), 'standing-contradicts')),
  done: z
    .array(doing)
    .min(1)
    .max(20)
    .refine(...rule(contradicts('nothing'), 'standing-contradicts')),
  note: prose.optional(),
});
