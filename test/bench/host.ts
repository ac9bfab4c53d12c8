/**
 * What the host costs over the bare minimum, in one process, taken in turn: keeping an entry against appending and flushing the same bytes, and
 * opening a book with every line verified against reading, hashing and parsing the same file. Called by `npm run bench` with a copy of a daybook;
 * prints one line of JSON with milliseconds, and the megabytes in memory once the book is open and entries have been kept.
 */
import 'zod/compile';
import { createHash } from 'node:crypto';
import { closeSync, fdatasyncSync, mkdtempSync, openSync, readdirSync, readFileSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { machineClock } from '../../main/host/clock.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';

const [folder = '', keeps = '400', opens = '5'] = process.argv.slice(2);
const home = mkdtempSync(join(tmpdir(), 'bench-home-'));

const timed = (act: () => void): number => {
  const began = performance.now();
  act();
  return performance.now() - began;
};

/** The bare minimum of opening: the bytes, one hash over each line, each line parsed. */
function readHashParse(): void {
  for (const name of readdirSync(join(folder, 'desks'))) {
    const lines = readFileSync(join(folder, 'desks', name), 'utf8').split('\n');
    for (const line of lines) {
      if (line === '') continue;
      createHash('sha256').update(line).digest('hex');
      JSON.parse(line);
    }
  }
}

const bareOpens: number[] = [];
const verifiedOpens: number[] = [];
for (let i = 0; i < Number(opens); i += 1) {
  bareOpens.push(timed(readHashParse));
  verifiedOpens.push(
    timed(() => {
      const got = readDaybook(folder);
      if (!got.ok || got.value.desks.some((desk) => desk.fault)) throw new Error('the daybook does not verify');
    }),
  );
}

const installation = openInstallation(home);
if (!installation.ok) throw new Error('no installation');
const opened = openDaybook(folder, installation.value);
if (!opened.ok) throw new Error('the daybook cannot be opened');
const bare = openSync(join(home, 'bare.jsonl'), 'a');
const bareKeeps: number[] = [];
const keptKeeps: number[] = [];
const issue = (n: number) => ({
  id: `bench-issue-${String(n).padStart(5, '0')}`,
  happened: machineClock(),
  by: 'person-0001',
  kind: 'issue',
  body: {
    vessel: 'vessel-0003',
    to: 'plates',
    weight: { how: 'scale', scale: 'scale-0001', gross: `${500 + n}.10 g`, tare: '412.15 g' },
  },
});
for (let i = 0; i < Number(keeps); i += 1) {
  const draft = draftFrom(issue(i));
  if (!draft.ok) throw new Error('the draft is none');
  let line = '';
  keptKeeps.push(
    timed(() => {
      const kept = opened.value.keep(draft.value, machineClock());
      if (!kept.ok) throw new Error(JSON.stringify(kept.problems));
      line = `${JSON.stringify(kept.value.entry)}\n`;
    }),
  );
  bareKeeps.push(
    timed(() => {
      writeSync(bare, line);
      fdatasyncSync(bare);
    }),
  );
}
closeSync(bare);
const megabytes = process.memoryUsage().rss / 2 ** 20;
opened.value.close();
rmSync(home, { recursive: true });
process.stdout.write(`${JSON.stringify({ bareOpens, verifiedOpens, bareKeeps, keptKeeps, megabytes })}\n`);
