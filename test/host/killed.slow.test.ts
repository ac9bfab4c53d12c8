/** A process killed at any moment of three hundred appends has lost nothing it answered: every answered entry is there, once, and the next writer goes on. */
import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { readJournal } from '../../main/host/journal.ts';
import { desksFolder, journalPath } from '../../main/host/journal-writer.ts';
import { bundle } from './bundle.ts';
import { temporaryFolder } from './folder.ts';

const desk = 'desk-one';
const wanted = 300;

/** Numbers from 0 up to 1 that are the same at every run: a linear congruence modulo 2^32 (multiplier 1664525, increment 1013904223). */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

let script = '';
beforeAll(async () => {
  script = await bundle('keeps-notes.ts', temporaryFolder());
});

/** Runs the writer until it ends by itself or is killed, `afterMs` from its start or from its first answer. */
async function round(folder: string, from: 'start' | 'answer', afterMs: number): Promise<{ ids: string[]; killed: boolean }> {
  const child = spawn(process.execPath, [script, folder, desk, String(wanted)], { stdio: ['ignore', 'pipe', 'pipe'] });
  let out = '';
  let errors = '';
  let timer = from === 'start' ? setTimeout(() => child.kill('SIGKILL'), afterMs) : null;
  child.stdout.on('data', (part: Buffer) => {
    out += part.toString('utf8');
    timer ??= setTimeout(() => child.kill('SIGKILL'), afterMs);
  });
  child.stderr.on('data', (part: Buffer) => {
    errors += part.toString('utf8');
  });
  const signal = await new Promise((resolve) => child.on('close', (_, how) => resolve(how)));
  if (timer) clearTimeout(timer);
  expect(errors).toBe('');
  const ids = out.split('\n');
  // what stands behind the last newline was not wholly said
  ids.pop();
  return { ids, killed: signal === 'SIGKILL' };
}

describe('three hundred entries by a process that is killed again and again', () => {
  it.each([1, 2, 3, 4, 5])('are all there, each once, in one chain (moments of seed %i)', async (seed) => {
    const folder = temporaryFolder();
    mkdirSync(desksFolder(folder));
    const next = seeded(seed);
    const answered: string[] = [];
    let kills = 0;
    for (let finished = false; !finished; ) {
      const { ids, killed } = await round(folder, next() < 0.15 ? 'start' : 'answer', next() * 35);
      answered.push(...ids);
      kills += killed ? 1 : 0;
      finished = !killed;
      let bytes: Buffer = Buffer.alloc(0);
      try {
        bytes = readFileSync(journalPath(folder, desk));
      } catch {}
      const { entries, fault } = readJournal(bytes, desk);
      expect(fault).toBeUndefined();
      const kept = new Map<string, number>();
      for (const { id } of entries) kept.set(id, (kept.get(id) ?? 0) + 1);
      expect([...kept.values()].filter((times) => times !== 1)).toEqual([]);
      expect(answered.filter((id) => !kept.has(id))).toEqual([]);
      if (kills > 400) throw new Error('the writer never comes to its end');
    }
    const journal = readJournal(readFileSync(journalPath(folder, desk)), desk);
    expect([journal.entries.length, journal.fault, journal.torn]).toEqual([wanted, undefined, undefined]);
    expect(journal.entries.map((entry) => entry.n)).toEqual(Array.from({ length: wanted }, (_, i) => i + 1));
    expect(new Set(answered).size).toBe(answered.length);
    // it was killed in the middle, not before or after
    expect(kills).toBeGreaterThan(0);
  });
});
