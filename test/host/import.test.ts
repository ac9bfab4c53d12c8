/** A table taken in is there whole or not at all, whatever happens while it is written; every case counts entries. The old book is invented. */
import { appendFileSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import type { Entry } from '../../app/core/entry.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { importInto } from '../../main/host/import-table.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { desksFolder, journalPath } from '../../main/host/journal-writer.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { called, everything } from '../terminal/called.ts';
import { aHost } from './a-host.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const value = <T>(result: { ok: true; value: T } | { ok: false; problems: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

const text = (rows: number) =>
  `happened,text,page\n${Array.from({ length: rows }, (_, i) => `1898-03-${String(1 + i).padStart(2, '0')},Old remark ${i},${i}\n`).join('')}`;
const mapping = { same: [{ field: 'book', text: 'Invented book' }] };
const table = (rows: number) => ({ kind: 'note', text: text(rows), mapping });

/** A daybook of three notes and then an import of so many rows, and where every line ends. */
function imported(rows: number) {
  const folder = join(temporaryFolder(), 'book');
  value(makeDaybook(folder, 'Test Battery', now));
  const here = value(openInstallation(temporaryFolder()));
  const book = value(openDaybook(folder, here));
  for (let i = 1; i <= 3; i++) value(book.keep(note(i), now));
  expect(value(importInto(book, table(rows), now))).toMatchObject({ added: rows, before: false, desk: { entries: rows + 3 } });
  expect(value(book.whole()).entries).toHaveLength(rows + 3);
  book.close();
  const path = journalPath(folder, here.desk);
  const whole = readFileSync(path);
  const ends = [...whole.keys()].filter((i) => whole[i] === 10).map((i) => i + 1);
  return { folder, here, path, whole, ends };
}

it('cut at every line and within every line, an import counts as nothing until its last line is there, and is taken in anew', async () => {
  const rows = 12;
  const { folder, here, path, whole, ends } = imported(rows);
  const cuts = ends.slice(2).flatMap((end, i) => [end, ...(i < rows ? [end + 1, end + 90, (ends[i + 3] as number) - 1] : [])]);
  for (const at of cuts) {
    for (const name of readdirSync(desksFolder(folder))) rmSync(join(desksFolder(folder), name));
    // as after a loss of power: the machine had not yet noted how far it had seen
    rmSync(join(here.home, 'daybooks'), { recursive: true, force: true });
    writeFileSync(path, whole.subarray(0, at));
    const all = at === whole.length;
    const tail = whole.subarray(ends[2], at);
    const before = everything(folder);
    const read = value(readDaybook(folder));
    expect([at, read.entries.length, read.notices.map((n) => [n.code, n.line])]).toEqual([
      at,
      all ? rows + 3 : 3,
      all || tail.length === 0 ? [] : [['torn-line', 4]],
    ]);
    if (at % 5 === 0) expect((await called(['check', folder])).code).toBe(0);
    expect(everything(folder)).toEqual(before);

    const book = value(openDaybook(folder, here));
    const cut = !all && tail.length > 0;
    if (cut) expect(readFileSync(join(desksFolder(folder), `${here.desk}.torn-4`))).toEqual(tail);
    expect(readFileSync(path)).toEqual(all ? whole : whole.subarray(0, ends[2]));
    // asked again, it comes in whole; one that is whole already is not added twice
    expect(value(importInto(book, table(rows), now))).toMatchObject({ added: rows, before: all, desk: { entries: rows + 3 } });
    book.close();
    const again = value(readDaybook(folder));
    expect([again.entries.length, again.notices]).toEqual([rows + 3, []]);
    expect(readFileSync(path)).toEqual(whole);
  }
  expect(cuts.length).toBe(1 + rows * 4);
});

it('another desk, and a copy under another name, count a cut import as nothing either', () => {
  const { folder, here, path, whole, ends } = imported(4);
  writeFileSync(path, whole.subarray(0, ends[4]));
  const copy = path.replace(/\.jsonl$/, ' (conflicted copy).jsonl');
  writeFileSync(copy, whole.subarray(0, ends[5]));
  const read = value(readDaybook(folder));
  expect(read.entries).toHaveLength(3);
  expect(read.notices.map((n) => n.code)).toEqual(['copy-read', 'torn-line']);
  const other = value(openDaybook(folder, value(openInstallation(temporaryFolder()))));
  expect(value(other.whole()).entries).toHaveLength(3);
  other.close();
  // the line that only the copy has makes it whole
  writeFileSync(copy, whole);
  expect(value(readDaybook(folder)).entries).toHaveLength(7);
  const own = value(openDaybook(folder, here));
  expect(value(own.whole()).entries).toHaveLength(7);
  own.close();
});

it('a fault in one row leaves every byte of the daybook as it was', () => {
  const folder = join(temporaryFolder(), 'book');
  value(makeDaybook(folder, 'Test Battery', now));
  const book = value(openDaybook(folder, value(openInstallation(temporaryFolder()))));
  const before = everything(folder);
  const got = importInto(book, { ...table(3), text: `${text(3)}1898-02-31,no such day,9\n` }, now);
  expect(got).toMatchObject({ ok: false, problems: [{ code: 'import-day', field: 'row 5, column "happened"' }] });
  expect(everything(folder)).toEqual(before);
  const missing = importInto(book, { ...table(1), mapping: { ...mapping, pictures: [{ file: `${'a'.repeat(64)}.png` }] } }, now);
  expect(missing).toMatchObject({ ok: false, problems: [{ code: 'evidence-missing' }] });
  expect(everything(folder)).toEqual(before);
  book.close();
});

it('a journal that somebody lengthened meanwhile is not written to', () => {
  const { folder, here, path } = imported(2);
  const book = value(openDaybook(folder, here));
  appendFileSync(path, '{"half":');
  expect(importInto(book, table(5), now).ok).toBe(false);
  book.close();
});

it('the window asks for it with one question, once; an entry of an import is never kept by itself', async () => {
  const { host, ask } = aHost();
  value(await ask('open', { make: 'Test Battery' }));
  expect(value(await ask('import', table(5)))).toMatchObject({ added: 5, before: false, desk: { entries: 5 } });
  expect(value(await ask('import', table(5)))).toMatchObject({ added: 5, before: true, desk: { entries: 5 } });
  const alone = { ...note(1), imported: { batch: 'batch-one', n: 1, of: 2, row: 2, cells: [] } };
  expect(await ask('keep', alone)).toMatchObject({ ok: false, problems: [{ code: 'import-by-itself' }] });
  expect(await ask('import', { ...table(1), kind: 'nothing' })).toMatchObject({
    ok: false,
    problems: [{ code: 'import-kind-unknown' }],
  });
  expect(await ask('import', { ...table(1), mapping: { same: [{ field: '__proto__.x', text: 'y' }] } })).toMatchObject({
    ok: false,
  });
  const lines = Buffer.from(
    await (
      await host.answer(
        new Request('http://127.0.0.1:4711/ask/entries', {
          method: 'POST',
          body: '{}',
          headers: { origin: 'http://127.0.0.1:4711', 'content-type': 'application/json' },
        }),
        'http://127.0.0.1:4711',
      )
    ).arrayBuffer(),
  )
    .toString()
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Entry);
  expect(lines.map((entry) => entry.imported?.cells[1])).toEqual(
    Array.from({ length: 5 }, (_, i) => ({ column: 'text', text: `Old remark ${i}` })),
  );
});
