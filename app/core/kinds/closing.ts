/**
 * A period closed: which two counts it lies between, the end marks of every desk it rests on, the figures as they stood then, and the hashes of the
 * statement's two files. It never changes; what later entries make of the period is told as adjustments and may be issued as the next version.
 */
import { rule } from '../read.ts';
import { id, label } from '../shapes.ts';
import { z } from '../zod.ts';

const sha256 = z.string().refine(...rule((t: string) => /^[0-9a-f]{64}$/.test(t), 'not-a-hash'));
/** Grams as exact decimal text, to the microgram; below nothing with a minus. */
const grams = z.string().refine(...rule((t: string) => /^-?\d{1,10}\.\d{6}$/.test(t), 'not-grams'));

/** The lines of a closed account. `unaccounted_g` stands with `u_g`, its standard uncertainty (k = 1). */
export const frozenFigures = z.strictObject({
  opening_g: grams,
  receipts_g: grams,
  found_g: grams,
  removals_g: grams,
  released_g: grams,
  closing_g: grams,
  unaccounted_g: grams,
  u_g: grams,
});

export const closing = z.strictObject({
  /** The stock-take it begins after. Left out: from the beginning of the book. */
  opening: id.optional(),
  /** The stock-take it ends with. */
  closing: id,
  version: z.number().int().min(1),
  /** The closing it is the next version of. */
  replaces: id.optional(),
  /** How far each desk's journal had come: what it rests on, and nothing after it. By desk. */
  ends: z
    .array(z.strictObject({ desk: id, entries: z.number().int().min(1), endMark: sha256 }))
    .min(1)
    .max(100),
  figures: frozenFigures,
  /** What it takes over from periods closed before it: for each of those closings, what was put down there and was found different since. */
  adjustments: z
    .array(z.strictObject({ of: id, g: grams }))
    .max(100)
    .optional(),
  /** SHA-256 of the statement (JSON) and of the paper (PDF) in the folder `closings`. */
  statement: sha256,
  paper: sha256,
  /** The false alarm chosen for the test of a sequence of periods, before its figures are seen. */
  falseAlarm: z.number().gt(0).lt(1).optional(),
  note: label.optional(),
});
