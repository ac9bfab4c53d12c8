/**
 * Sealed backups against another program for the age format (age-encryption.org/v1): Debian's `age`. One made here opens there, by key and by
 * passphrase, and what comes out is a tar of the daybook; one that `age` sealed is restored here. Skipped aloud where there is no `age`.
 */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Result } from '../../app/core/result.ts';
import { type Job, type Jobs, runJob } from '../../main/host/backup/jobs.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { codesIn } from './a-host.ts';
import { backedUp, filesBelow, valueIn } from './backed-up.ts';
import { temporaryFolder } from './folder.ts';

const there = (command: string, ...words: string[]): boolean => spawnSync(command, words).error === undefined;
const age = there('age', '--version') && there('age-keygen', '--version');
/** A passphrase is asked on a terminal alone; Python's standard library lends one. */
const terminal = there('python3', '--version');
if (!age) process.stderr.write('SKIPPED: sealed backups against `age`: it is not on this machine.\n');
else if (!terminal) process.stderr.write('SKIPPED: passphrases of `age`: they need a terminal, which python3 would lend.\n');

const phrase = 'amalgam under a stone 1887';

/** Runs `age` on a terminal of its own and types the passphrase as often as it is asked for. */
function ageWithPhrase(words: readonly string[]): void {
  const script = `
import os, pty, select, sys
pid, fd = pty.fork()
if pid == 0:
    os.execvp('age', ['age'] + sys.argv[2:])
while True:
    try:
        said = os.read(fd, 1000)
    except OSError:
        break
    if not said:
        break
    if b'passphrase' in said.lower() and b':' in said:
        os.write(fd, sys.argv[1].encode() + b'\\n')
sys.exit(os.waitstatus_to_exitcode(os.waitpid(pid, 0)[1]))
`;
  execFileSync('python3', ['-c', script, phrase, ...words], { stdio: 'pipe', timeout: 100_000 });
}

/** Looks into a backup and restores it, as the window would. */
async function restoredFrom(source: Jobs['rehearse']['order'], asides: string): Promise<string> {
  const run = async <T>(job: Job) => valueIn<T>(await runJob(job));
  const { mark } = await run<Jobs['look']['done']>({ job: 'look', asides, order: { ...source, here: null } });
  const target = join(temporaryFolder(), 'restored');
  return (await run<Jobs['restore']['done']>({ job: 'restore', asides, order: { ...source, target, mark } })).unpacked;
}

const keys = () => {
  const text = execFileSync('age-keygen', { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] });
  return { text, recipient: /age1[a-z0-9]+/.exec(text)![0] };
};

describe.skipIf(!age)('a backup sealed to a key', () => {
  it('opens with age and its key file, and is a tar of the daybook that another tar unpacks', async () => {
    const { text, recipient } = keys();
    const { path, folder } = await backedUp({ sealing: { how: 'recipient', recipient } });
    const out = temporaryFolder();
    writeFileSync(join(out, 'key.txt'), text);
    execFileSync('age', ['-d', '-i', join(out, 'key.txt'), '-o', join(out, 'backup.tar'), path]);
    const unpacked = temporaryFolder();
    execFileSync('tar', ['-xf', join(out, 'backup.tar'), '-C', unpacked]);
    const { 'backup.json': manifest, ...files } = filesBelow(unpacked);
    expect(manifest).toBeDefined();
    expect(Object.keys(files).length).toBeGreaterThan(1);
    expect(files).toEqual(filesBelow(folder));
    expect(readFileSync(path).includes('Test Battery')).toBe(false);
  });

  it('that age sealed is restored here with the key file, and with no other', async () => {
    const { text, recipient } = keys();
    const { path, asides, folder } = await backedUp({ sealing: { how: 'none' } });
    const sealed = join(temporaryFolder(), 'made-with-age.tar.age');
    execFileSync('age', ['-r', recipient, '-o', sealed, path]);
    const source = { path: sealed, file: 'made-with-age.tar.age' };
    const restored = await restoredFrom({ ...source, opener: { identity: text } }, asides);
    expect(filesBelow(restored)).toEqual(filesBelow(folder));
    expect(readDaybook(restored)).toMatchObject({ ok: true, value: { notices: [], entries: { length: 3 } } });
    const look = (opener: Jobs['rehearse']['order']['opener']) =>
      runJob({ job: 'look', asides, order: { ...source, opener, here: null } }) as Promise<Result<unknown>>;
    expect(codesIn(await look({ identity: keys().text }))).toEqual(['backup-wrong-key']);
    expect(codesIn(await look({ identity: 'no key at all' }))).toEqual(['backup-identity']);
    expect(codesIn(await look({}))).toEqual(['backup-needs-key']);
  });

  it('that age wrote out as text is refused by name', async () => {
    const { recipient } = keys();
    const { path, asides } = await backedUp({ sealing: { how: 'none' } });
    const sealed = join(temporaryFolder(), 'text.age');
    execFileSync('age', ['-a', '-r', recipient, '-o', sealed, path]);
    const order = { path: sealed, file: 'text.age', opener: {}, here: null };
    expect(codesIn((await runJob({ job: 'look', asides, order })) as Result<unknown>)).toEqual(['backup-armored']);
  });
});

describe.skipIf(!age || !terminal)('a backup sealed with a passphrase', () => {
  it('opens with age and the passphrase', async () => {
    const { path, folder } = await backedUp({ sealing: { how: 'passphrase', passphrase: phrase } });
    const out = temporaryFolder();
    ageWithPhrase(['-d', '-o', join(out, 'backup.tar'), path]);
    const unpacked = temporaryFolder();
    execFileSync('tar', ['-xf', join(out, 'backup.tar'), '-C', unpacked]);
    const { 'backup.json': _, ...files } = filesBelow(unpacked);
    expect(files).toEqual(filesBelow(folder));
  });

  it('that age sealed is restored here with the passphrase, and with no other', async () => {
    const { path, asides, folder } = await backedUp({ sealing: { how: 'none' } });
    const sealed = join(temporaryFolder(), 'made-with-age.tar.age');
    ageWithPhrase(['-p', '-o', sealed, path]);
    const source = { path: sealed, file: 'made-with-age.tar.age' };
    const restored = await restoredFrom({ ...source, opener: { passphrase: phrase } }, asides);
    expect(filesBelow(restored)).toEqual(filesBelow(folder));
    const order = { ...source, opener: { passphrase: 'another one' }, here: null };
    expect(codesIn((await runJob({ job: 'look', asides, order })) as Result<unknown>)).toEqual(['backup-wrong-key']);
  });
});
