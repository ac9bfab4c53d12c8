/** A daybook on disk: made once, read without a touch, merged over its desks. */
import {
  appendFileSync,
  cpSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { machineClock, momentText } from '../../main/host/clock.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { folderFor } from '../../main/host/folder-name.ts';
import { appendEntry, journalPath } from '../../main/host/journal-writer.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

function made(): string {
  const folder = join(temporaryFolder(), 'book');
  expect(makeDaybook(folder, 'Upper battery', now)).toMatchObject({ ok: true });
  return folder;
}

function read(folder: string) {
  const daybook = readDaybook(folder);
  if (!daybook.ok) throw new Error(JSON.stringify(daybook.problems));
  return daybook.value;
}

/** Every file below a folder with its bytes and time of change. */
const everything = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((file) => file.isFile())
    .map((file) => join(file.parentPath, file.name))
    .sort()
    .map((path) => [path, readFileSync(path, 'latin1'), statSync(path).mtimeMs]);

describe('making a daybook', () => {
  it('puts its title page and its three folders there, under an id of its own', () => {
    const [first, second] = [made(), made()];
    expect(readdirSync(first).sort()).toEqual(['closings', 'daybook.json', 'desks', 'evidence']);
    expect(read(first).info).toMatchObject({ name: 'Upper battery', format: 1, made: now });
    expect(read(first).info.id).not.toBe(read(second).info.id);
  });

  it('refuses a folder with anything in it, and leaves that as it was', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'letter.txt'), 'mine');
    expect(makeDaybook(folder, 'Upper battery', now)).toMatchObject({ ok: false, problems: [{ code: 'folder-not-empty' }] });
    expect(readdirSync(folder)).toEqual(['letter.txt']);
  });

  it('refuses a name that cannot be printed', () => {
    expect(makeDaybook(join(temporaryFolder(), 'x'), ' ', now)).toMatchObject({ ok: false, problems: [{ field: 'name' }] });
  });

  it('answers a problem where no folder can be made', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'file'), '');
    expect(makeDaybook(join(folder, 'file', 'book'), 'Upper battery', now)).toMatchObject({ ok: false });
    expect(makeDaybook('/proc/self/book', 'Upper battery', now)).toMatchObject({ ok: false });
  });
});

describe('reading a daybook', () => {
  it('merges its desks in order of happening and names each desk’s end mark', () => {
    const folder = made();
    appendEntry(folder, 'desk-two', { ...note(2), happened: '2026-03-14T08:00+13:00' }, now);
    appendEntry(folder, 'desk-one', note(1), now);
    // the same moment on the clock of another zone, an hour before either
    const third = appendEntry(folder, 'desk-one', { ...note(3), happened: '2026-03-13T18:00+00:00' }, now);
    const { entries, desks, notices } = read(folder);
    expect(entries.map((entry) => entry.id)).toEqual(['note-000003', 'note-000002', 'note-000001']);
    expect(desks.map(({ desk, entries: count }) => [desk, count])).toEqual([
      ['desk-one', 2],
      ['desk-two', 1],
    ]);
    expect(third.ok && third.value.hash).toBe(desks[0]?.endMark);
    expect(notices).toEqual([]);
  });

  it('changes nothing on disk, not even a torn tail', () => {
    const folder = made();
    for (let i = 1; i <= 3; i++) appendEntry(folder, 'desk-one', note(i), now);
    const path = journalPath(folder, 'desk-one');
    truncateSync(path, statSync(path).size - 9);
    const before = everything(folder);
    const { notices, entries, desks } = read(folder);
    expect(notices).toEqual([{ code: 'torn-line', desk: 'desk-one', line: 3 }]);
    expect(entries).toHaveLength(2);
    expect(desks[0]?.torn?.line).toBe(3);
    expect(everything(folder)).toEqual(before);
  });

  it('tells a broken chain with desk, line and cause, and reads the other desks whole', () => {
    const folder = made();
    for (let i = 1; i <= 3; i++) appendEntry(folder, 'desk-one', note(i), now);
    appendEntry(folder, 'desk-two', note(9), now);
    const path = journalPath(folder, 'desk-one');
    writeFileSync(path, readFileSync(path, 'utf8').replace('Note 2', 'Note 7'));
    const { notices, entries } = read(folder);
    expect(notices).toEqual([{ code: 'broken-chain', desk: 'desk-one', line: 2, detail: 'wrong-hash' }]);
    expect(entries.map((entry) => entry.id)).toEqual(['note-000001', 'note-000009']);
  });

  it('reads copies that a synchronising program made with their journal, leaves out what is none, and says so', () => {
    const folder = made();
    appendEntry(folder, 'desk-one', note(1), now);
    const copies = [
      'desk-one.sync-conflict-20260314-093000-ABCDEFG.jsonl',
      'desk-one (conflicted copy).jsonl',
      'desk-one.jsonl.bak',
    ];
    for (const name of copies) cpSync(journalPath(folder, 'desk-one'), join(folder, 'desks', name));
    writeFileSync(join(folder, 'daybook.sync-conflict-1.json'), '{}');
    mkdirSync(join(folder, 'desks', 'desk-folder.jsonl'));
    writeFileSync(join(folder, 'desks', 'desk-one.torn-4'), 'x');
    const { notices, entries } = read(folder);
    const told = (code: string) => notices.filter((n) => n.code === code).map(({ detail }) => detail);
    expect(told('copy-read').sort()).toEqual(copies.map((name) => join('desks', name)).sort());
    expect(told('conflict-copy').sort()).toEqual(['daybook.sync-conflict-1.json', join('desks', 'desk-folder.jsonl')]);
    expect(notices).toHaveLength(5);
    expect(entries).toHaveLength(1);
  });

  it('of a newer format says so and still reads what it can', () => {
    const folder = made();
    appendEntry(folder, 'desk-one', note(1), now);
    const path = join(folder, 'daybook.json');
    writeFileSync(path, JSON.stringify({ ...(JSON.parse(readFileSync(path, 'utf8')) as object), format: 2, more: true }));
    expect(read(folder)).toMatchObject({ notices: [{ code: 'newer-format', detail: '2' }], entries: [{ id: 'note-000001' }] });
  });

  it('whose empty folders were lost in a copy is an empty daybook', () => {
    const folder = made();
    for (const name of ['desks', 'evidence', 'closings']) rmSync(join(folder, name), { recursive: true });
    expect(read(folder)).toMatchObject({ desks: [], entries: [], notices: [] });
    expect(appendEntry(folder, 'desk-one', note(1), now)).toMatchObject({ ok: true });
  });

  it('says what is wrong where there is none, or its title page is damaged', () => {
    const folder = made();
    expect(readDaybook(temporaryFolder())).toMatchObject({ ok: false, problems: [{ code: 'not-a-daybook' }] });
    expect(readDaybook(join(folder, 'daybook.json'))).toMatchObject({ ok: false, problems: [{ code: 'not-a-daybook' }] });
    appendFileSync(join(folder, 'daybook.json'), '}');
    expect(readDaybook(folder)).toMatchObject({ ok: false, problems: [{ code: 'daybook-unreadable' }] });
  });
});

describe('names and clocks', () => {
  it.each([
    ['Stamp battery, upper creek', 'Stamp battery upper creek'],
    ['../../etc/passwd', 'etc passwd'],
    ['C:\\Windows', 'C Windows'],
    ['  Größe №1 ', 'Größe 1'],
  ])('%s becomes the plain folder name %s', (name, folder) => {
    expect(folderFor(name)).toEqual({ ok: true, value: folder });
  });

  it.each(['..', '---', 'NUL', '/'])('%s names no folder', (name) => {
    expect(folderFor(name)).toMatchObject({ ok: false, problems: [{ code: 'no-folder-name' }] });
  });

  it('the machine’s clock is a moment with seconds and offset, and names the same instant', () => {
    const at = new Date('2026-03-14T20:30:05Z');
    expect(momentText(at)).toMatch(/^2026-03-1[45]T\d{2}:\d{2}:05[+-]\d{2}:\d{2}$/);
    expect(new Date(momentText(at)).getTime()).toBe(at.getTime());
    expect(Math.abs(new Date(machineClock()).getTime() - Date.now())).toBeLessThan(5000);
  });
});
