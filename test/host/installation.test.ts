/** What an installation keeps for itself: one desk for ever, recent daybooks, its port, and locks that end with their process. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { makeDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation, stateFolder } from '../../main/host/installation.ts';
import { takeLock } from '../../main/host/lock.ts';
import { bundle } from './bundle.ts';
import { now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

function installed(home: string) {
  const installation = openInstallation(home);
  if (!installation.ok) throw new Error(JSON.stringify(installation.problems));
  return installation.value;
}

describe('an installation', () => {
  it('is one desk, the same at every start, and another than any other installation', () => {
    const home = join(temporaryFolder(), 'deep', 'home');
    const { desk } = installed(home);
    expect(desk).toMatch(/^desk-[0-9a-f]{16}$/);
    expect(installed(home).desk).toBe(desk);
    expect(installed(temporaryFolder()).desk).not.toBe(desk);
  });

  it('makes up no other desk when its file cannot be read', () => {
    const home = temporaryFolder();
    installed(home);
    writeFileSync(join(home, 'desk.json'), '{"desk":');
    expect(openInstallation(home)).toMatchObject({ ok: false, problems: [{ code: 'desk-unreadable' }] });
    expect(readFileSync(join(home, 'desk.json'), 'utf8')).toBe('{"desk":');
  });

  it('answers a problem where its folder cannot be', () => {
    const file = join(temporaryFolder(), 'file');
    writeFileSync(file, '');
    expect(openInstallation(file)).toMatchObject({ ok: false, problems: [{ code: 'not-a-folder' }] });
  });

  it('lists daybooks with the newest first, each once, and says which are gone', () => {
    const home = temporaryFolder();
    const folders = ['a', 'b'].map((name) => join(temporaryFolder(), name));
    for (const folder of folders) makeDaybook(folder, 'Battery', now);
    const installation = installed(home);
    for (const folder of [...folders, folders[0]!]) installation.remember(folder, 'Battery');
    rmSync(folders[1]!, { recursive: true });
    expect(
      installed(home)
        .recents()
        .map(({ folder, missing }) => [folder, missing]),
    ).toEqual([
      [folders[0], false],
      [folders[1], true],
    ]);
  });

  it('keeps a list it cannot read under another name and starts a new one', () => {
    const home = temporaryFolder();
    const installation = installed(home);
    writeFileSync(join(home, 'recents.json'), 'not a list');
    expect(installation.recents()).toEqual([]);
    expect(installation.remember('/somewhere', 'Battery')).toMatchObject({ ok: true });
    const aside = readdirSync(home).find((name) => name.startsWith('recents.json.unreadable'));
    expect(readFileSync(join(home, aside ?? ''), 'utf8')).toBe('not a list');
  });

  it('lives where the platform keeps state, unless DAYBOOK_HOME says otherwise', () => {
    expect(stateFolder({ DAYBOOK_HOME: '/kept/here' }, 'linux', '/home/keeper')).toBe('/kept/here');
    expect(stateFolder({}, 'linux', '/home/keeper')).toBe(join('/home/keeper', '.local', 'state', 'retort-daybook'));
    expect(stateFolder({ XDG_STATE_HOME: '/state' }, 'linux', '/home/keeper')).toBe(join('/state', 'retort-daybook'));
    expect(stateFolder({}, 'darwin', '/Users/keeper')).toContain('Application Support');
    expect(stateFolder({ LOCALAPPDATA: '/local' }, 'win32', '/c')).toBe(join('/local', 'Retort Daybook'));
  });
});

describe('a lock', () => {
  const children: ChildProcess[] = [];
  afterEach(() => {
    for (const child of children.splice(0)) child.kill('SIGKILL');
  });

  /** A process that holds the lock at `path`, or was refused it. */
  async function other(
    path: string,
  ): Promise<{ child: ChildProcess; said: { ok: boolean; problems?: unknown }; ended: Promise<unknown> }> {
    const script = await bundle('holds-lock.ts', temporaryFolder());
    const child = spawn(process.execPath, [script, path], { stdio: ['pipe', 'pipe', 'inherit'] });
    children.push(child);
    const ended = new Promise((resolve) => child.on('close', resolve));
    const said = await new Promise<string>((resolve) =>
      child.stdout.once('data', (part: Buffer) => resolve(part.toString('utf8'))),
    );
    return { child, said: JSON.parse(said) as { ok: boolean }, ended };
  }

  it('of a living process is respected, by name of the process; given back, it can be taken', async () => {
    const path = join(temporaryFolder(), 'book.lock');
    const { child, said, ended } = await other(path);
    expect(said).toEqual({ ok: true });
    expect(takeLock(path)).toMatchObject({
      ok: false,
      problems: [{ code: 'elsewhere-open', data: { pid: child.pid, host: hostname() } }],
    });
    child.stdin?.end();
    await ended;
    expect(existsSync(path)).toBe(false);
    const mine = takeLock(path);
    expect(mine.ok).toBe(true);
    expect((await other(path)).said).toMatchObject({ ok: false, problems: [{ data: { pid: process.pid } }] });
    if (mine.ok) mine.value.release();
    expect(readdirSync(join(path, '..'))).toEqual([]);
  });

  it('of a process that was killed is stale and is taken over', async () => {
    const path = join(temporaryFolder(), 'book.lock');
    const { child, ended } = await other(path);
    child.kill('SIGKILL');
    await ended;
    expect(existsSync(path)).toBe(true);
    const mine = takeLock(path);
    expect(mine.ok).toBe(true);
    expect(JSON.parse(readFileSync(path, 'utf8'))).toMatchObject({ pid: process.pid });
  });

  it('is held once even within one process', () => {
    const path = join(temporaryFolder(), 'book.lock');
    expect(takeLock(path).ok).toBe(true);
    expect(takeLock(path)).toMatchObject({ ok: false, problems: [{ data: { pid: process.pid } }] });
  });

  it('left by an earlier process that had our own number is stale', () => {
    const path = join(temporaryFolder(), 'book.lock');
    writeFileSync(path, JSON.stringify({ pid: process.pid, host: hostname(), started: null }));
    expect(takeLock(path).ok).toBe(true);
  });

  it('of a process on another host cannot be judged and is respected', () => {
    const path = join(temporaryFolder(), 'book.lock');
    writeFileSync(path, JSON.stringify({ pid: 1, host: 'another-machine', started: null }));
    expect(takeLock(path)).toMatchObject({ ok: false, problems: [{ data: { host: 'another-machine' } }] });
  });

  it('that nobody can read is taken over, and a folder in its place is a problem', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'a.lock'), '');
    expect(takeLock(join(folder, 'a.lock')).ok).toBe(true);
    mkdirSync(join(folder, 'b.lock'));
    expect(takeLock(join(folder, 'b.lock')).ok).toBe(false);
  });

  it('is not given back twice, nor when another took it over', () => {
    const path = join(temporaryFolder(), 'book.lock');
    const mine = takeLock(path);
    if (!mine.ok) throw new Error('not taken');
    writeFileSync(path, JSON.stringify({ pid: 1, host: 'another-machine', started: null }));
    mine.value.release();
    mine.value.release();
    expect(existsSync(path)).toBe(true);
  });
});
