/**
 * The lock of the window as the host has it: locked it hands nothing over, unlocked it hands over what that person may see, and wrong passphrases cost time.
 * All people and passphrases are invented. The derived key is held against RFC 7914, section 12 (from memory), whose first 32 bytes ours are.
 */
import { readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { LockState, Question } from '../../app/contract.ts';
import { questions } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { lockSettingsPath } from '../../main/host/lock-settings.ts';
import { matches } from '../../main/host/passphrase-hash.ts';
import { type AHost, aHost, bookIn, codesIn } from './a-host.ts';
import { keeper } from './drafts.ts';

const secret = 'three stamps and a cam';
const other = 'plates in the morning';

interface Guarded extends AHost {
  readonly told: () => Promise<LockState>;
  readonly entries: () => Promise<Entry[] | string[]>;
  readonly later: (seconds: number) => void;
  readonly folder: string;
  readonly path: string;
}

/** A book with a keeper, a safety officer and a reader, a reading at a person and one in a room; the keeper has a passphrase. */
async function guarded(): Promise<Guarded> {
  let at = 1_000_000;
  const host = aHost({ millis: () => at });
  const { folder, id } = bookIn(await host.ask('open', { make: 'Upper Battery' }));
  const keep = async (draft: object) => {
    const answer = await host.ask('keep', { happened: '2026-03-01T08:00+13:00', by: keeper.id, ...draft });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  };
  await keep(keeper);
  await keep({ id: 'officer-one', kind: 'person', body: { name: 'Safety officer', roles: ['safety-officer'] } });
  await keep({ id: 'reader-one', kind: 'person', body: { name: 'Reader', roles: ['reader'] } });
  await keep({
    id: 'check-one',
    kind: 'check-due',
    body: { what: 'health-surveillance', person: 'officer-one', done: 'yes' },
  });
  await keep({ id: 'strike-one', kind: 'strike', body: { strikes: 'check-one', why: 'Another day.' } });
  await keep({ id: 'note-of-all', kind: 'note', body: { text: 'for everybody' } });
  const set = await host.ask('passphrase', { person: keeper.id, after: secret });
  if (!set.ok) throw new Error(JSON.stringify(set.problems));
  return {
    ...host,
    folder,
    path: lockSettingsPath(host.options.home, id),
    later: (seconds) => {
      at += seconds * 1000;
    },
    told: async () => {
      const answer = await host.ask('state');
      if (!answer.ok) throw new Error('no state');
      return answer.value.lock as unknown as LockState;
    },
    entries: async () => {
      const answer = await host.post('/ask/entries', '{}');
      const text = await answer.text();
      if (text.startsWith('{"ok":false'))
        return (JSON.parse(text) as { problems: { code: string }[] }).problems.map((p) => p.code);
      return text
        .trimEnd()
        .split('\n')
        .map((line) => JSON.parse(line) as Entry);
    },
  };
}

describe('a locked host', () => {
  it('answers no question about the book, shows no picture, and writes nothing', async () => {
    const host = await guarded();
    const before = readFileSync(join(host.folder, 'desks', readdirSync(join(host.folder, 'desks'))[0]!), 'utf8');
    await host.ask('lock');
    expect((await host.told()).locked).toBe(true);
    const open: Question[] = ['state', 'open', 'close', 'lock', 'unlock'];
    const bodies: Readonly<Record<string, unknown>> = {
      keep: { ...keeper, id: 'another-note', kind: 'note', body: { text: 'no' } },
      paper: { name: 'wall-sheet' },
      passphrase: { person: keeper.id, before: secret, after: null },
      'lock-after': { minutes: null },
      issued: { closing: 'closing-one', file: 'paper' },
      import: { kind: 'note', text: 'a', mapping: { columns: [] } },
      'close-period': { id: 'closing-one', happened: '2026-03-31T12:00:00+13:00', by: keeper.id, closing: 'count-one' },
      'backup-place': { place: 'x' },
      'backup-seal': { how: 'none' },
      'backup-look': { from: 'x' },
      restore: { look: 'x' },
      'paper-progress': { job: 'job-000001' },
      'paper-stop': { job: 'job-000001' },
    };
    const shut = (Object.keys(questions) as Question[]).filter((q) => !open.includes(q));
    for (const question of shut) {
      const bytes = questions[question].ask === 'bytes';
      const answer = bytes
        ? await host.post(`/ask/${question}`, new Uint8Array([1]), { 'content-type': 'application/octet-stream' })
        : await host.post(`/ask/${question}`, JSON.stringify(bodies[question] ?? {}));
      const said = (await answer.json()) as { problems: { code: string }[] };
      expect([question, said.problems.map((p) => p.code)]).toEqual([question, ['session-locked']]);
    }
    const picture = await host.get(`/evidence/${'a'.repeat(64)}.png`);
    expect([picture.status, await picture.text()]).toEqual([423, expect.stringContaining('session-locked')]);
    expect(readFileSync(join(host.folder, 'desks', readdirSync(join(host.folder, 'desks'))[0]!), 'utf8')).toBe(before);
  });

  it('is locked when the daybook is opened anew, and opens by the passphrase, as that person', async () => {
    const host = await guarded();
    const again = aHost({ home: host.options.home });
    await host.ask('close');
    await again.host.openFolder(host.folder);
    expect(codesIn(await again.ask('keep', keeper))).toEqual(['session-locked']);
    expect(codesIn(await again.ask('unlock', { person: keeper.id, passphrase: other }))).toEqual(['passphrase-wrong']);
    const opened = await again.ask('unlock', { person: keeper.id, passphrase: secret });
    expect(opened.ok && opened.value.lock).toMatchObject({ locked: false, as: keeper.id });
  });

  it('locks by itself once nothing was asked for longer than its idle time', async () => {
    const host = await guarded();
    await host.ask('lock-after', { minutes: 5 });
    host.later(5 * 60);
    expect((await host.entries()).length).toBe(6);
    host.later(6 * 60 + 1);
    expect(await host.entries()).toEqual(['session-locked']);
  });

  it('stays locked when what it keeps of the passphrases is spoiled, and leaves the file as it is', async () => {
    const host = await guarded();
    await host.ask('close');
    writeFileSync(host.path, '{}');
    const again = aHost({ home: host.options.home });
    await again.host.openFolder(host.folder);
    expect(codesIn(await again.ask('unlock', { person: keeper.id, passphrase: secret }))).toEqual(['lock-unreadable']);
    expect(codesIn(await again.ask('keep', keeper))).toEqual(['session-locked']);
    expect(readFileSync(host.path, 'utf8')).toBe('{}');
    // moved away by whoever looks after the machine
    rmSync(host.path);
    const free = aHost({ home: host.options.home });
    await again.ask('close');
    await free.host.openFolder(host.folder);
    expect((await free.post('/ask/entries', '{}')).headers.get('content-type')).toContain('jsonl');
  });
});

describe('a passphrase', () => {
  it('is kept as a salted hash in the machine’s own folder, for its user alone, and nowhere in the daybook', async () => {
    const host = await guarded();
    const text = readFileSync(host.path, 'utf8');
    expect(text).not.toContain(secret);
    expect(JSON.parse(text).people[0].passphrase).toMatchObject({ N: 131072, r: 8, p: 1 });
    if (process.platform !== 'win32') expect(statSync(host.path).mode & 0o777).toBe(0o600);
    expect(readdirSync(host.folder).sort()).toEqual(['closings', 'daybook.json', 'desks', 'evidence']);
  });

  it('derives the key of RFC 7914', async () => {
    const key = Buffer.from('7023bdcb3afd7348461c06cd81fd38ebfda8fbba904f8e3ea9b543f6545da1f2', 'hex').toString('base64');
    const kept = { salt: Buffer.from('SodiumChloride').toString('base64'), key, N: 16384, r: 8, p: 1 };
    expect(await matches('pleaseletmein', kept)).toBe(true);
    expect(await matches('pleaseletmeim', kept)).toBe(false);
  });

  it('that is wrong costs more and more time, which starting anew does not give back, and the right one then ends', async () => {
    const host = await guarded();
    await host.ask('lock');
    const wrong = () => host.ask('unlock', { person: keeper.id, passphrase: other });
    for (let i = 0; i < 3; i++) expect(codesIn(await wrong())).toEqual(['passphrase-wrong']);
    expect((await host.told()).waitSeconds).toBe(2);
    expect(codesIn(await host.ask('unlock', { person: keeper.id, passphrase: secret }))).toEqual(['passphrase-wait']);
    host.later(2);
    expect(codesIn(await wrong())).toEqual(['passphrase-wrong']);
    expect((await host.told()).waitSeconds).toBe(4);
    await host.ask('close');
    const anew = aHost({ home: host.options.home, millis: () => 1_000_000 });
    await anew.host.openFolder(host.folder);
    expect(codesIn(await anew.ask('unlock', { person: keeper.id, passphrase: secret }))).toEqual(['passphrase-wait']);
    expect(codesIn(await anew.ask('unlock', { person: 'officer-one', passphrase: '' }))).toEqual(['no-passphrase']);
  });

  it('is changed and taken away only with the one until now, and is not short', async () => {
    const host = await guarded();
    expect(codesIn(await host.ask('passphrase', { person: keeper.id, before: secret, after: 'short' }))).toEqual([
      'passphrase-short',
    ]);
    expect(codesIn(await host.ask('passphrase', { person: keeper.id, after: other }))).toEqual(['passphrase-wrong']);
    expect(codesIn(await host.ask('passphrase', { person: 'nobody-known', after: other }))).toEqual(['unknown-person']);
    expect((await host.ask('passphrase', { person: keeper.id, before: secret, after: null })).ok).toBe(true);
    await host.ask('lock');
    expect(await host.told()).toMatchObject({ locked: false, people: [], as: null });
  });
});

describe('who opened it', () => {
  it('is handed what they may see: other lines keep their place and hash, and say nothing', async () => {
    const host = await guarded();
    expect((await host.ask('passphrase', { person: 'officer-one', after: other })).ok).toBe(true);
    const byKeeper = (await host.entries()) as Entry[];
    expect(byKeeper.filter((e) => e.kind === 'withheld').map((e) => [e.id, e.body])).toEqual([
      ['check-one', {}],
      ['strike-one', {}],
    ]);
    await host.ask('lock');
    await host.ask('unlock', { person: 'officer-one', passphrase: other });
    const byOfficer = (await host.entries()) as Entry[];
    expect(byOfficer.map((e) => e.hash)).toEqual(byKeeper.map((e) => e.hash));
    expect(byOfficer.find((e) => e.id === 'check-one')?.body.person).toBe('officer-one');
    const paper = (name: string) => host.post('/ask/paper', JSON.stringify({ name, id: 'officer-one' }));
    expect((await paper('personal-air-record')).headers.get('content-type')).toBe('application/pdf');
    await host.ask('lock');
    await host.ask('unlock', { person: keeper.id, passphrase: secret });
    expect(await (await paper('personal-air-record')).text()).toContain('not-for-this-view');
  });

  it('writes in no name that has a passphrase of its own, and a reader writes nothing', async () => {
    const host = await guarded();
    await host.ask('passphrase', { person: 'reader-one', after: other });
    const note = { id: 'note-later', happened: '2026-03-01T09:00+13:00', kind: 'note', body: { text: 'later' } };
    expect(codesIn(await host.ask('keep', { ...note, by: 'reader-one' }))).toEqual(['by-locked']);
    expect((await host.ask('keep', { ...note, by: 'officer-one' })).ok).toBe(true);
    await host.ask('lock');
    const opened = await host.ask('unlock', { person: 'reader-one', passphrase: other });
    expect(opened.ok && opened.value.lock).toMatchObject({ as: 'reader-one', reads: true });
    expect(codesIn(await host.ask('keep', { ...note, id: 'note-again', by: 'reader-one' }))).toEqual(['reads-only']);
  });
});
