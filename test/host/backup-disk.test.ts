/**
 * The place for backups fails in every way a drive does: it is not there, is another drive, fills up, may only be read, breaks off at any write, and
 * the program is killed meanwhile. Nothing of the record is lost, and the earlier backups are there byte for byte.
 */
import { spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BackupsState } from '../../app/contract.ts';
import type { Result } from '../../app/core/result.ts';
import { failureText } from '../../app/words/backups.ts';
import type { Jobs } from '../../main/host/backup/jobs.ts';
import { isUnfinished } from '../../main/host/backup/names.ts';
import { takePlace, unfitPlace } from '../../main/host/backup/places.ts';
import { sha256 } from '../../main/host/canonical.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { aHost, codesIn } from './a-host.ts';
import { backedUp, filesBelow, job, readyToBackUp, valueIn } from './backed-up.ts';
import { bundle } from './bundle.ts';
import { keeper, note } from './drafts.ts';
import { temporaryFolder } from './folder.ts';
import { smallDiskOrSay } from './small-disk.ts';

const disk = smallDiskOrSay(2048, 'a place for backups that is full or read only');
const backUp = (order: Jobs['backup']['order'], asides: string) =>
  job({ job: 'backup', asides, order }) as Promise<Result<Jobs['backup']['done']>>;

describe('a place', () => {
  it('that is not there any more is told on the page and in the Today room, and the day goes on; put back, backups go on', async () => {
    const place = temporaryFolder();
    const a = aHost({ places: [place], drives: () => [] });
    const state = async () => valueIn<BackupsState>(await a.ask('backups'));
    await a.ask('open', { make: 'Test Battery' });
    valueIn(await a.ask('keep', keeper));
    valueIn(await a.ask('backup-place', { place: (await state()).offered[0]!.key }));
    await expect.poll(async () => (await state()).last?.entries).toBe(1);
    // the mount point stays where the drive is pulled out, and is empty
    const [folder] = readdirSync(place);
    const elsewhere = join(temporaryFolder(), 'pulled-out');
    renameSync(join(place, folder!), elsewhere);
    expect(codesIn(await a.ask('backup-now'))).toEqual(['backup-place-missing']);
    const told = await state();
    expect(told.place?.there).toBe(false);
    expect(failureText(told)).toMatch(/not there .* Nothing of the record is lost/);
    expect(readdirSync(place)).toEqual([]);
    valueIn(await a.ask('keep', note(1)));
    renameSync(elsewhere, join(place, folder!));
    const again = valueIn<BackupsState>(await a.ask('backup-now'));
    expect([again.failed, again.last?.entries, again.list.length]).toEqual([null, 2, 2]);
    await a.host.close();
  });

  it('inside the daybook’s own folder is refused, and so is one that is no folder', async () => {
    const { folder } = await readyToBackUp();
    expect(unfitPlace(join(folder, 'evidence'), folder)?.code).toBe('backup-place-inside');
    expect(unfitPlace(folder, folder)?.code).toBe('backup-place-inside');
    expect(unfitPlace(join(folder, 'nowhere'), folder)?.code).toBe('backup-place-missing');
    expect(unfitPlace(join(folder, '..'), folder)).toBe(null);
    expect(codesIn(takePlace(join(folder, 'daybook.json'), 'Test', 'abcdefgh'))).toEqual(['backup-place-missing']);
  });
});

describe('a backup that cannot be verified', () => {
  it('takes no earlier one’s place: a chain that is broken, or a record shorter than the host has it', async () => {
    const made = await backedUp();
    const before = filesBelow(made.into);
    const [desk] = made.order.desks;
    const more = { ...made.order, desks: [{ ...desk!, entries: desk!.entries + 1, endMark: 'f'.repeat(64) }] };
    expect(codesIn(await backUp(more, made.asides))).toEqual(['backup-not-read-back']);
    const journal = join(made.folder, 'desks', `${made.order.ownDesk}.jsonl`);
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('Note 1', 'Note 7'));
    expect(codesIn(await backUp(made.order, made.asides))).toEqual(['backup-chain']);
    expect(filesBelow(made.into)).toEqual(before);
    expect(readdirSync(made.asides)).toEqual([]);
  });

  it('leaves out the half of a line that is just being written', async () => {
    const made = await readyToBackUp();
    const journal = join(made.folder, 'desks', `${made.order.ownDesk}.jsonl`);
    writeFileSync(journal, '{"body":{"text":"half', { flag: 'a' });
    expect(valueIn<Jobs['backup']['done']>(await backUp(made.order, made.asides)).entries).toBe(3);
  });
});

describe.skipIf(disk === null)('a small drive', () => {
  it('that runs full refuses in plain words, and with room again a backup is made', async () => {
    const into = join(disk!.folder, 'full');
    mkdirSync(into);
    const made = await backedUp({ into });
    const before = filesBelow(into);
    disk!.fill();
    const refused = await backUp(made.order, made.asides);
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'backup-place-full' }] });
    expect(filesBelow(into)).toEqual(before);
    disk!.free();
    expect((await backUp(made.order, made.asides)).ok).toBe(true);
    expect(Object.keys(filesBelow(into))).toHaveLength(2);
  });

  it('that may only be read refuses by name', async () => {
    const into = join(disk!.folder, 'locked');
    mkdirSync(into);
    const made = await backedUp({ into });
    const before = filesBelow(into);
    disk!.readOnly(true);
    expect(codesIn(await backUp(made.order, made.asides))).toEqual(['backup-place-read-only']);
    disk!.readOnly(false);
    expect(filesBelow(into)).toEqual(before);
  });
});

describe('a program killed while it backs up', () => {
  it('leaves the earlier backups as they were and at most a file without a name, which the next one removes', async () => {
    const made = await readyToBackUp();
    // large enough that the kill comes in the middle of it
    mkdirSync(join(made.folder, 'more'));
    writeFileSync(join(made.folder, 'more', 'large.bin'), Buffer.alloc(24_000_000, 7));
    const first = valueIn<Jobs['backup']['done']>(await backUp(made.order, made.asides));
    const sum = () => sha256(readFileSync(join(made.into, first.file)));
    const before = sum();
    const unfinished = () => readdirSync(made.into).filter(isUnfinished).length;
    const script = await bundle('backs-up.ts', temporaryFolder());
    for (const after of [0, 40, 120]) {
      const left = unfinished();
      const child = spawn(process.execPath, [script, JSON.stringify(made)], { stdio: 'ignore' });
      const ended = new Promise((resolve) => child.once('exit', resolve));
      while (unfinished() === left && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 2));
      await new Promise((resolve) => setTimeout(resolve, after));
      child.kill('SIGKILL');
      await ended;
      expect(sum()).toBe(before);
    }
    expect(unfinished()).toBeGreaterThan(0);
    const again = valueIn<Jobs['backup']['done']>(await backUp(made.order, made.asides));
    expect(readdirSync(made.into).filter(isUnfinished)).toEqual([]);
    expect(readdirSync(made.into)).toContain(first.file);
    expect(readdirSync(made.into)).toContain(again.file);
    expect(readdirSync(made.asides)).toEqual([]);
    expect(readDaybook(made.folder)).toMatchObject({ ok: true, value: { entries: { length: 3 }, notices: [] } });
  });
});
