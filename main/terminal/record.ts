/** A daybook for a verb that computes: read, verified, and worked out. What does not verify is no ground for figures. */
import type { Notice } from '../../app/contract.ts';
import { type Book, readBook } from '../../app/core/book/book.ts';
import { type Problem, problem } from '../../app/core/result.ts';
import { type Daybook, readDaybook } from '../host/daybook-folder.ts';
import { leftOut } from '../host/left-out.ts';
import { faulty, type Machine, type Outcome, refused } from './verb.ts';

export interface Verified {
  readonly daybook: Daybook;
  readonly book: Book;
}

/** What of a record a newer program wrote, as problems of the call; its lines are not read here. */
export const newerUnread = (notices: readonly Notice[]): Problem[] =>
  notices
    .filter((notice) => notice.code === 'newer-format')
    .map((notice) => problem('newer-unread', 'DIR', { format: notice.detail ?? '' }));

/** The record in a folder, or how the call ends: 2 where there is none or a newer program wrote lines, 1 where a chain is broken. */
export function readRecord(
  dir: string,
): { readonly ok: true; readonly value: Verified } | { readonly ok: false; readonly ends: Outcome } {
  const got = readDaybook(dir);
  if (!got.ok) return { ok: false, ends: refused(...got.problems.map((p) => ({ ...p, field: 'DIR' }))) };
  const { desks, entries } = got.value;
  const faults = desks.flatMap(({ desk, fault }) => (fault ? [{ desk, line: fault.line, cause: fault.cause }] : []));
  if (faults.length > 0) return { ok: false, ends: faulty(...faults.map((fault) => problem('chain-broken', '', fault))) };
  const newer = newerUnread(got.value.notices);
  if (newer.length > 0) return { ok: false, ends: refused(...newer) };
  return { ok: true, value: { daybook: got.value, book: readBook(entries) } };
}

/** Says on standard error what of the record no figure counts, one JSON line each: it is a notice and ends nothing. */
export function tellLeftOut({ daybook }: Verified, machine: Machine): void {
  for (const text of daybook.desks.flatMap(leftOut)) machine.complain(JSON.stringify({ notice: text }));
}
