/** Entries about the book itself: a note, a correction that names the old entry and why, a strike. None of them removes anything. */
import { id, moment, prose } from '../shapes.ts';
import { z } from '../zod.ts';

export const note = z.strictObject({ text: prose, about: id.optional() });

export const correction = z.strictObject({
  /** The entry put right, or the correction of it that the writer had before them. */
  corrects: id,
  /** The body as it should read, whole. */
  body: z.record(z.string(), z.unknown()),
  happened: moment.optional(),
  why: prose,
});

export const strike = z.strictObject({ strikes: id, why: prose });
