/** A real disk that runs full: what was answered is there, what did not fit is refused in plain words, and no good file is lost to half of a new one. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import type { Problem } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { called, everything } from '../terminal/called.ts';
import { aHost, bookIn } from './a-host.ts';
import { keeper, note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';
import { smallDiskOrSay } from './small-disk.ts';

const disk = smallDiskOrSay(512, 'a full disk');
const place = (name: string) => join(disk!.folder, name);
const png = (bytes: number) =>
  Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(bytes, 3)]);
const files = (folder: string) =>
  Object.fromEntries(Object.entries(everything(folder)).filter(([path]) => !path.endsWith('filler')));

afterEach(() => disk?.free());

function refusalOf(result: { ok: boolean; problems?: readonly Problem[] }): string {
  expect(result).toMatchObject({ ok: false, problems: [{ code: 'disk-full' }] });
  return (result.problems ?? []).map(problemText).join(' ');
}

describe.skipIf(disk === null)('on a disk that is full', () => {
  it('an entry is refused in plain words, every answered one is there, and with room again writing goes on', async () => {
    const { ask, host } = aHost();
    expect(makeDaybook(place('entries'), 'Test Battery', now).ok).toBe(true);
    await host.openFolder(place('entries'));
    const answered: string[] = [];
    disk!.fill(60_000);
    let refused: Awaited<ReturnType<typeof ask>> | null = null;
    let i = 0;
    while (refused === null && i < 2_000) {
      const draft = note(++i, 'x'.repeat(1 + ((i * 37) % 1_500)));
      const kept = await ask('keep', draft);
      if (kept.ok) answered.push(draft.id);
      else refused = kept;
    }
    if (refused === null) throw new Error('the disk never ran full');
    expect(answered.length).toBeGreaterThan(10);
    expect(refusalOf(refused as { ok: boolean; problems?: readonly Problem[] })).toMatch(/disk is full/i);

    const ids = () => {
      const read = readDaybook(place('entries'));
      if (!read.ok) throw new Error('not read');
      expect(read.value.notices).toEqual([]);
      return read.value.entries.map((entry) => entry.id).toSorted();
    };
    expect(ids()).toEqual(answered);
    // asked again on the full disk nothing changes; with room the very same entry is kept once
    expect((await ask('keep', note(i, 'x'.repeat(5_000)))).ok).toBe(false);
    expect(ids()).toEqual(answered);
    disk!.free();
    for (let more = i; more < i + 5; more++) {
      expect((await ask('keep', note(more))).ok).toBe(true);
      answered.push(note(more).id);
    }
    expect((await ask('keep', note(i))).ok).toBe(true);
    expect(ids()).toEqual(answered);
    expect(bookIn(await ask('state')).desks[0]?.entries).toBe(answered.length);
    await host.close();
  });

  it('a picture is refused, the ones kept before are whole, and nothing of the new one is left', async () => {
    const { host, post } = aHost();
    expect(makeDaybook(place('pictures'), 'Test Battery', now).ok).toBe(true);
    await host.openFolder(place('pictures'));
    const send = async (bytes: Uint8Array) =>
      (await (await post('/ask/evidence', bytes, { 'content-type': 'application/octet-stream' })).json()) as {
        ok: boolean;
        problems?: Problem[];
      };
    expect((await send(png(3_000))).ok).toBe(true);
    disk!.fill(20_000);
    const before = files(place('pictures'));
    expect(refusalOf(await send(png(60_000)))).toMatch(/disk is full/i);
    expect(files(place('pictures'))).toEqual(before);
    expect(readdirSync(place('pictures/evidence'))).toHaveLength(1);
    disk!.free();
    expect((await send(png(60_000))).ok).toBe(true);
    expect(readdirSync(place('pictures/evidence'))).toHaveLength(2);
    await host.close();
  });

  it('a new daybook is refused and has no title page, so nobody takes it for one', () => {
    disk!.fill();
    const made = makeDaybook(place('new'), 'Test Battery', now);
    expect(refusalOf(made)).toMatch(/disk is full/i);
    expect(Object.keys(files(place('new'))).filter((path) => path.includes('daybook.json'))).toEqual([]);
    expect(readDaybook(place('new'))).toMatchObject({ ok: false });
  });

  it('the list of daybooks opened before stays as it was', () => {
    const here = openInstallation(place('home'));
    if (!here.ok) throw new Error('no installation');
    expect(here.value.remember('/one', 'One').ok).toBe(true);
    disk!.fill();
    const before = files(place('home'));
    expect(refusalOf(here.value.remember('/two', 'x'.repeat(6_000)))).toMatch(/disk is full/i);
    expect(refusalOf(here.value.rememberPort(4_711))).toMatch(/disk is full/i);
    expect(files(place('home'))).toEqual(before);
    expect(here.value.recents().map((r) => r.name)).toEqual(['One']);
    expect(here.value.desk).toBe(openedAgain(place('home')));
  });

  it('a paper printed over an earlier one leaves the earlier one whole', async () => {
    const home = temporaryFolder();
    const folder = join(home, 'book');
    const { ask, host } = aHost();
    expect(makeDaybook(folder, 'Test Battery', now).ok).toBe(true);
    await host.openFolder(folder);
    expect((await ask('keep', keeper)).ok).toBe(true);
    await host.close();
    const out = place('account.pdf');
    writeFileSync(out, 'an earlier paper');
    disk!.fill();
    const printed = await called(['paper', folder, 'mercury-account', '--out', out]);
    expect(printed.code).toBe(2);
    expect(printed.err).toMatch(/disk is full/i);
    expect(readFileSync(out, 'utf8')).toBe('an earlier paper');
    expect(readdirSync(disk!.folder).filter((name) => name.includes('account'))).toEqual(['account.pdf']);
    disk!.free();
    expect((await called(['paper', folder, 'mercury-account', '--out', out])).code).toBe(0);
    expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

const openedAgain = (home: string): string | null => {
  const here = openInstallation(home);
  return here.ok ? here.value.desk : null;
};
