/** A daybook on disk with the entries of a made book, chained and hashed as the host writes them. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type Draft, type Entry, firstPrev } from '../../app/core/entry.ts';
import { makeDaybook } from '../../main/host/daybook-folder.ts';
import { lineFor } from '../../main/host/line.ts';

/** Makes the folder and writes every entry into the journal of its desk, in the order given. Answers the end mark of each desk. */
export function writeBook(dir: string, entries: readonly Entry[], name = 'Upper Battery'): ReadonlyMap<string, string> {
  const made = makeDaybook(dir, name, '2026-01-01T08:00:00+13:00');
  if (!made.ok) throw new Error('no daybook');
  const journals = new Map<string, { prev: string; lines: string[] }>();
  for (const entry of entries) {
    const journal = journals.get(entry.desk) ?? { prev: firstPrev, lines: [] };
    const { format: _f, desk, n: _n, prev: _p, hash: _h, written, ...draft } = entry;
    const kept = lineFor(draft as Draft, { desk, n: journal.lines.length + 1, prev: journal.prev }, written);
    journals.set(desk, { prev: kept.entry.hash, lines: [...journal.lines, kept.line] });
  }
  for (const [desk, { lines }] of journals) writeFileSync(join(dir, 'desks', `${desk}.jsonl`), `${lines.join('\n')}\n`);
  return new Map([...journals].map(([desk, { prev }]) => [desk, prev]));
}
