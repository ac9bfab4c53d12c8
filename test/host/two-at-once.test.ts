/** Two processes, two windows, two desks on one daybook, and a clock that is set back: every entry that was answered is there, once. */
import { type ChildProcess, spawn } from 'node:child_process';
import { join } from 'node:path';
import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import type { OpenBook } from '../../app/contract.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { aHost, bookIn, codesIn } from './a-host.ts';
import { bundle } from './bundle.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

let script = '';
beforeAll(async () => {
  script = await bundle('holds-daybook.ts', temporaryFolder());
});

const children: ChildProcess[] = [];
afterEach(() => {
  for (const child of children.splice(0)) child.kill('SIGKILL');
});

/** A process that opens the daybook, keeps notes `first` to `last`, and holds it. */
async function other(folder: string, home: string, first: number, last: number) {
  const child = spawn(process.execPath, [script, folder, home, String(first), String(last)], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  children.push(child);
  const ended = new Promise((resolve) => child.on('close', resolve));
  let out = '';
  const said = await new Promise<string>((resolve, reject) => {
    child.stdout.on('data', (part: Buffer) => {
      out += part.toString('utf8');
      if (out.endsWith('\n')) resolve(out);
    });
    child.once('exit', () => reject(new Error(`it ended and said only: ${out}`)));
  });
  return { child, ended, ...(JSON.parse(said) as { kept: number; open: OpenBook }) };
}

function newBook(): string {
  const folder = join(temporaryFolder(), 'book');
  expect(makeDaybook(folder, 'Test Battery', now).ok).toBe(true);
  return folder;
}

/** Ids of all entries on the disk, in order, after the whole record has verified. */
function idsIn(folder: string): string[] {
  const read = readDaybook(folder);
  if (!read.ok) throw new Error('not read');
  expect(read.value.notices).toEqual([]);
  return read.value.entries.map((entry) => entry.id).toSorted();
}

const ids = (first: number, last: number) => Array.from({ length: last - first + 1 }, (_, i) => note(first + i).id);

describe('two processes of one installation', () => {
  it.each(['closes', 'is killed'])(
    'the second only reads, with the first’s entries in sight, and writes once the first %s',
    async (how) => {
      const folder = newBook();
      const { ask, host, options } = aHost();
      const { child, ended, kept } = await other(folder, options.home, 1, 20);
      expect(kept).toBe(20);
      await host.openFolder(folder);
      const open = bookIn(await ask('state'));
      expect([open.writable, open.desks[0]?.entries]).toEqual([false, 20]);
      expect(open.notices).toMatchObject([{ code: 'elsewhere-open', detail: expect.stringContaining(`${child.pid} `) }]);
      expect(codesIn(await ask('keep', note(21)))).toEqual(['elsewhere-open']);
      expect(idsIn(folder)).toEqual(ids(1, 20));
      if (how === 'closes') child.stdin?.end();
      else child.kill('SIGKILL');
      await ended;
      await host.openFolder(folder);
      expect(bookIn(await ask('state'))).toMatchObject({ writable: true, notices: [] });
      for (let i = 21; i <= 30; i++) expect((await ask('keep', note(i))).ok).toBe(true);
      expect(idsIn(folder)).toEqual(ids(1, 30));
      await host.close();
    },
  );

  it('that start together: one writes, one reads, and nothing is written twice or lost', async () => {
    const folder = newBook();
    const home = temporaryFolder();
    const both = await Promise.all([other(folder, home, 1, 40), other(folder, home, 41, 80)]);
    expect(both.filter(({ open }) => open.writable)).toHaveLength(1);
    expect(both.map(({ kept }) => kept).toSorted((a, b) => a - b)).toEqual([0, 40]);
    expect(idsIn(folder)).toEqual(both[0]!.kept === 40 ? ids(1, 40) : ids(41, 80));
  });
});

describe('two installations in one folder', () => {
  it('both write at once, each its own journal, and each sees the entries of both', async () => {
    const folder = newBook();
    const both = await Promise.all([other(folder, temporaryFolder(), 1, 100), other(folder, temporaryFolder(), 101, 200)]);
    expect(both.map(({ kept, open }) => [kept, open.writable])).toEqual([
      [100, true],
      [100, true],
    ]);
    expect(idsIn(folder)).toEqual(ids(1, 200));
    const { ask, host } = aHost();
    await host.openFolder(folder);
    expect(bookIn(await ask('state')).desks.map((d) => d.entries)).toEqual([100, 100]);
    await host.close();
  });
});

describe('two windows of one program', () => {
  it('asking at once, some of it twice, keep every entry once', async () => {
    const folder = newBook();
    const { ask, host } = aHost();
    await host.openFolder(folder);
    // the second window asks for the last twenty of the first again, as after an answer that never arrived
    const [one, two] = await Promise.all([
      Promise.all(Array.from({ length: 60 }, (_, i) => ask('keep', note(i + 1)))),
      Promise.all(Array.from({ length: 60 }, (_, i) => ask('keep', note(i + 41)))),
    ]);
    expect([...one, ...two].filter((answer) => !answer.ok)).toEqual([]);
    expect(idsIn(folder)).toEqual(ids(1, 100));
    const numbers = [...one, ...two].map((answer) => (answer.ok ? (answer.value.entry as { n: number }).n : 0));
    expect(new Set(numbers).size).toBe(100);
    await host.close();
  });
});

describe('a clock set back', () => {
  it('between entries and between starts loses none: they stay in the order they were kept, each with the time the clock showed', async () => {
    const folder = newBook();
    let hour = 12;
    const clock = () => `2026-03-14T${String(hour).padStart(2, '0')}:30:00+13:00`;
    const first = aHost({ clock });
    await first.host.openFolder(folder);
    for (let i = 1; i <= 10; i++) {
      hour = 23 - i;
      expect((await first.ask('keep', note(i))).ok).toBe(true);
    }
    await first.host.close();
    const again = aHost({ clock: () => '2026-03-14T09:25:00+13:00', home: first.options.home });
    await again.host.openFolder(folder);
    for (let i = 11; i <= 20; i++) expect((await again.ask('keep', note(i))).ok).toBe(true);
    await again.host.close();
    expect(idsIn(folder)).toEqual(ids(1, 20));
    const read = readDaybook(folder);
    const entries = read.ok ? read.value.entries.toSorted((a, b) => a.n - b.n) : [];
    expect(entries.map((entry) => entry.id)).toEqual(ids(1, 20));
    expect(entries[0]?.written).toBe('2026-03-14T22:30:00+13:00');
    expect(entries.at(-1)?.written).toBe('2026-03-14T09:25:00+13:00');
  });
});
