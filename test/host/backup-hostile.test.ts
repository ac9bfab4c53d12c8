/**
 * Files that are offered for restoring and are no backup of ours, or no longer: each is refused by name, and nothing is written but in a folder that
 * is gone afterwards. The tars are made by another maker of tars than the one under test, byte by byte where it must be.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Problem, Result } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { isPlainPath } from '../../main/host/backup/manifest.ts';
import { sha256 } from '../../main/host/canonical.ts';
import { backedUp, job } from './backed-up.ts';
import { temporaryFolder } from './folder.ts';

/** One member of a tar as POSIX.1-1988 (ustar) lays it out; `size` may lie about the bytes. */
function member(name: string, bytes: Buffer, { type = '0', size = bytes.length, link = '' } = {}): Buffer {
  const head = Buffer.alloc(512);
  head.write(name, 0, 100);
  head.write('0000600\0', 100);
  head.write('0000000\0', 108);
  head.write('0000000\0', 116);
  head.write(`${size.toString(8).padStart(11, '0')}\0`, 124);
  head.write('00000000000\0', 136);
  head.write('        ', 148);
  head.write(type, 156);
  head.write(link, 157, 100);
  head.write('ustar\x0000', 257);
  head.write(
    `${head
      .reduce((sum, byte) => sum + byte, 0)
      .toString(8)
      .padStart(6, '0')}\0 `,
    148,
  );
  return Buffer.concat([head, bytes, Buffer.alloc((512 - (bytes.length % 512)) % 512)]);
}
const end = Buffer.alloc(1024);

let sound: Buffer;
let path: string;
let asides: string;
let folder: string;
beforeAll(async () => {
  const made = await backedUp();
  sound = readFileSync(made.path);
  ({ asides } = made);
  folder = temporaryFolder();
  path = join(folder, 'offered.tar');
});

/** A manifest that names these files, with what else is needed. */
const manifest = (files: readonly { path: string; bytes: Buffer; size?: number }[], more: object = {}): Buffer =>
  Buffer.from(
    JSON.stringify({
      backup: 1,
      program: '0.1.0',
      made: '2026-03-14T09:30:00+13:00',
      why: 'asked',
      daybook: { id: 'book-one', name: 'Test' },
      desks: [],
      files: files.map(({ path: name, bytes, size }) => ({ path: name, bytes: size ?? bytes.length, sha256: sha256(bytes) })),
      ...more,
    }),
  );

/** Restores these bytes beside an empty folder and answers what stood against it; nothing may be left anywhere. */
async function refusal(bytes: Uint8Array): Promise<Problem> {
  writeFileSync(path, bytes);
  const order = { path, file: 'offered.tar', opener: {}, target: join(folder, 'target'), mark: '' };
  const answer = (await job({ job: 'restore', asides, order })) as Result<unknown>;
  expect(readdirSync(folder)).toEqual(['offered.tar']);
  expect(readdirSync(asides)).toEqual([]);
  if (answer.ok || !answer.problems[0]) throw new Error('it was taken');
  expect(problemText(answer.problems[0])).not.toMatch(/cannot be accepted/);
  return answer.problems[0];
}

const text = Buffer.from('text');

describe('a file offered as a backup', () => {
  it.each<[string, () => Buffer, string, string?]>([
    ['nothing at all', () => Buffer.alloc(0), 'backup-not-ours'],
    ['a picture', () => Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47]), Buffer.alloc(4000)]), 'backup-not-ours'],
    ['a tar of something else', () => Buffer.concat([member('letters.txt', text), end]), 'backup-not-ours'],
    ['a manifest that is no JSON', () => Buffer.concat([member('backup.json', text), end]), 'backup-not-ours'],
    ['a newer form', () => Buffer.concat([member('backup.json', Buffer.from('{"backup":2}')), end]), 'backup-newer'],
    [
      'a path that leads out',
      () => Buffer.concat([member('backup.json', manifest([])), member('../out.txt', text), end]),
      'backup-hostile',
      'path',
    ],
    [
      'an absolute path',
      () => Buffer.concat([member('backup.json', manifest([])), member('/tmp/out.txt', text), end]),
      'backup-hostile',
      'path',
    ],
    [
      'a manifest that names a path that leads out',
      () =>
        Buffer.concat([member('backup.json', manifest([{ path: '../out.txt', bytes: text }])), member('../out.txt', text), end]),
      'backup-damaged',
    ],
    [
      'a symbolic link under an announced name',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])),
          member('daybook.json', Buffer.alloc(0), { type: '2', link: '/etc/passwd' }),
          end,
        ]),
      'backup-hostile',
      'link',
    ],
    [
      'a hard link',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])),
          member('daybook.json', Buffer.alloc(0), { type: '1', link: '../../secret' }),
          end,
        ]),
      'backup-hostile',
      'link',
    ],
    [
      'a device',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])),
          member('daybook.json', Buffer.alloc(0), { type: '3' }),
          end,
        ]),
      'backup-hostile',
      'kind',
    ],
    [
      'a size of eight gigabytes that was announced',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text, size: 0o77777777777 }])),
          member('daybook.json', text, { size: 0o77777777777 }),
        ]),
      'backup-hostile',
      'size',
    ],
    ['a manifest of eight gigabytes', () => member('backup.json', text, { size: 0o77777777777 }), 'backup-hostile', 'size'],
    [
      'a member twice',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])),
          member('daybook.json', text),
          member('daybook.json', text),
          end,
        ]),
      'backup-hostile',
      'twice',
    ],
    [
      'two names that differ in capitals alone',
      () =>
        Buffer.concat([
          member(
            'backup.json',
            manifest([
              { path: 'a.txt', bytes: text },
              { path: 'A.txt', bytes: text },
            ]),
          ),
          end,
        ]),
      'backup-hostile',
      'twice',
    ],
    [
      'a content that is not what its hash says',
      () =>
        Buffer.concat([
          member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])),
          member('daybook.json', Buffer.from('tixt')),
          end,
        ]),
      'backup-damaged',
    ],
    [
      'a file that is missing',
      () => Buffer.concat([member('backup.json', manifest([{ path: 'daybook.json', bytes: text }])), end]),
      'backup-damaged',
    ],
  ])('%s is refused', async (_, bytes, code, what) => {
    const told = await refusal(bytes());
    expect([told.code, told.data?.what]).toEqual([code, what]);
  });

  it('cut off anywhere, or with any one byte turned, is refused or is not the backup any more', async () => {
    for (let cut = 0; cut < sound.length - 1024; cut += 1021)
      expect(['backup-not-ours', 'backup-damaged']).toContain((await refusal(sound.subarray(0, cut))).code);
    await fc.assert(
      fc.asyncProperty(fc.integer({ min: 0, max: sound.length - 1 }), fc.integer({ min: 1, max: 255 }), async (at, by) => {
        const bytes = Buffer.from(sound);
        bytes[at] = bytes[at]! ^ by;
        // a byte of a header that says nothing (an owner, a time) leaves the mark wrong: this look was of another
        await refusal(bytes);
      }),
      { numRuns: 60, seed: 9 },
    );
  });
});

describe('a name in a backup', () => {
  it.each(['daybook.json', 'desks/desk-one.jsonl', 'closings/desk-one-2026-03-31-v1.pdf', 'Belege März/Waage.pdf'])(
    '%s is plain',
    (name) => {
      expect(isPlainPath(name)).toBe(true);
    },
  );
  it.each([
    '',
    '/',
    '../a',
    'a/../b',
    './a',
    'a//b',
    'a/',
    '/etc/passwd',
    'C:\\a',
    'a:b',
    '.hidden',
    'a/.git/x',
    'nul',
    'AUX.txt',
    'a.',
    'a ',
    'a\u0000b',
    'a\u202eb',
    'a/b/c/d/e/f/g',
    `${'x'.repeat(201)}`,
  ])('%j is none', (name) => {
    expect(isPlainPath(name)).toBe(false);
  });
});
