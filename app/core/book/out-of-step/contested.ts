/**
 * Two corrections of one entry: what the book comes to under each of them, so that whoever decides sees what hangs on it. Nothing is chosen here: each
 * result is the whole book read anew with one of them and without the others.
 */
import { type Measured, total } from '../../measured.ts';
import { accountOf } from '../account.ts';
import { type Book, readBook, runOf } from '../book.ts';
import type { Reading } from '../current.ts';
import { weighedFrom } from '../weights.ts';
import { weightsIn } from '../weights-in.ts';
import { fromFlags, type OutOfStep } from './item.ts';

export const contestedOutOfStep = (book: Book): OutOfStep[] => fromFlags(book, 'contested', ['contested']);

/** What the book comes to under one of the corrections. */
export interface UnderOne {
  readonly correction: string;
  /** The one the book goes by now. */
  readonly counts: boolean;
  readonly happened: string;
  /** The weights of the entry, summed; null where it has none. */
  readonly weight: Measured | null;
  /** Charge and gap of the run it belongs to; null without a run or while it is open. */
  readonly charge: Measured | null;
  readonly gap: Measured | null;
  /** Not accounted for, of the whole book. */
  readonly unaccounted: Measured;
}

/** Corrections that stand side by side, with what each of them would lead on to. */
function sideBySide(reading: Reading): readonly (readonly string[])[] {
  const by = new Map<string, string[]>();
  for (const { id, body } of reading.corrections) by.set(String(body.corrects), [...(by.get(String(body.corrects)) ?? []), id]);
  return [...by.values()].filter((ids) => ids.length > 1);
}

/** A correction with those that correct it in turn. */
function withFollowers(reading: Reading, id: string): readonly string[] {
  const own = reading.corrections.filter(({ body }) => body.corrects === id).map((c) => c.id);
  return [id, ...own.flatMap((next) => withFollowers(reading, next))];
}

const runAround = (book: Book, id: string) => runOf(book, book.charges.firings.get(id)?.charges[0] ?? id);

/** What the book comes to under each correction that stands beside another; empty for an entry that is not contested. */
export function resultsUnder(book: Book, id: string): readonly UnderOne[] {
  const reading = book.current.byId.get(id);
  if (!reading) return [];
  const last = reading.corrections.at(-1)?.id;
  return sideBySide(reading).flatMap((group) =>
    group.flatMap((correction): UnderOne[] => {
      const without = new Set(group.filter((other) => other !== correction).flatMap((other) => withFollowers(reading, other)));
      const read = readBook(book.entries.filter((e) => !without.has(e.id)));
      const now = read.current.byId.get(id);
      if (!now) return [];
      const weights = weightsIn(now.body).map(
        ({ weight, path }) => weighedFrom(weight, { entry: id, path, at: now.happened }, read.registers).net,
      );
      const run = runAround(read, id);
      return [
        {
          correction,
          counts: last !== undefined && !without.has(last),
          happened: now.happened,
          weight: weights.length > 0 ? total(weights) : null,
          charge: run?.charge.net ?? null,
          gap: run?.last?.gap?.net ?? null,
          unaccounted: accountOf(read, { from: null, to: null }).unaccounted,
        },
      ];
    }),
  );
}
