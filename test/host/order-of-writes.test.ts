/** Nothing is answered before it is on the disk: every write, flush and rename is written down as it happens, and stands in this order. */
import type * as Fs from 'node:fs';
import { beforeEach, describe, expect, it, vi } from 'vitest';

/** What was asked of the disk, in order. A call named in `failing` throws instead, once. */
const seen = vi.hoisted(() => ({ calls: [] as string[], paths: new Map<number, string>(), failing: [] as string[] }));

vi.mock('node:fs', async (original) => {
  const fs = await original<typeof Fs>();
  const short = (path: unknown) =>
    String(path)
      .split('/')
      .at(-1)!
      .replace(/[0-9a-f]{64}/, 'HASH')
      .replace(/\.[0-9a-f]{12}\.part$/, '.part');
  const told = (call: string, act: () => unknown) => {
    if (seen.failing[0] === call) {
      seen.failing.shift();
      seen.calls.push(`${call} FAILS`);
      throw Object.assign(new Error('input or output error'), { code: 'EIO' });
    }
    const result = act();
    seen.calls.push(call);
    return result;
  };
  const onOpen =
    (name: string, real: (fd: number, ...rest: never[]) => unknown) =>
    (fd: number, ...rest: never[]) =>
      told(`${name} ${seen.paths.get(fd) ?? '?'}`, () => real(fd, ...rest));
  const openSync = (path: string, ...rest: [never]) => {
    const fd = fs.openSync(path, ...rest);
    seen.paths.set(fd, short(path));
    return fd;
  };
  const mine = {
    openSync,
    writeSync: onOpen('write', fs.writeSync as never),
    fsyncSync: onOpen('flush', fs.fsyncSync),
    fdatasyncSync: onOpen('flush', fs.fdatasyncSync),
    ftruncateSync: onOpen('cut', fs.ftruncateSync as never),
    renameSync: (from: string, to: string) => told(`rename ${short(from)} to ${short(to)}`, () => fs.renameSync(from, to)),
    mkdirSync: (path: string, ...rest: [never]) => told(`make ${short(path)}`, () => fs.mkdirSync(path, ...rest)),
  };
  return { ...fs, ...mine, default: { ...fs, ...mine } };
});

const { appendFileSync, readFileSync } = await import('node:fs');
const { join } = await import('node:path');
const { makeDaybook } = await import('../../main/host/daybook-folder.ts');
const { keepEvidence } = await import('../../main/host/evidence.ts');
const { openInstallation } = await import('../../main/host/installation.ts');
const { readJournal } = await import('../../main/host/journal.ts');
const { journalPath, openJournal } = await import('../../main/host/journal-writer.ts');
const { note, now } = await import('./drafts.ts');
const { temporaryFolder } = await import('./folder.ts');

const desk = 'desk-one';
const png = Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(5_000, 7)]);

beforeEach(() => {
  seen.calls.length = 0;
  seen.failing.length = 0;
});

/** A daybook and the writer of its one desk; the calls so far are forgotten. */
function writing() {
  const folder = join(temporaryFolder(), 'book');
  expect(makeDaybook(folder, 'Test Battery', now).ok).toBe(true);
  const writer = openJournal(folder, desk);
  if (!writer.ok) throw new Error('not opened');
  seen.calls.length = 0;
  return { folder, writer: writer.value, path: journalPath(folder, desk) };
}

describe('an entry', () => {
  it('is written and flushed before it is answered; with the first, the folder that names the journal is flushed too', () => {
    const { writer } = writing();
    expect(writer.append([note(1)], now).ok).toBe(true);
    seen.calls.push('answered');
    expect(writer.append([note(2)], now).ok).toBe(true);
    seen.calls.push('answered');
    writer.close();
    expect(seen.calls).toEqual([
      'write desk-one.jsonl',
      'flush desk-one.jsonl',
      'flush desks',
      'answered',
      'write desk-one.jsonl',
      'flush desk-one.jsonl',
      'answered',
    ]);
  });

  it('whose flush fails is not answered as kept and is cut off again; the next one is kept', () => {
    const { writer, path } = writing();
    expect(writer.append([note(1)], now).ok).toBe(true);
    const before = readFileSync(path);
    seen.calls.length = 0;
    seen.failing.push('flush desk-one.jsonl');
    const refused = writer.append([note(2)], now);
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'disk-error', data: { detail: 'EIO' } }] });
    expect(seen.calls).toEqual([
      'write desk-one.jsonl',
      'flush desk-one.jsonl FAILS',
      'cut desk-one.jsonl',
      'flush desk-one.jsonl',
    ]);
    expect(readFileSync(path)).toEqual(before);
    expect(writer.append([note(2)], now)).toMatchObject({ ok: true, value: [{ n: 2 }] });
    expect(readJournal(readFileSync(path), desk).entries).toHaveLength(2);
  });

  it('whose flush and cutting back both fail stops the writer until the journal is verified anew', () => {
    const { folder, writer, path } = writing();
    expect(writer.append([note(1)], now).ok).toBe(true);
    seen.failing.push('flush desk-one.jsonl', 'cut desk-one.jsonl');
    expect(writer.append([note(2)], now).ok).toBe(false);
    expect(writer.append([note(3)], now)).toMatchObject({ ok: false, problems: [{ code: 'journal-unsure' }] });
    writer.close();
    const again = openJournal(folder, desk);
    if (!again.ok) throw new Error('not opened');
    const there = again.value.end().entries;
    expect(again.value.append([note(4)], now)).toMatchObject({ ok: true, value: [{ n: there + 1 }] });
    const { entries, fault } = readJournal(readFileSync(path), desk);
    expect([entries.length, fault, entries[0]?.id]).toEqual([there + 1, undefined, 'note-000001']);
  });

  it('behind a torn tail waits until the tail is on the disk under its own name', () => {
    const { folder, writer, path } = writing();
    expect(writer.append([note(1)], now).ok).toBe(true);
    writer.close();
    appendFileSync(path, '{"torn');
    seen.calls.length = 0;
    expect(openJournal(folder, desk).ok).toBe(true);
    expect(seen.calls.filter((call) => !call.startsWith('read'))).toEqual([
      'write desk-one.torn-2',
      'flush desk-one.torn-2',
      'flush desks',
      'cut desk-one.jsonl',
      'flush desk-one.jsonl',
    ]);
  });
});

describe('a new file', () => {
  it('kept as evidence is written aside, flushed, renamed, and its folder flushed, before it is answered', () => {
    const { folder } = writing();
    expect(keepEvidence(folder, png).ok).toBe(true);
    seen.calls.push('answered');
    expect(seen.calls).toEqual([
      'write .HASH.png.part',
      'flush .HASH.png.part',
      'rename .HASH.png.part to HASH.png',
      'flush evidence',
      'answered',
    ]);
  });

  it('that replaces another goes the same way: the old one stands until the new one is whole', () => {
    const here = openInstallation(temporaryFolder());
    if (!here.ok) throw new Error('no installation');
    expect(here.value.remember('/one', 'One').ok).toBe(true);
    seen.calls.length = 0;
    expect(here.value.remember('/two', 'Two').ok).toBe(true);
    expect(seen.calls.slice(0, 3)).toEqual([
      'write .recents.json.part',
      'flush .recents.json.part',
      'rename .recents.json.part to recents.json',
    ]);
    expect(seen.calls[3]).toMatch(/^flush daybook-/);
    seen.failing.push('flush .recents.json.part');
    expect(here.value.remember('/three', 'Three').ok).toBe(false);
    expect(here.value.recents().map((r) => r.name)).toEqual(['Two', 'One']);
  });

  it('of a new daybook: its folders come first, its title page last, and every folder that names them is flushed', () => {
    const parent = temporaryFolder();
    expect(makeDaybook(join(parent, 'book'), 'Test Battery', now).ok).toBe(true);
    const made = seen.calls.filter((call) => /^make (book|desks|evidence|closings)$/.test(call));
    expect(made).toEqual(['make book', 'make desks', 'make evidence', 'make closings']);
    const after = (call: string, before: string) =>
      expect(seen.calls.lastIndexOf(call)).toBeGreaterThan(seen.calls.lastIndexOf(before));
    after('write .daybook.json.part', 'make closings');
    after('rename .daybook.json.part to daybook.json', 'flush .daybook.json.part');
    after('flush book', 'rename .daybook.json.part to daybook.json');
    after(`flush ${parent.split('/').at(-1)}`, 'make book');
  });

  it('in a folder that was lost in a copy: the folder made for it is flushed into the one above', async () => {
    const { folder } = writing();
    const { rmSync } = await import('node:fs');
    rmSync(join(folder, 'desks'), { recursive: true });
    const writer = openJournal(folder, desk);
    if (!writer.ok) throw new Error('not opened');
    seen.calls.length = 0;
    expect(writer.value.append([note(1)], now).ok).toBe(true);
    expect(seen.calls).toEqual(['make desks', 'flush book', 'write desk-one.jsonl', 'flush desk-one.jsonl', 'flush desks']);
  });
});
