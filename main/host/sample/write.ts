/** Writes the sample site into a folder: the same bytes every time. A story becomes a chained journal of one desk, like any other. */
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type Draft, type Entry, firstPrev, formatNumber } from '../../../app/core/entry.ts';
import { bad, good, problem, type Result } from '../../../app/core/result.ts';
import { writeClosing } from '../closings.ts';
import { makeFolder, onDisk, writeWhole } from '../disk.ts';
import { desksFolder } from '../journal-writer.ts';
import { lineFor, type Place } from '../line.ts';
import { type Closed, closed, type Printing } from './closed.ts';
import { type Telling, telling } from './eighteen-months.ts';
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

/** A journal as it is written, line by line, with the files of the closings in it. */
class Writing {
  readonly desk = sampleDesk;
  readonly lines: string[] = [];
  readonly closed: Closed[] = [];
  #entries: readonly Entry[] = [];
  #prev = firstPrev;

  get place(): Place {
    return { desk: this.desk, n: this.lines.length + 1, prev: this.#prev };
  }
  get entries(): readonly Entry[] {
    return this.#entries;
  }

  add(draft: Draft, written: string): void {
    const { entry, line } = lineFor(draft, this.place, written);
    this.#prev = entry.hash;
    this.lines.push(line);
    this.#entries = [...this.#entries, entry];
  }
}

/** The journal of the sample with its closings, each drawn up from what was written before it. */
async function sampleWritten(
  { told, closings }: Telling,
  daybook: { readonly id: string; readonly name: string },
  printing: Printing,
): Promise<Result<Writing>> {
  const writing = new Writing();
  const due = [...closings];
  const closeUpTo = async (moment: string | null): Promise<Result<null>> => {
    for (let next = due[0]; next && (moment === null || next.at <= moment); next = due[0]) {
      due.shift();
      const id = `closing-${String(writing.closed.length + 1).padStart(4, '0')}`;
      const one = await closed(next, id, writing.entries, writing.place, daybook, printing);
      if (!one.ok) return one;
      writing.add(one.value.draft, next.at);
      writing.closed.push(one.value);
    }
    return good(null);
  };
  for (const { draft, written } of told) {
    const before = await closeUpTo(written);
    if (!before.ok) return before;
    writing.add(draft, written);
  }
  const rest = await closeUpTo(null);
  return rest.ok ? good(writing) : rest;
}

/**
 * Writes the sample, or with `entries` a large generated one. Answers how many entries it holds. The folder may exist only if it is empty; everything is
 * told and printed before the first byte is written.
 */
export async function writeSample(
  dir: string,
  large: { entries: number; seed: number } | null,
  printing: Printing,
): Promise<Result<{ name: string; entries: number }>> {
  const folder = resolve(dir);
  const taken = onDisk(folder, () => existsSync(folder) && readdirSync(folder).length > 0);
  if (!taken.ok) return taken;
  const notEmpty = problem('folder-not-empty', '', { path: folder });
  if (taken.value) return bad(notEmpty);
  const name = large ? `${sampleName}, generated` : sampleName;
  const id = large ? `generated-${large.entries}-${large.seed}` : 'sample-merrow-spur';
  const sample = large ? null : await sampleWritten(telling(), { id, name }, printing);
  if (sample && !sample.ok) return sample;
  const told = large ? generated(large.entries, large.seed) : [];
  const journal = sample ? `${sample.value.lines.join('\n')}\n` : journalOf(told);
  const done = onDisk<Result<{ name: string; entries: number }>>(folder, () => {
    makeFolder(folder);
    if (readdirSync(folder).length > 0) return bad(notEmpty);
    for (const inner of ['desks', 'evidence', 'closings']) mkdirSync(join(folder, inner));
    for (const { drawn, paper } of sample?.value.closed ?? []) {
      const written = writeClosing(folder, sampleDesk, drawn, paper);
      if (!written.ok) return written;
    }
    writeWhole(join(desksFolder(folder), `${sampleDesk}.jsonl`), journal);
    writeWhole(
      join(folder, 'daybook.json'),
      `${JSON.stringify({ id, name, format: formatNumber, made: `${firstDay}T08:00+10:00` }, null, 2)}\n`,
    );
    return good({ name, entries: sample ? sample.value.lines.length : told.length });
  });
  return done.ok ? done.value : done;
}
