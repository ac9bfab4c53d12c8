/** Nothing that was answered as kept is ever lost, and a write that fails leaves the journal as it was. */
import { spawn, spawnSync } from 'node:child_process';
import {
  appendFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  symlinkSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readJournal } from '../../main/host/journal.ts';
import { appendEntry, desksFolder, journalPath, openJournal } from '../../main/host/journal-writer.ts';
import { bundle } from './bundle.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const desk = 'desk-one';

function bookWith(count: number): { folder: string; path: string } {
  const folder = temporaryFolder();
  mkdirSync(desksFolder(folder));
  for (let i = 1; i <= count; i++) expect(appendEntry(folder, desk, note(i), now)).toMatchObject({ ok: true });
  return { folder, path: journalPath(folder, desk) };
}

const problemOf = (result: { ok: boolean; problems?: readonly { code: string }[] }) => result.problems?.[0]?.code;

describe('appending', () => {
  it('makes the journal with the first entry, and chains every next one', () => {
    const { path } = bookWith(3);
    const journal = readJournal(readFileSync(path), desk);
    expect(journal.entries.map(({ n, id }) => [n, id])).toEqual([
      [1, 'note-000001'],
      [2, 'note-000002'],
      [3, 'note-000003'],
    ]);
    expect(journal.entries[1]?.prev).toBe(journal.entries[0]?.hash);
  });

  it('answers what a reader will find', () => {
    const { folder, path } = bookWith(0);
    const kept = appendEntry(folder, desk, note(1), now);
    expect(kept.ok && kept.value).toEqual(readJournal(readFileSync(path), desk).entries[0]);
  });

  it('keeps several entries at once, or none', () => {
    const { folder, path } = bookWith(1);
    const writer = openJournal(folder, desk);
    if (!writer.ok) throw new Error('not opened');
    expect(writer.value.append([note(2), note(3)], now)).toMatchObject({ ok: true });
    expect(writer.value.end()).toEqual({ entries: 3, endMark: readJournal(readFileSync(path), desk).endMark });
    writer.value.close();
    expect(problemOf(writer.value.append([note(4)], now))).toBe('journal-closed');
  });

  it('takes a clock that ran backwards: the order of the chain does not hang on it', () => {
    const { folder, path } = bookWith(1);
    expect(appendEntry(folder, desk, note(2), '2020-01-01T00:00:00+00:00').ok).toBe(true);
    expect(readJournal(readFileSync(path), desk).entries).toHaveLength(2);
  });

  it('sets a torn tail of its own journal aside, byte for byte, and goes on', () => {
    const { folder, path } = bookWith(3);
    const whole = readFileSync(path);
    truncateSync(path, whole.length - 20);
    const torn = readFileSync(path).subarray(readJournal(readFileSync(path), desk).goodBytes);
    expect(appendEntry(folder, desk, note(4), now)).toMatchObject({ ok: true, value: { n: 3 } });
    expect(readFileSync(join(desksFolder(folder), `${desk}.torn-3`))).toEqual(torn);
    const { fault, torn: still } = readJournal(readFileSync(path), desk);
    expect([fault, still]).toEqual([undefined, undefined]);
    appendFileSync(path, '{"torn');
    appendEntry(folder, desk, note(5), now);
    truncateSync(path, readFileSync(path).length - 1);
    appendEntry(folder, desk, note(6), now);
    expect(readdirSync(desksFolder(folder)).sort()).toEqual([
      `${desk}.jsonl`,
      `${desk}.torn-3`,
      `${desk}.torn-4`,
      `${desk}.torn-4-2`,
    ]);
  });

  it('writes nothing behind a broken chain, nor behind a newer program’s line', () => {
    const { folder, path } = bookWith(2);
    const bytes = readFileSync(path);
    bytes[30] = (bytes[30] ?? 0) ^ 1;
    writeFileSync(path, bytes);
    expect(appendEntry(folder, desk, note(3), now)).toMatchObject({
      ok: false,
      problems: [{ code: 'chain-broken', data: { line: 1 } }],
    });
    expect(readFileSync(path)).toEqual(bytes);
  });

  it('writes nothing more once something else has lengthened, replaced or removed the file', () => {
    for (const meddle of [
      (path: string) => appendFileSync(path, '\n'),
      (path: string) => {
        const bytes = readFileSync(path);
        writeFileSync(`${path}.new`, bytes);
        renameSync(`${path}.new`, path);
      },
    ]) {
      const { folder, path } = bookWith(2);
      const writer = openJournal(folder, desk);
      if (!writer.ok) throw new Error('not opened');
      meddle(path);
      const bytes = readFileSync(path);
      expect(problemOf(writer.value.append([note(3)], now))).toBe('journal-changed');
      expect(problemOf(writer.value.append([note(3)], now))).toBe('journal-changed');
      expect(readFileSync(path)).toEqual(bytes);
      writer.value.close();
    }
  });

  it('does not follow a journal that is a link to elsewhere', () => {
    const { folder, path } = bookWith(0);
    const elsewhere = join(temporaryFolder(), 'other.jsonl');
    writeFileSync(elsewhere, '');
    symlinkSync(elsewhere, path);
    expect(problemOf(appendEntry(folder, desk, note(1), now))).toBe('not-a-file');
    expect(readFileSync(elsewhere, 'utf8')).toBe('');
  });
});

describe('a disk that does not take it', () => {
  // permissions do not bind the superuser, whom build machines often run as: a file where the folder should be fails for everyone
  it('answers a problem when a file stands where the journals’ folder should be', () => {
    const folder = temporaryFolder();
    writeFileSync(desksFolder(folder), 'in the way');
    const kept = appendEntry(folder, desk, note(1), now);
    expect(['not-a-folder', 'already-there']).toContain(problemOf(kept));
    expect(readFileSync(desksFolder(folder), 'utf8')).toBe('in the way');
  });

  it('answers a problem when a folder stands where the journal should be', () => {
    const folder = temporaryFolder();
    mkdirSync(journalPath(folder, desk), { recursive: true });
    expect(problemOf(appendEntry(folder, desk, note(1), now))).toBe('not-a-file');
  });

  // Linux keeps /proc closed to everyone; where there is none, the root of the system is
  it('answers a problem in a folder the system keeps closed even to the superuser', () => {
    const kept = appendEntry('/proc/self', desk, note(1), now);
    expect(['no-permission', 'file-gone']).toContain(problemOf(kept));
  });
});

describe('a full disk', () => {
  // a limit on the size of a file stands in for the full disk: the write breaks off in the middle of a line in the same way
  it('breaks no line: what was answered is there, what failed is not, and there is no torn tail', async () => {
    const folder = temporaryFolder();
    mkdirSync(desksFolder(folder));
    const script = await bundle('keeps-notes.ts', temporaryFolder());
    const limited = `trap '' XFSZ; ulimit -f 16; exec "$0" "$@"`;
    const child = spawnSync('bash', ['-c', limited, process.execPath, script, folder, desk], { encoding: 'utf8' });
    expect(child.stderr).toContain('"code":"disk-full"');
    const bytes = readFileSync(journalPath(folder, desk));
    const { entries, fault, torn } = readJournal(bytes, desk);
    expect(bytes.length).toBeGreaterThan(8_000);
    expect([fault, torn]).toEqual([undefined, undefined]);
    expect(entries.map((entry) => entry.id)).toEqual(child.stdout.trim().split('\n'));
    expect(appendEntry(folder, desk, note(entries.length + 1), now)).toMatchObject({ ok: true });
  });
});

describe('a process killed in the middle of keeping', () => {
  it('has lost nothing it answered, after any of twelve kills', async () => {
    const folder = temporaryFolder();
    mkdirSync(desksFolder(folder));
    const script = await bundle('keeps-notes.ts', temporaryFolder());
    const answered: string[] = [];
    for (let round = 0; round < 12; round++) {
      const child = spawn(process.execPath, [script, folder, desk], { stdio: ['ignore', 'pipe', 'pipe'] });
      let out = '';
      let errors = '';
      let answers = false;
      child.stdout.on('data', (part: Buffer) => {
        out += part.toString('utf8');
        // from the first answer on, at a moment that differs from round to round
        if (!answers) setTimeout(() => child.kill('SIGKILL'), 7 + round * 9);
        answers = true;
      });
      child.stderr.on('data', (part: Buffer) => {
        errors += part.toString('utf8');
      });
      const signal = await new Promise((resolve) => child.on('close', (_, how) => resolve(how)));
      expect([signal, errors]).toEqual(['SIGKILL', '']);
      const lines = out.split('\n');
      lines.pop();
      expect(lines.length).toBeGreaterThan(0);
      answered.push(...lines);
      const journal = readJournal(readFileSync(journalPath(folder, desk)), desk);
      expect(journal.fault).toBeUndefined();
      const kept = new Set(journal.entries.map((entry) => entry.id));
      expect(answered.filter((id) => !kept.has(id))).toEqual([]);
    }
    expect(new Set(answered).size).toBe(answered.length);
  });
});
