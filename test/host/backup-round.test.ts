/** A backup is made of what the host has kept, verified where it lies, and restored as a new desk in a new folder; the open daybook is not touched. */
import { spawnSync } from 'node:child_process';
import { createPublicKey, verify } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BackupsState, HostState, ReplyOf } from '../../app/contract.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { type AHost, aHost, bookIn, codesIn } from './a-host.ts';
import { filesBelow, valueIn } from './backed-up.ts';
import { keeper, note } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const png = Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]), Buffer.alloc(3_000, 7)]);

const backups = async ({ ask }: AHost) => valueIn<BackupsState>(await ask('backups'));

/** A host with a daybook of four entries and a picture, and a place of its own that has been picked. */
async function withPlace(more: Parameters<typeof aHost>[0] = {}) {
  const place = temporaryFolder();
  const a = aHost({ places: [place], drives: () => [], ...more });
  const book = bookIn(await a.ask('open', { make: 'Test Battery' }));
  const kept = await a.post('/ask/evidence', png, { 'content-type': 'application/octet-stream' });
  const { file } = valueIn<{ file: string }>(await kept.json());
  for (const draft of [keeper, note(1), { ...note(2), evidence: [{ file, shows: 'scale' }] }, note(3)])
    expect((await a.ask('keep', draft)).ok).toBe(true);
  const [offered] = (await backups(a)).offered;
  expect(offered?.path).toBe(place);
  const picked = valueIn<BackupsState>(await a.ask('backup-place', { place: offered!.key }));
  expect(picked.place).toMatchObject({ path: place, there: true });
  await expect.poll(async () => (await backups(a)).last?.why).toBe('asked');
  return { ...a, place, book, file };
}

describe('a backup', () => {
  it('is verified, named, listed, and holds every file of the daybook as it lies', async () => {
    const a = await withPlace();
    const { list, last, failed } = await backups(a);
    expect(failed).toBe(null);
    expect(last).toMatchObject({ entries: 4, leftOut: [], rotation: null });
    expect(list).toHaveLength(1);
    const [folder] = readdirSync(a.place);
    expect(folder).toBe(`Test Battery ${a.book.id.slice(0, 8)}`);
    expect(readdirSync(join(a.place, folder!))).toEqual([list[0]!.file]);
    // the desk signed its end mark before, and the signature travels along
    expect(readdirSync(join(a.book.folder, 'signatures'))).toEqual([`${a.book.ownDesk}.jsonl`]);
    await a.host.close();
  });

  it('carries a signature over the last line it holds, which anybody verifies with the key beside it', async () => {
    const a = await withPlace();
    const [folder] = readdirSync(a.place);
    const [file] = readdirSync(join(a.place, folder ?? ''));
    const out = temporaryFolder();
    // an outside reader: the system's tar, and Node's own Ed25519 over the line as it lies, its signature cut out
    const unpacked = spawnSync('tar', ['-xf', join(a.place, folder ?? '', file ?? ''), '-C', out], { encoding: 'utf8' });
    expect([unpacked.status, unpacked.stderr]).toEqual([0, '']);
    const all = Object.entries(filesBelow(out));
    const lines = (path: string) => {
      const [, hex = ''] = all.find(([name]) => name.endsWith(path)) ?? [];
      return Buffer.from(hex, 'hex').toString('utf8').trimEnd().split('\n');
    };
    const signed = lines(`signatures/${a.book.ownDesk}.jsonl`).at(-1) ?? '';
    const journal = lines(`desks/${a.book.ownDesk}.jsonl`);
    const said = signed.replace(/"signature":"[^"]*",/, '');
    const { key, signature, end_mark, entries } = JSON.parse(signed);
    const publicKey = createPublicKey({ key: Buffer.from(key, 'base64'), format: 'der', type: 'spki' });
    const holds = (text: string) => verify(null, Buffer.from(text), publicKey, Buffer.from(signature, 'base64'));
    expect(holds(said)).toBe(true);
    expect(holds(said.replace(`"entries":${entries}`, `"entries":${entries + 1}`))).toBe(false);
    expect([entries, end_mark]).toEqual([journal.length, JSON.parse(journal.at(-1) ?? '').hash]);
    await a.host.close();
  });

  it('shows what would change, and restores as a new desk in a new folder, with nothing written over', async () => {
    const a = await withPlace();
    for (const i of [4, 5]) await a.ask('keep', note(i));
    const before = filesBelow(a.book.folder);
    const [listed] = (await backups(a)).list;
    const looked = valueIn<ReplyOf<'backup-look'>>(await a.ask('backup-look', { from: listed!.key }));
    expect(looked.holds).toMatchObject({ name: 'Test Battery', entries: 4, evidence: 1, faults: [] });
    expect(looked.difference).toMatchObject({
      same: true,
      desks: [{ desk: a.book.ownDesk, here: 6, backup: 4, onlyHere: 2, onlyBackup: 0 }],
      evidence: { onlyHere: 0, onlyBackup: 0, differ: 0 },
    });
    const { book } = valueIn<HostState>(await a.ask('restore', { look: looked.look }));
    expect(book?.folder).toBe(looked.into);
    expect(book?.ownDesk).not.toBe(a.book.ownDesk);
    expect(book?.writable).toBe(true);
    expect(filesBelow(a.book.folder)).toEqual(before);
    expect((await a.ask('keep', note(9))).ok).toBe(true);
    const restored = readDaybook(looked.into);
    expect(restored.ok && restored.value.desks.map(({ entries }) => entries).sort()).toEqual([1, 4]);
    expect(readFileSync(join(looked.into, 'evidence', a.file)).equals(png)).toBe(true);
    expect(existsSync(join(looked.into, 'backup.json'))).toBe(false);
    expect(readdirSync(a.options.documents).filter((name) => name.startsWith('.'))).toEqual([]);
    expect(readdirSync(join(a.options.home, 'aside'))).toEqual([]);
    // the folder it came from goes on as another desk again: no number is given out twice
    await a.host.openFolder(a.book.folder);
    expect((await a.ask('keep', note(10))).ok).toBe(true);
    const desks = (folder: string) => readdirSync(join(folder, 'desks'));
    expect(desks(a.book.folder).filter((name) => desks(looked.into).includes(name))).toEqual([`${a.book.ownDesk}.jsonl`]);
    await a.host.close();
  });

  it('carries whatever plain file lies in the folder; links stay behind and are told', async () => {
    const a = await withPlace();
    mkdirSync(join(a.book.folder, 'beside'));
    writeFileSync(join(a.book.folder, 'beside', 'desk.sig'), 'signed');
    symlinkSync('/etc/hostname', join(a.book.folder, 'link'));
    const { last } = valueIn<BackupsState>(await a.ask('backup-now'));
    expect(last?.leftOut).toEqual(['link']);
    const [listed] = (await backups(a)).list;
    const looked = valueIn<ReplyOf<'backup-look'>>(await a.ask('backup-look', { from: listed!.key }));
    expect((await a.ask('restore', { look: looked.look })).ok).toBe(true);
    expect(readFileSync(join(looked.into, 'beside', 'desk.sig'), 'utf8')).toBe('signed');
    expect(existsSync(join(looked.into, 'link'))).toBe(false);
    await a.host.close();
  });

  it('is rehearsed: restored aside, looked at in full, and gone again', async () => {
    const a = await withPlace();
    const done = valueIn<ReplyOf<'backup-rehearse'>>(await a.ask('backup-rehearse', {}));
    expect(done.findings).toMatchObject({ entries: 4, evidence: 1, closings: 0, faults: [] });
    expect(readdirSync(join(a.options.home, 'aside'))).toEqual([]);
    // a picture that was spoiled before the backup is found by its name
    writeFileSync(join(a.book.folder, 'evidence', a.file), 'not the picture');
    valueIn(await a.ask('backup-now'));
    const again = valueIn<ReplyOf<'backup-rehearse'>>(await a.ask('backup-rehearse', {}));
    expect(again.findings.faults.map(({ code }) => code)).toEqual(['evidence-changed']);
    await a.host.close();
  });

  it('brought to the window is looked into and restored where no daybook is open', async () => {
    const a = await withPlace();
    const [listed] = (await backups(a)).list;
    const bytes = readFileSync(join(a.place, listed!.of, listed!.file));
    await a.host.close();
    const fresh = aHost({ drives: () => [] });
    const octets = { 'content-type': 'application/octet-stream' };
    const brought = valueIn<ReplyOf<'backup-bring'>>(await (await fresh.post('/ask/backup-bring', bytes, octets)).json());
    expect(brought.sealed).toBe('none');
    const looked = valueIn<ReplyOf<'backup-look'>>(await fresh.ask('backup-look', { from: brought.key }));
    expect(looked.difference).toBe(null);
    const { book } = valueIn<HostState>(await fresh.ask('restore', { look: looked.look }));
    expect(book?.desks.find(({ desk }) => desk === a.book.ownDesk)?.entries).toBe(4);
    expect(readdirSync(join(fresh.options.home, 'aside'))).toEqual([]);
    await fresh.host.close();
  });

  it('of a day is made by itself, once, and again the next day', async () => {
    let day = '2026-03-14';
    const a = await withPlace({ clock: () => `${day}T09:30:00+13:00`, lookEveryMs: 20 });
    await new Promise((resolve) => setTimeout(resolve, 120));
    expect((await backups(a)).list.map(({ why }) => why)).toEqual(['asked']);
    day = '2026-03-15';
    await expect.poll(async () => (await backups(a)).list.map(({ why }) => why)).toEqual(['daily', 'asked']);
    await a.host.close();
  });

  it('is asked for by name: what is unknown, gone or not picked is told in words', async () => {
    const a = aHost({ drives: () => [] });
    expect(codesIn(await a.ask('backup-now'))).toEqual(['no-daybook-open']);
    await a.ask('open', { make: 'Test Battery' });
    expect(codesIn(await a.ask('backup-now'))).toEqual(['backup-no-place']);
    expect(codesIn(await a.ask('backup-rehearse', {}))).toEqual(['backup-no-place']);
    expect(codesIn(await a.ask('backup-place', { place: 'aaaa' }))).toEqual(['backup-place-unknown']);
    expect(codesIn(await a.ask('backup-look', { from: 'aaaa' }))).toEqual(['backup-gone']);
    expect(codesIn(await a.ask('restore', { look: 'aaaa' }))).toEqual(['backup-look-gone']);
    expect(codesIn(await a.ask('backup-seal', { how: 'passphrase', passphrase: 'short' }))).toEqual(['backup-passphrase-short']);
    expect(codesIn(await a.ask('backup-seal', { how: 'recipient', recipient: 'age1pq1nothing' }))).toEqual(['backup-recipient']);
    await a.host.close();
  });
});
