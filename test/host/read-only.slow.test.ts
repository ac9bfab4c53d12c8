/** A daybook in a place that cannot be written opens for reading, says so, refuses by name, and nothing in it changes. */
import { spawnSync } from 'node:child_process';
import { chmodSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { OpenBook } from '../../app/contract.ts';
import type { Problem } from '../../app/core/result.ts';
import { noticeText } from '../../app/words/notices.ts';
import { problemText } from '../../app/words/problems.ts';
import { makeDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { called, everything } from '../terminal/called.ts';
import { aHost, bookIn, codesIn } from './a-host.ts';
import { bundle } from './bundle.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';
import { smallDiskOrSay } from './small-disk.ts';

/** Makes a daybook of three notes in `folder`, by the desk of `home`. */
function written(folder: string, home: string): void {
  expect(makeDaybook(folder, 'Test Battery', now).ok).toBe(true);
  const here = openInstallation(home);
  const book = here.ok ? openDaybook(folder, here.value) : null;
  if (!book?.ok) throw new Error('not opened');
  for (let i = 1; i <= 3; i++) expect(book.value.keep(note(i), now).ok).toBe(true);
  book.value.close();
}

const disk = smallDiskOrSay(1_024, 'a disk that is mounted for reading only');

describe.skipIf(disk === null)('a disk mounted for reading only', () => {
  it('is read with its notice; keeping is refused by name; with the disk writable again the same desk goes on', async () => {
    const { ask, host, post, options } = aHost();
    const folder = join(disk!.folder, 'book');
    written(folder, options.home);
    disk!.readOnly(true);
    const before = everything(folder);
    await host.openFolder(folder);
    const open = bookIn(await ask('state'));
    expect([open.writable, open.desks[0]?.entries]).toEqual([false, 3]);
    expect(open.notices).toEqual([{ code: 'not-writable', detail: 'no-permission' }]);
    expect(open.notices.map(noticeText).join(' ')).toMatch(/reading only.*may not write/i);
    const refused = await ask('keep', note(4));
    expect(codesIn(refused)).toEqual(['no-permission']);
    expect((refused.ok ? [] : refused.problems).map(problemText).join(' ')).toContain('book');
    const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    const evidence = await post('/ask/evidence', png, { 'content-type': 'application/octet-stream' });
    expect(codesIn((await evidence.json()) as { ok: boolean; problems: Problem[] })).toEqual(['no-permission']);
    expect((await called(['check', folder])).code).toBe(0);
    expect(everything(folder)).toEqual(before);

    disk!.readOnly(false);
    await host.openFolder(folder);
    expect(await ask('keep', note(4))).toMatchObject({ ok: true, value: { entry: { n: 4 } } });
    expect(bookIn(await ask('state')).desks).toMatchObject([{ entries: 4 }]);
    await host.close();
  });
});

describe('a folder whose permissions forbid writing', () => {
  it('is read by another user with its notice; keeping is refused by name, and nothing changes', async () => {
    const place = temporaryFolder();
    const folder = join(place, 'book');
    written(folder, temporaryFolder());
    const script = await bundle('opens-for-reading.ts', temporaryFolder());
    const home = temporaryFolder();
    chmodSync(place, 0o755);
    chmodSync(home, 0o777);
    const inside = readdirSync(folder, { recursive: true, withFileTypes: true });
    for (const item of inside) chmodSync(join(item.parentPath, item.name), item.isDirectory() ? 0o555 : 0o444);
    chmodSync(folder, 0o555);
    const before = everything(folder);
    const child = spawnSync(process.execPath, [script, folder, home], { encoding: 'utf8' });
    for (const item of inside) chmodSync(join(item.parentPath, item.name), item.isDirectory() ? 0o755 : 0o644);
    chmodSync(folder, 0o755);
    expect(child.stderr).toBe('');
    const said = JSON.parse(child.stdout) as { open: OpenBook; entries: number; keep: unknown; evidence: unknown };
    expect([said.open.writable, said.entries]).toEqual([false, 3]);
    expect(said.open.notices).toEqual([{ code: 'not-writable', detail: 'no-permission' }]);
    expect(said.keep).toMatchObject({ ok: false, problems: [{ code: 'no-permission' }] });
    expect(said.evidence).toMatchObject({ ok: false, problems: [{ code: 'no-permission' }] });
    expect(everything(folder)).toEqual(before);
  });
});
