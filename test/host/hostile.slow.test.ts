/**
 * Hostile bytes before everything the host reads: questions of a page, lines and journals, daybook.json, the installation's own files, pictures.
 * A hundred thousand lines, and as many bodies for the questions together; of whole journals and of what lies on the disk fewer. None throws, none
 * hangs, and what is refused writes nothing: the folders are hashed before and after.
 */
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import type { Question } from '../../app/contract.ts';
import { firstPrev } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { isCanonical } from '../../main/host/canonical.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { folderFor } from '../../main/host/folder-name.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { readJournal } from '../../main/host/journal.ts';
import { journalPath } from '../../main/host/journal-writer.ts';
import { readLine } from '../../main/host/line.ts';
import { takeLock } from '../../main/host/lock.ts';
import golden from '../golden/drafts.json' with { type: 'json' };
import { aHost, bookIn } from './a-host.ts';
import { keeper, note } from './drafts.ts';
import { temporaryFolder } from './folder.ts';
import { anyText, byBytes, byShapes, casesEach, dice, mutated, oneLater, printOf, seed, shapesEach, shapesOf } from './mutate.ts';

// many cases take their time where other things run beside them; a single one that hangs is caught by itself
vi.setConfig({ testTimeout: 240_000 });

const goldenText = readFileSync(new URL('../golden/desk-golden.jsonl', import.meta.url), 'utf8');
const goldenLines = goldenText.trimEnd().split('\n');
const desk = 'desk-golden';

/** Of what is slow because it lies on the disk: a few are enough here, since each is flushed and hashed. */
const onDisk = 500;

describe('a journal', () => {
  it('line that was changed is never taken for an entry', () => {
    const places = goldenLines.map((line, i) => ({
      line,
      place: { desk, n: i + 1, prev: i === 0 ? firstPrev : (JSON.parse(goldenLines[i - 1]!) as { hash: string }).hash },
    }));
    const known = new Set(goldenLines);
    const read = (text: string, i: number) => {
      const got = readLine(text, places[i % places.length]!.place);
      if (got.is === 'entry' && !known.has(text)) throw new Error('a changed line was taken');
      return got;
    };
    let i = 0;
    const done = byBytes('line', goldenLines, (bytes) => read(bytes.toString('utf8'), i++));
    const values = goldenLines.map((line) => JSON.parse(line) as unknown);
    const shapes = byShapes('line', shapesOf(values), (value) => read(JSON.stringify(value) ?? '', i++));
    expect(done + shapes).toBe(casesEach);
  });

  it('of any bytes is read up to its first fault, and what is read stood there before', () => {
    // three lines are enough to cut, double and turn; a whole golden journal would only be slower
    const samples = [0, 9, 20].map((from) => Buffer.from(`${goldenLines.slice(from, from + 3).join('\n')}\n`));
    const known = new Set(goldenLines.map((line) => (JSON.parse(line) as { hash: string }).hash));
    const read = (bytes: Uint8Array) => {
      const got = readJournal(bytes, desk);
      if (got.goodBytes > bytes.length || got.entries.some((e) => !known.has(e.hash))) throw new Error('an entry nobody wrote');
      return got;
    };
    // its lines have had their hundred thousand above: here is what only a file of several can be
    const [some, shapes] = [casesEach / 5, casesEach / 20];
    const done = byBytes('journal', samples, read, some);
    expect(done + byShapes('journal', fc.uint8Array({ maxLength: 200 }), read, shapes)).toBe(some + shapes);
  });

  it('canonical text is told from any other without a fall', () => {
    const values = goldenLines.slice(0, 12).map((line) => JSON.parse(line) as Record<string, unknown>);
    const check = (value: unknown) =>
      value !== null && typeof value === 'object' && !Array.isArray(value)
        ? isCanonical(JSON.stringify(value), value as Record<string, unknown>)
        : null;
    expect(byShapes('canonical', shapesOf(values), check)).toBe(shapesEach);
  });
});

describe('a folder', () => {
  it('name never becomes a path, whatever it says', () => {
    const make = (name: string) => {
      const got = folderFor(name);
      if (!got.ok) return got.problems.map(problemText);
      if (/[/\\:.\p{C}]/u.test(got.value) || got.value.trim() !== got.value) throw new Error(`it became ${got.value}`);
      return got.value;
    };
    const samples = ['Upper battery', '../../etc', 'C:\\windows', 'aux', 'Merrow Spur, 1889', '\u202egnp.exe', 'a/../../b'];
    const done = byBytes('folder name', samples, (bytes) => make(bytes.toString('utf8')));
    expect(done + byShapes('folder name', anyText, make)).toBe(casesEach);
  });

  it('is read, or refused in words, as it lies on the disk, and nothing in it is written', () => {
    const folder = join(temporaryFolder(), 'book');
    if (!makeDaybook(folder, 'Upper Battery').ok) throw new Error('no daybook was made');
    writeFileSync(join(folder, 'desks', `${desk}.jsonl`), `${goldenLines.slice(0, 3).join('\n')}\n`);
    const paths = ['daybook.json', join('desks', `${desk}.jsonl`)].map((name) => join(folder, name));
    const sound = paths.map((path) => readFileSync(path));
    let i = 0;
    const read = (bytes: Buffer) => {
      const [path, other] = i++ % 2 === 0 ? [paths[0]!, 1] : [paths[1]!, 0];
      writeFileSync(paths[other]!, sound[other]!);
      writeFileSync(path, bytes);
      const before = printOf(folder);
      const got = readDaybook(folder);
      if (printOf(folder) !== before) throw new Error('reading wrote');
      return got.ok ? got.value.entries.length : got.problems.map(problemText);
    };
    expect(byBytes('folder', sound, read, onDisk)).toBe(onDisk);
  });
});

describe('the installation', () => {
  it('never makes up another desk where its file is spoiled, and keeps what it cannot read', () => {
    const home = temporaryFolder();
    const first = openInstallation(home);
    if (!first.ok) throw new Error('no installation');
    const path = join(home, 'desk.json');
    const sound = readFileSync(path);
    byBytes(
      'desk.json',
      [sound],
      (bytes) => {
        writeFileSync(path, bytes);
        const here = openInstallation(home);
        if (!readFileSync(path).equals(bytes)) throw new Error('it was written over');
        return here.ok ? here.value.desk : here.problems.map(problemText);
      },
      onDisk,
    );
    writeFileSync(path, sound);
    const recents = join(home, 'recents.json');
    byBytes(
      'recents.json',
      ['{"recents":[{"key":"abc","name":"Upper","folder":"/nowhere/book"}]}\n'],
      (bytes) => {
        writeFileSync(recents, bytes);
        const told = first.value.recents();
        const aside = readdirSync(home).filter((name) => name.includes('.unreadable-'));
        const left = existsSync(recents) ? recents : join(home, aside[0] ?? 'none');
        if (!readFileSync(left).equals(bytes)) throw new Error('it is gone');
        for (const name of aside) rmSync(join(home, name));
        return told.length;
      },
      onDisk,
    );
    const again = openInstallation(home);
    expect(again.ok && again.value.desk).toBe(first.value.desk);
  });

  it('takes no lock from a file it cannot understand', () => {
    const path = join(temporaryFolder(), 'book.lock');
    const sample = JSON.stringify({ pid: process.pid, host: 'elsewhere', started: '1' });
    writeFileSync(path, sample);
    const got = takeLock(path);
    expect([got.ok, readFileSync(path, 'utf8')]).toEqual([false, sample]);
  });
});

describe('a question', () => {
  /** Of every question: the nine and the addresses are one reader of bodies before them all. */
  const casesOfBody = Math.ceil(casesEach / 10);
  /** The bodies a window sends, or nearly: none of them is one that would be taken and kept. */
  const nobody = { ...note(1), by: 'nobody-known' };
  const samples: Readonly<Record<Question, readonly unknown[]>> = {
    state: [{}],
    close: [{}],
    import: [
      { kind: 'note', text: 'text\nread of an old book\n', mapping: { columns: [] } },
      { kind: 'crushing', text: '', mapping: {} },
    ],
    entries: [{}],
    open: [{ make: 'Upper battery' }, { recent: 'aaaaaaaaaaaa' }, { sample: true }],
    keep: [nobody, ...golden.slice(0, 30).map((draft) => ({ ...draft, by: 'nobody-known' }))],
    evidence: [],
    'close-period': [{ id: 'closing-one', happened: '2026-03-31T12:00:00+13:00', by: 'nobody-known', closing: 'count-one' }],
    lock: [{}],
    unlock: [{ person: 'keeper-one', passphrase: 'four words of one\u2019s own' }],
    'lock-after': [{ minutes: null }],
    passphrase: [{ person: 'nobody-known', before: 'it was another', after: 'four words of one\u2019s own' }],
    signatures: [{}],
    issued: [{ closing: 'closing-one', file: 'statement' }],
    backups: [{}],
    'backup-place': [{ place: 'aaaaaaaaaaaaaaaa' }],
    'backup-seal': [
      { how: 'none' },
      { how: 'passphrase', passphrase: 'several words' },
      { how: 'recipient', recipient: 'age1qqqq' },
    ],
    'backup-key': [{}],
    'backup-now': [{}],
    'backup-rehearse': [{}, { opener: { identity: 'AGE-SECRET-KEY-1QQQQ' } }],
    'backup-bring': [],
    'backup-look': [{ from: 'aaaaaaaaaaaaaaaa', opener: { passphrase: 'several words' } }],
    restore: [{ look: 'aaaaaaaaaaaa' }],
    paper: [{ name: 'run-sheet', id: 'charge-000001', from: '2026-03-01', to: '2026-03-31', job: 'job-000001' }],
    'paper-progress': [{ job: 'job-000001' }],
    'paper-stop': [{ job: 'job-000001' }],
  };
  const files = [
    '<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>',
    '<html>',
    'GIF89a',
    'PK\u0003\u0004',
    '\u007fELF',
    '%PD',
  ];
  const octets = { 'content-type': 'application/octet-stream' };

  /** What every answer must be: JSON of ours, or bytes; never a failure nobody foresaw. */
  async function judged(answer: Response): Promise<boolean> {
    if (answer.status >= 500) throw new Error(`it failed: ${answer.status} ${await answer.text()}`);
    if (!(answer.headers.get('content-type') ?? '').startsWith('application/json')) return true;
    const said = (await answer.json()) as { ok: boolean; problems?: Problem[] };
    for (const p of said.problems ?? []) if (problemText(p) === '') throw new Error(`no words for ${p.code}`);
    return said.ok;
  }

  it.each(Object.keys(samples) as Question[])(
    '%s with any body is answered, and what is refused is written nowhere',
    async (name) => {
      // where nothing can be made, a name that happens to be taken makes nothing either
      const documents = join(temporaryFolder(), 'file');
      writeFileSync(documents, '');
      const { ask, post, options } = aHost(name === 'open' || name === 'close' ? { documents } : {});
      let folder = options.home;
      let journal: string | null = null;
      if (name === 'keep' || name === 'entries' || name === 'evidence' || name === 'paper' || name === 'state') {
        const book = bookIn(await ask('open', { make: 'Battery' }));
        await ask('keep', keeper);
        folder = book.folder;
        journal = journalPath(folder, book.ownDesk);
      }
      // the installation's own files are made with the first question
      await ask('state');
      const before = [printOf(folder), printOf(options.home)];
      const lines = journal === null ? '' : readFileSync(journal, 'utf8');
      const bytes = name === 'evidence' || name === 'backup-bring';
      const inputs = bytes ? files : samples[name].map((sample) => JSON.stringify(sample));
      const made = inputs.map((input) => Buffer.from(input, 'latin1'));
      const headers: Record<string, string> = bytes ? octets : {};
      const roll = dice(seed);
      const shapes = fc.sample(shapesOf(samples[name].length > 0 ? samples[name] : files), {
        seed,
        numRuns: Math.ceil(casesOfBody / 5),
      });
      let taken = 0;
      for (let i = 0; i < casesOfBody; i++) {
        const shape = shapes[i];
        const body = shape === undefined ? mutated(made[i % made.length]!, roll) : Buffer.from(JSON.stringify(shape) ?? '');
        await oneLater(name, `case ${i} of its bodies`, body, async () => {
          if ((await judged(await post(`/ask/${name}`, body, headers))) && (name === 'keep' || name === 'evidence')) taken++;
        });
      }
      if (taken === 0) expect([printOf(folder), printOf(options.home)]).toEqual(before);
      // the few that turned out to be true entries or files were kept, and nothing beside them
      const now = journal === null ? '' : readFileSync(journal, 'utf8');
      expect(now.startsWith(lines)).toBe(true);
      const more = now.slice(lines.length).split('\n').length - 1;
      const kept = name === 'evidence' ? readdirSync(join(folder, 'evidence')).length : more;
      expect(kept).toBeLessThanOrEqual(taken);
      expect(taken).toBeLessThan(casesOfBody / 100);
    },
  );

  it('to any address is answered, and writes nothing', async () => {
    const { get, post, ask, options } = aHost();
    const { folder } = bookIn(await ask('open', { make: 'Battery' }));
    const before = [printOf(folder), printOf(options.home)];
    const roll = dice(seed);
    const addresses = ['/', '/assets/start.js', `/evidence/${'a'.repeat(64)}.png`, '/ask/state', '/ask/../daybook.json'];
    for (let i = 0; i < casesOfBody; i++) {
      const address = `/${mutated(Buffer.from(addresses[i % addresses.length]!), roll).toString('latin1')}`;
      if (!URL.canParse(`http://127.0.0.1:4711${address}`)) continue;
      await oneLater('address', `case ${i}`, address, async () => {
        const answer = await (i % 2 === 0 ? get(address) : post(address, ''));
        if (answer.status === 500) throw new Error('it failed');
      });
    }
    expect([printOf(folder), printOf(options.home)]).toEqual(before);
  });
});
