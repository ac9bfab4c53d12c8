/** What a site, a bar or a place is called may stand in the name of a file; it never leads out of the folder, whatever it says, and no file system refuses it. */
import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type BackupsState, paperNames } from '../../app/contract.ts';
import { readBook } from '../../app/core/book/book.ts';
import { fileAbout, fileName } from '../../app/screens/papers/subjects.ts';
import { backupsFolderName } from '../../main/host/backup/names.ts';
import { folderFor } from '../../main/host/folder-name.ts';
import { BookMaker } from '../core/book-maker.ts';
import { aHost, bookIn } from './a-host.ts';
import { valueIn } from './backed-up.ts';
import { keeper } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const hostile = [
  '../../x',
  '..',
  '../',
  '/etc/passwd',
  '\\\\server\\share',
  'C:\\x',
  'C:x',
  'a/../../b',
  'x/y\\z',
  '%2e%2e%2fx',
  'x\u0000.exe',
  'x\ny\r\tz',
  '\u001b[2Jx',
  '\u202egnp.exe',
  '~/x',
  '-rf x',
  '.hidden',
  'x. ',
  'CON',
  'com¹',
  'a|b<c>d"e?f*g',
  '\ud800x',
  '\u2215etc\u2215x',
  '．．／x',
  'x'.repeat(5000),
  '水銀'.repeat(500),
  `${'x'.repeat(79)}𝔐𝔐`,
  '𝔐'.repeat(300),
  `e${'\u0301'.repeat(400)}`,
];

/** What is wrong with a name for one file or folder, in words. */
function faults(name: string): string[] {
  const inside = relative('/place', join('/place', name));
  return [
    ...(inside === name && dirname(inside) === '.' ? [] : ['it leads elsewhere']),
    ...(/[/\\:*?"<>|%~]|\p{C}/u.test(name) ? ['a sign that some file system refuses'] : []),
    ...(/^[-. ]|[. ]$/.test(name) ? ['a sign at its ends'] : []),
    ...(/^(?:con|prn|aux|nul|(?:com|lpt)[\d¹²³])(?:\.|$)/i.test(name) ? ['a device'] : []),
    ...(Buffer.byteLength(name) > 255 ? ['too long'] : []),
    ...(Buffer.from(name).toString() === name ? [] : ['half a letter']),
  ];
}

describe.each(hostile)('a name that says %j', (said) => {
  it('makes a folder of a new daybook and of its backups that stays where it belongs, or none', () => {
    const folder = folderFor(said);
    if (folder.ok) expect(faults(folder.value)).toEqual([]);
    else expect(folder.problems.map(({ code }) => code)).toEqual(['no-folder-name']);
    expect(faults(backupsFolderName(said, '0123456789'))).toEqual([]);
  });

  it('makes the name of a paper that stays where it belongs, and that still says which paper it is', () => {
    for (const paper of paperNames) {
      const name = fileName(paper, '2026-03-14', said);
      expect([name, faults(name)]).toEqual([name, []]);
      expect(name.startsWith(`${paper}-2026-03-14`)).toBe(true);
      expect(name.endsWith('.pdf')).toBe(true);
    }
  });
});

it('what stands in an entry makes the name of its paper in the same way', () => {
  const maker = new BookMaker();
  maker.add('handed', 'transfer', { party: '../../x' } as never);
  const name = fileAbout(readBook(maker.entries), 'transfer-sheet', 'handed');
  expect([name, faults(name)]).toEqual([expect.stringMatching(/^transfer-sheet-.*x\.pdf$/), []]);
});

it('a site called ../../x is a folder among the documents, and a backup of it lies in its place', async () => {
  const top = temporaryFolder();
  const [documents, place] = [join(top, 'one', 'documents'), join(top, 'two', 'place')];
  for (const folder of [documents, place]) mkdirSync(folder, { recursive: true });
  const a = aHost({ documents, places: [place], drives: () => [] });
  const book = bookIn(await a.ask('open', { make: '../../x' }));
  expect([relative(documents, book.folder), book.name]).toEqual(['x', '../../x']);
  expect((await a.ask('keep', keeper)).ok).toBe(true);

  const backups = async () => valueIn<BackupsState>(await a.ask('backups'));
  await a.ask('backup-place', { place: (await backups()).offered[0]?.key });
  await expect.poll(async () => (await backups()).last?.why).toBe('asked');
  await a.host.close();
  const all = readdirSync(top, { recursive: true }).map(String);
  const outside = all.filter((path) => !/^one\/documents\/x\b|^two\/place\/x [0-9a-z-]{8}\b/.test(path.replaceAll('\\', '/')));
  expect(outside.sort()).toEqual(['one', join('one', 'documents'), 'two', join('two', 'place')]);
  expect(all.filter((path) => path.endsWith('.tar'))).toHaveLength(1);
});
