/**
 * The envelope of every entry: one line of the journal. What is inside `body` belongs to the kind (`kinds/`); what stands here is the same for
 * all and does not change: this is the format on disk (number 1).
 */
import { rule } from './read.ts';
import { id, label, moment, prose } from './shapes.ts';
import { z } from './zod.ts';

/** The number of this format. A line with a higher one comes from a newer program and is not touched. */
export const formatNumber = 1;

/** `prev` of a desk's first entry. */
export const firstPrev = '0'.repeat(64);

const hash = z.string().refine(...rule((t: string) => /^[0-9a-f]{64}$/.test(t), 'not-a-hash'));

/** A picture or document kept beside the book: the SHA-256 of its bytes and its ending. */
export const evidenceName = z.string().refine(...rule((t: string) => /^[0-9a-f]{64}\.(png|jpg|pdf)$/.test(t), 'not-evidence'));

/** What any entry may carry besides its body. */
const optionals = {
  /** People who saw it done: their ids. */
  witness: z.array(id).max(8).optional(),
  /** How exact `happened` is. Left out: exact. */
  timing: z.enum(['exact', 'about', 'day']).optional(),
  /** The paper form it was typed from. */
  form: z.strictObject({ number: label, page: label.optional() }).optional(),
  /** Copied out of an older book: which, and where. */
  transcribed: z.strictObject({ book: label, page: label.optional() }).optional(),
  /** Evidence files, with what each shows. */
  evidence: z
    .array(z.strictObject({ file: evidenceName, shows: label.optional() }))
    .max(20)
    .optional(),
  /**
   * Came in with a table: which import and which of its entries, the row of the table, and every cell that was read, as it stood there. The entries of one
   * import count together or not at all.
   */
  imported: z
    .strictObject({
      batch: id,
      n: z.number().int().min(1),
      of: z.number().int().min(1),
      row: z.number().int().min(1),
      cells: z.array(z.strictObject({ column: label, text: prose })).max(2000),
    })
    .refine(...rule((i: { n: number; of: number }) => i.n <= i.of, 'not-accepted'))
    .optional(),
};

/** What an asker hands in to be kept. The asker makes the id: asking twice keeps once. */
export const draft = z.strictObject({
  id,
  /** When it happened: local time with its offset. */
  happened: moment,
  /** The person who wrote it down; null before anybody is in the register. */
  by: id.nullable(),
  kind: z.string().refine(...rule((t: string) => /^[a-z][a-z-]{1,30}$/.test(t), 'not-a-kind')),
  body: z.record(z.string(), z.unknown()),
  ...optionals,
});
export type Draft = z.infer<typeof draft>;

/** A kept entry: a draft with its place in its desk's chain. */
export const entry = z.strictObject({
  ...draft.shape,
  format: z.literal(formatNumber),
  desk: id,
  /** Its number in the desk's journal, from 1. */
  n: z.number().int().min(1),
  /** The hash of the desk's entry before it. */
  prev: hash,
  /** When it was written down: the machine's clock, with its offset. */
  written: moment,
  /** SHA-256 of this line's canonical form without this field (RFC 8785). */
  hash,
});
export type Entry = z.infer<typeof entry>;

/** Stands as the kind of an entry that is handed to somebody who may not see what it says; no entry is ever kept under it. */
export const withheldKind = 'withheld';
