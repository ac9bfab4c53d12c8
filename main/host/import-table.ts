/**
 * Takes a table into an open daybook: read, checked row by row against the book as it stands, then all entries with one flush, or none. The import's name is
 * made from the table itself, so that the same table is never added twice.
 */
import type { AskOf, ReplyOf } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { importableKinds } from '../../app/core/importing/fields.ts';
import { type ImportRead, readImport } from '../../app/core/importing/import.ts';
import { isKind } from '../../app/core/kinds/index.ts';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import { canonicalText, sha256 } from './canonical.ts';
import type { OpenDaybook } from './open-daybook.ts';

/** Most faults that are told at once. */
const mostTold = 1_000;

/** The name of an import: the same table, kind and mapping always have the same. */
export const batchOf = ({ kind, text, mapping }: AskOf<'import'>): string =>
  `import-${sha256(`${kind}\n${canonicalText(mapping)}\n${text}`).slice(0, 24)}`;

const told = (problems: readonly Problem[]): readonly Problem[] =>
  problems.length > mostTold
    ? [...problems.slice(0, mostTold), problem('import-more', '', { more: problems.length - mostTold })]
    : problems;

/** The table as drafts, or every fault in it. */
export function readTable(ask: AskOf<'import'>, entries: readonly Entry[], now: string): Result<ImportRead> {
  const { kind, text, mapping } = ask;
  if (!isKind(kind)) return bad(problem('import-kind-unknown', '--as', { read: kind, kinds: importableKinds.join(', ') }));
  const got = readImport({ kind, text, mapping, batch: batchOf(ask), entries, now });
  if (!got.ok) return got;
  return got.value.problems.length > 0 ? bad(...told(got.value.problems)) : got;
}

/** Adds all entries of a table, or none. */
export function importInto(book: OpenDaybook, ask: AskOf<'import'>, now: string): Result<ReplyOf<'import'>> {
  return book.keepAll(
    batchOf(ask),
    (entries) => {
      const read = readTable(ask, entries, now);
      return read.ok ? good(read.value.drafts) : read;
    },
    now,
  );
}
