/** For the outsider: the export holds every field of every entry, and the ways of VERIFY.md, run as they stand there, verify it and find a changed byte. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import type { Entry } from '../../app/core/entry.ts';
import { kinds } from '../../app/core/kinds/index.ts';
import { placeNames } from '../../app/words/places.ts';
import { sums, verifyShell } from '../../app/words/verify.ts';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { BookMaker, stated } from '../core/book-maker.ts';
import golden from '../golden/drafts.json' with { type: 'json' };
import { called } from './called.ts';
import { writeBook } from './written-book.ts';

let home: string;
let sample: string;
let out: string;
beforeAll(async () => {
  home = mkdtempSync(join(tmpdir(), 'outsider-'));
  sample = join(home, 'sample');
  out = join(home, 'away');
  expect((await called(['sample', sample])).code).toBe(0);
  expect((await called(['export', sample, '--out', out, '--all'])).code).toBe(0);
});
afterAll(() => rmSync(home, { recursive: true, force: true }));

const table = (file: string): Record<string, string>[] =>
  Papa.parse<Record<string, string>>(readFileSync(file, 'utf8').trimEnd(), { header: true }).data;

/** Leaves of a value with their paths, by code of this test alone. */
function leaves(value: unknown, path: string): [string, string][] {
  if (Array.isArray(value)) return value.length === 0 ? [[path, '[]']] : value.flatMap((v, i) => leaves(v, `${path}[${i}]`));
  if (value !== null && typeof value === 'object')
    return Object.entries(value).flatMap(([k, v]) => leaves(v, path === '' ? k : `${path}.${k}`));
  return [[path, value === null ? '' : String(value)]];
}
/** A cell that begins like a formula carries an apostrophe. */
const plain = (cell: string | undefined): string | undefined =>
  /^'[=+\-@\t\r＝＋－＠]/.test(cell ?? '') ? cell?.slice(1) : cell;

const asEntry = (draft: object, i: number): Entry =>
  ({
    ...draft,
    format: 1,
    desk: 'desk-golden',
    n: i + 1,
    prev: '',
    written: '2026-04-20T17:00:00+13:00',
    hash: '',
  }) as unknown as Entry;

describe('an export', () => {
  it('has every field of an entry of every kind in the table of its kind', async () => {
    expect([...new Set(golden.map((d) => d.kind))].sort()).toEqual(Object.keys(kinds).sort());
    const dir = join(home, 'golden');
    const away = join(home, 'golden-away');
    writeBook(dir, golden.map(asEntry));
    const ran = await called(['export', dir, '--out', away, '--all']);
    expect([ran.code, ran.err]).toEqual([0, '']);
    const read = readDaybook(dir);
    const kept = read.ok ? read.value.entries : [];
    expect(kept.length).toBe(golden.length);
    let fields = 0;
    for (const entry of kept) {
      const row = table(join(away, `${entry.kind}.csv`)).find((r) => r.id === entry.id);
      const { kind: _, ...rest } = entry;
      for (const [path, text] of leaves(rest, '')) {
        expect([entry.id, path, plain(row?.[path])]).toEqual([entry.id, path, text]);
        fields += 1;
      }
    }
    expect(fields).toBeGreaterThan(golden.length * 12);
  });

  it('keeps what a correction changed, as it was first written', async () => {
    const book = BookMaker.site();
    const receipt = book.add('receipt one', 'receipt', { vessel: book.bottle, weight: stated('50', '0.1'), way: 'given' });
    book.add('fix it', 'correction', {
      corrects: receipt,
      body: { vessel: book.bottle, weight: stated('55', '0.1'), way: 'given' },
      why: 'Misread.',
    });
    const dir = join(home, 'corrected');
    writeBook(dir, book.entries);
    await called(['export', dir, '--out', join(home, 'corrected-away')]);
    const rows = table(join(home, 'corrected-away', 'as-first-written.csv'));
    expect(rows.filter((r) => r.field === 'body.weight.mass').map((r) => [r.id, r.why, r.value])).toEqual([
      [receipt, 'corrected', '50 g'],
    ]);
    expect(new Set(rows.map((r) => r.id))).toEqual(new Set([receipt]));
  });

  it('leaves out where a bar is kept unless it is asked for, and the journal still verifies round the gap', async () => {
    const book = BookMaker.site();
    const melt = book.add('melt', 'melt', {
      sponges: [],
      added: [{ key: 'a', label: 'old metal', weight: stated('51', '0.1') }],
      bars: [{ key: '1', label: 'Bar 1', weight: stated('50', '0.1') }],
    });
    const put = book.add('put away', 'bar-kept', { bar: `${melt}/1`, place: 'behind the third stamp' });
    book.add('moved it', 'correction', {
      corrects: put,
      body: { bar: `${melt}/1`, place: 'under the third stamp' },
      why: 'Misread.',
    });
    book.add('last of all', 'note', { text: 'after it' });
    const dir = join(home, 'hiding');
    writeBook(dir, book.entries);
    for (const [name, more] of [
      ['closed', []],
      ['open', ['--all']],
    ] as const) {
      const away = join(home, `hiding-${name}`);
      expect((await called(['export', dir, '--out', away, ...more])).code).toBe(0);
      const texts = readdirSync(away).map((f) => readFileSync(join(away, f), 'utf8'));
      expect(texts.some((t) => t.includes('third stamp'))).toBe(name === 'open');
      const ran = spawnSync('python3', ['-', join(away, 'journal-desk-one.jsonl')], {
        input: scriptOf('verify.py'),
        encoding: 'utf8',
      });
      expect([ran.status, ran.stderr]).toEqual([0, '']);
      expect(ran.stdout.includes('2 of them withheld')).toBe(name === 'closed');
      const shell = spawnSync('sh', ['-s', join(away, 'journal-desk-one.jsonl')], {
        input: scriptOf('verify.sh'),
        encoding: 'utf8',
      });
      expect([shell.status, shell.stdout.split(', end mark ')[1]]).toEqual([0, ran.stdout.split('end mark ')[1]]);
    }
  });

  it('copies every journal byte for byte, and its manifest holds every byte of every file', () => {
    const desk = readdirSync(join(sample, 'desks'))[0] ?? '';
    expect(readFileSync(join(out, `journal-${desk}`))).toEqual(readFileSync(join(sample, 'desks', desk)));
    const manifest = JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8'));
    const told = [...manifest.files, ...manifest.others];
    expect([...told.map((f: { file: string }) => f.file), 'manifest.json'].sort()).toEqual(readdirSync(out).sort());
    for (const { file, sha256 } of told)
      expect([
        file,
        createHash('sha256')
          .update(readFileSync(join(out, file)))
          .digest('hex'),
      ]).toEqual([file, sha256]);
  });
});

/** Whether a program is here; says aloud where it is not. */
function needs(program: string, skip: (note: string) => never): void {
  if (spawnSync('sh', ['-c', `command -v ${program}`]).status === 0) return;
  console.warn(`SKIPPED: ${program} is not installed here, so its way of VERIFY.md was not run`);
  skip(`${program} is not installed here`);
}

/** The block of VERIFY.md that is to be saved under this name, exactly as it stands in the file. */
function scriptOf(name: string): string {
  const text = readFileSync(join(out, 'VERIFY.md'), 'utf8');
  const at = text.indexOf(`Save as ${name}:`);
  const code = text.slice(at).split('```\n')[1];
  if (at < 0 || code === undefined) throw new Error(`VERIFY.md has no ${name}`);
  return code;
}

const journal = () => readdirSync(out).find((f) => f.startsWith('journal-')) ?? '';
const endMark = (): string => JSON.parse(readFileSync(join(out, 'manifest.json'), 'utf8')).end_marks[0].end_mark;

/** Ways of verifying: a command on a journal. */
const ways = [
  { name: 'Python', program: 'python3', file: 'verify.py', script: () => scriptOf('verify.py'), run: 'python3' },
  { name: 'a shell with sha256sum', program: 'sha256sum', file: 'verify.sh', script: () => scriptOf('verify.sh'), run: 'sh' },
  { name: 'a shell with openssl', program: 'openssl', file: 'openssl.sh', script: () => verifyShell(sums[1]), run: 'sh' },
];

describe.each(ways)('VERIFY.md, the way with $name', ({ program, file, script, run }) => {
  /** A short journal keeps the shell quick: the chain of its first lines is whole by itself. */
  const lines = 25;
  const verified = (bytes: Buffer): { status: number | null; said: string } => {
    const path = join(home, 'tried.jsonl');
    writeFileSync(join(home, file), script());
    writeFileSync(path, bytes);
    const { status, stdout, stderr } = spawnSync(run, [join(home, file), path], { encoding: 'utf8' });
    return { status, said: `${stdout}${stderr}` };
  };
  const first = (): Buffer => {
    const text = readFileSync(join(out, journal()), 'utf8').split('\n').slice(0, lines);
    return Buffer.from(`${text.join('\n')}\n`);
  };
  const markOf = (bytes: Buffer): string => JSON.parse(bytes.toString('utf8').trimEnd().split('\n').at(-1) ?? '').hash;

  it('verifies a whole journal and prints the end mark that the manifest has', ({ skip }) => {
    needs(program, skip);
    const whole = readFileSync(join(out, journal()));
    const count = whole.toString('utf8').trimEnd().split('\n').length;
    const bytes = run === 'python3' ? whole : first();
    const { status, said } = verified(bytes);
    expect(status).toBe(0);
    expect(said).toContain(`${run === 'python3' ? count : lines} entries, end mark ${markOf(bytes)}`);
    if (run === 'python3') expect(said).toContain(endMark());
  });

  it('finds a changed byte wherever it stands, and names its line', ({ skip }) => {
    needs(program, skip);
    const bytes = first();
    const step = Math.floor(bytes.length / 23);
    for (let at = 3; at < bytes.length; at += step) {
      const changed = Buffer.from(bytes);
      if (changed[at] === 10) continue;
      changed[at] = changed[at] === 0x39 ? 0x38 : 0x39;
      if (changed.equals(bytes)) continue;
      const { status, said } = verified(changed);
      const line = bytes.subarray(0, at).toString('latin1').split('\n').length;
      expect([at, status]).toEqual([at, 1]);
      expect(said).toContain(`line ${line} `);
    }
  });

  it('finds a line taken out and two changed about, and shows a cut tail by another end mark', ({ skip }) => {
    needs(program, skip);
    const bytes = first();
    const all = bytes.toString('utf8').trimEnd().split('\n');
    const joined = (some: readonly string[]) => Buffer.from(`${some.join('\n')}\n`);
    expect(verified(joined(all.filter((_, i) => i !== 4)))).toMatchObject({
      status: 1,
      said: expect.stringContaining('line 5 '),
    });
    const about = [...all.slice(0, 5), all[6] ?? '', all[5] ?? '', ...all.slice(7)];
    expect(verified(joined(about))).toMatchObject({ status: 1, said: expect.stringContaining('line 6 ') });
    const cut = verified(joined(all.slice(0, -1)));
    expect(cut.status).toBe(0);
    expect(cut.said).not.toContain(markOf(bytes));
    expect(cut.said).toContain(JSON.parse(all.at(-2) ?? '').hash);
  });
});

describe('VERIFY.md, the stocks', () => {
  /** Grams by name of place, as the book has them. */
  const ours = (): Map<string, bigint> => {
    const read = readDaybook(sample);
    if (!read.ok) throw new Error('the sample reads');
    const book = readBook(read.value.entries);
    const { all } = book.movements;
    const names = placeNames(
      book,
      all.flatMap((m) => [m.from, m.to]),
    );
    const held = [...stocksAt(all, null)].map(([place, { ug }]) => [names.get(place) ?? place, BigInt(ug)] as const);
    return new Map(held.filter(([, ug]) => ug !== 0n).sort());
  };
  const micrograms = (grams: string): bigint => {
    const [whole = '', part = ''] = grams.replace('-', '').split('.');
    const ug = BigInt(whole) * 1_000_000n + BigInt(part.padEnd(6, '0'));
    return grams.startsWith('-') ? -ug : ug;
  };

  it('summed by awk are those of the book in every place, to the microgram', ({ skip }) => {
    needs('awk', skip);
    writeFileSync(join(home, 'stocks.awk'), scriptOf('stocks.awk'));
    const { stdout, status } = spawnSync('awk', ['-f', join(home, 'stocks.awk'), join(out, 'movements.csv')], {
      encoding: 'utf8',
    });
    expect(status).toBe(0);
    const theirs = stdout
      .trimEnd()
      .split('\n')
      .map((line) => {
        const [grams = '', place = ''] = line.split('\t');
        return [place, micrograms(grams.replace(' g', ''))] as const;
      });
    expect(theirs.length).toBeGreaterThan(5);
    expect(new Map([...theirs].sort())).toEqual(ours());
  });

  it.for(['ledger', 'hledger'])('summed by %s from the journal that the recipe makes are the same', (program, { skip }) => {
    needs(program, skip);
    needs('python3', skip);
    writeFileSync(join(home, 'journal.py'), scriptOf('journal.py'));
    const made = spawnSync('python3', [join(home, 'journal.py')], { cwd: out, encoding: 'utf8' });
    expect([made.status, made.stderr]).toEqual([0, '']);
    writeFileSync(join(home, 'movements.journal'), made.stdout);
    const { stdout, status, stderr } = spawnSync(program, ['-f', join(home, 'movements.journal'), 'balance', '--flat'], {
      encoding: 'utf8',
      env: { PATH: process.env.PATH, HOME: home, LC_ALL: 'C.UTF-8' },
    });
    expect([status, stderr]).toEqual([0, '']);
    const lines = stdout.split('\n').flatMap((line) => {
      const [, grams = '', place = ''] = /^\s*(-?[\d.]+) g {2}(.+)$/.exec(line) ?? [];
      return place === '' ? [] : [[place, micrograms(grams)] as const];
    });
    const named = (place: string) => place.replace(/[^\p{L}\p{N}_.,-]+/gu, ' ').trim();
    expect(new Map([...lines].sort())).toEqual(new Map([...ours()].map(([place, ug]) => [named(place), ug] as const).sort()));
  });

  it('are explained beside an export in words, with no script missing', () => {
    for (const name of ['verify.py', 'verify.sh', 'stocks.awk', 'journal.py']) expect(scriptOf(name).length).toBeGreaterThan(100);
    expect(existsSync(join(out, 'VERIFY.md'))).toBe(true);
    expect(readFileSync(join(out, 'VERIFY.md'), 'utf8')).toContain(endMark());
  });
});
