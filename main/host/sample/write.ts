/** Writes the sample site into a folder: the same bytes every time. A story becomes a chained journal of one desk, like any other. */
import { mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { firstPrev, formatNumber } from '../../../app/core/entry.ts';
import { bad, good, problem, type Result } from '../../../app/core/result.ts';
import { makeFolder, onDisk, writeWhole } from '../disk.ts';
import { desksFolder } from '../journal-writer.ts';
import { lineFor } from '../line.ts';
import { eighteenMonths } from './eighteen-months.ts';
import { generated } from './large.ts';
import { firstDay, sampleName } from './site.ts';
import type { Told } from './story.ts';

/** The desk that wrote the sample. */
const sampleDesk = 'sample-desk';

/** The journal of a story, as text. */
export function journalOf(told: Iterable<Told>, desk = sampleDesk): string {
  const lines: string[] = [];
  let prev = firstPrev;
  let n = 0;
  for (const { draft, written } of told) {
    n += 1;
    const { entry, line } = lineFor(draft, { desk, n, prev }, written);
    prev = entry.hash;
    lines.push(line);
  }
  return `${lines.join('\n')}\n`;
}

/** Writes the sample, or with `entries` a large generated book. Answers how many entries it holds. The folder may exist only if it is empty. */
export function writeSample(
  dir: string,
  large: { entries: number; seed: number } | null,
): Result<{ name: string; entries: number }> {
  const folder = resolve(dir);
  const told = large ? generated(large.entries, large.seed) : eighteenMonths();
  const name = large ? `${sampleName}, generated` : sampleName;
  const id = large ? `generated-${large.entries}-${large.seed}` : 'sample-merrow-spur';
  const done = onDisk<Result<{ name: string; entries: number }>>(folder, () => {
    makeFolder(folder);
    if (readdirSync(folder).length > 0) return bad(problem('folder-not-empty', '', { path: folder }));
    for (const inner of ['desks', 'evidence', 'closings']) mkdirSync(join(folder, inner));
    writeWhole(join(desksFolder(folder), `${sampleDesk}.jsonl`), journalOf(told));
    writeWhole(
      join(folder, 'daybook.json'),
      `${JSON.stringify({ id, name, format: formatNumber, made: `${firstDay}T08:00+10:00` }, null, 2)}\n`,
    );
    return good({ name, entries: told.length });
  });
  return done.ok ? done.value : done;
}
