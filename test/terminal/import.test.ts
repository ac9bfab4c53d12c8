/** `import` adds every row of a table or none, says what it would add, and takes back in what `export` wrote. The old book is invented. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, expect, it } from 'vitest';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { BookMaker } from '../core/book-maker.ts';
import { faults, oldMapping, oldRows, separated } from '../core/old-book.ts';
import { temporaryFolder } from '../host/folder.ts';
import { called, everything, refused } from './called.ts';
import { writeBook } from './written-book.ts';

let home = '';
let dir = '';
const file = (name: string, text: string | Uint8Array): string => {
  const path = join(home, name);
  writeFileSync(path, text);
  return path;
};

beforeEach(() => {
  home = temporaryFolder();
  process.env.DAYBOOK_HOME = join(home, 'state');
  dir = join(home, 'book');
  const book = BookMaker.site();
  book.add('helper', 'person', { name: 'Helper', roles: ['helper'] });
  writeBook(dir, book.entries);
});

const counted = (folder: string): number => {
  const got = readDaybook(folder);
  return got.ok ? got.value.entries.length : -1;
};

it('names all seven faults of an old book of 500 rows, writes nothing, and adds the 500 once they are mended', async () => {
  const mapping = file('mapping.json', JSON.stringify(oldMapping));
  const bad = file('old.csv', separated(oldRows(true)));
  const call = (csv: string, ...more: string[]) => ['import', dir, '--as', 'clean-up', csv, '--mapping', mapping, ...more];
  const where = faults.map(({ row, column }) => {
    const line = row + 2 + Math.floor(row / 6);
    return `row ${row + 2}${line === row + 2 ? '' : ` (line ${line})`}, column "${column}"`;
  });
  await refused(dir, call(bad), where);
  await refused(dir, call(bad, '--dry-run'), where);

  const good = file('mended.csv', separated(oldRows(false)));
  const before = everything(dir);
  const dry = await called(call(good, '--dry-run'));
  expect([dry.code, dry.err]).toEqual([0, '']);
  const lines = dry.out.trim().split('\n');
  expect(lines).toHaveLength(501);
  expect(lines[4]).toContain('"label":"Ball 5","weight":{"how":"stated","mass":"9 ozt 5 dwt"}');
  expect(lines[500]).toBe('500 entries of the kind clean-up would be added; nothing was written');
  expect(everything(dir)).toEqual(before);

  const added = await called(call(good));
  expect([added.code, added.err]).toEqual([0, '']);
  expect(added.out).toMatch(/^500 entries added; desk [a-z0-9-]+, end mark [0-9a-f]{64}\n$/);
  expect(counted(dir)).toBe(506);
  expect((await called(['check', dir])).code).toBe(0);
  await refused(dir, call(good), ['FILE.csv']);
  await refused(dir, call(good, '--dry-run'), ['FILE.csv']);
}, 120_000);

it('refuses what is no table, no mapping, no kind or no UTF-8, by the name of the option or place', async () => {
  const csv = file('a.csv', 'happened,text\n2026-01-01,a\n');
  await refused(dir, ['import', dir, csv], ['--as']);
  await refused(dir, ['import', dir, '--as', 'note'], ['FILE.csv']);
  await refused(dir, ['import', dir, '--as', 'nothing', csv], ['--as']);
  await refused(dir, ['import', dir, '--as', 'closing', csv], ['--as']);
  await refused(dir, ['import', dir, '--as', 'note', join(home, 'none.csv')], ['FILE.csv']);
  await refused(
    dir,
    ['import', dir, '--as', 'note', file('latin.csv', Buffer.from('happened,text\n2026-01-01,caf\xe9\n', 'latin1'))],
    ['FILE.csv'],
  );
  await refused(dir, ['import', dir, '--as', 'note', file('big.csv', 'x'.repeat(10_000_001))], ['FILE.csv']);
  await refused(dir, ['import', dir, '--as', 'note', csv, '--mapping', file('m.json', '{"colums":[]}')], ['--mapping colums']);
  await refused(dir, ['import', dir, '--as', 'note', csv, '--mapping', file('n.json', 'x')], ['--mapping']);
  await refused(dir, ['import', join(home, 'nowhere'), '--as', 'note', csv], ['DIR']);
  await refused(
    dir,
    ['import', dir, '--as', 'note', file('nul.csv', 'happened,text\n2026-01-01,a\u0000\n')],
    ['row 2, column "text"'],
  );
});

it('on a broken chain is exit 1 and writes nothing', async () => {
  const journal = join(dir, 'desks', 'desk-one.jsonl');
  writeFileSync(journal, readFileSync(journal, 'utf8').replace('Working bottle', 'Another bottle'));
  const before = everything(dir);
  expect((await called(['import', dir, '--as', 'note', file('a.csv', 'happened,text\n2026-01-01,a\n')])).code).toBe(1);
  expect(everything(dir)).toEqual(before);
});

it('takes what export wrote into an empty daybook: the same ids, days and bodies', async () => {
  const out = join(home, 'out');
  expect((await called(['export', dir, '--out', out])).code).toBe(0);
  const other = join(home, 'other');
  mkdirSync(other);
  expect((await called(['new', other, '--site', 'Another Battery'])).code).toBe(0);
  for (const kind of ['person', 'standing', 'scale', 'vessel', 'retort'])
    expect([kind, await called(['import', other, '--as', kind, join(out, `${kind}.csv`)])]).toMatchObject([
      kind,
      { code: 0, err: '' },
    ]);
  const entries = (folder: string) => {
    const got = readDaybook(folder);
    if (!got.ok) throw new Error('no daybook');
    return Object.fromEntries(got.value.entries.map(({ id, kind, happened, by, body }) => [id, { kind, happened, by, body }]));
  };
  expect(entries(other)).toEqual(entries(dir));
});
