/** `check` and `join` over folders that several desks write in: what is late, forked or another daybook, by exit code, desk and line. */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, it } from 'vitest';
import { firstPrev } from '../../app/core/entry.ts';
import { lineFor } from '../../main/host/line.ts';
import { note, now } from '../host/drafts.ts';
import { temporaryFolder } from '../host/folder.ts';
import { problemsIn } from './built.ts';
import { called } from './called.ts';

let home: string;
let dir: string;
let other: string;

const daybook = (...args: string[]) => called(args);

/** Lines of a desk, each with its newline; from `fork` on another text. */
function lines(desk: string, count: number, fork = count + 1): string[] {
  let prev = firstPrev;
  return Array.from({ length: count }, (_, i) => {
    const { entry, line } = lineFor(note(i + 1, i + 1 < fork ? 'as it was' : 'written elsewhere'), { desk, n: i + 1, prev }, now);
    prev = entry.hash;
    return `${line}\n`;
  });
}

const put = (folder: string, name: string, text: readonly string[]) => writeFileSync(join(folder, 'desks', name), text.join(''));

const everything = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((file) => file.isFile())
    .map((file) => [file.name, readFileSync(join(file.parentPath, file.name), 'latin1')]);

beforeEach(async () => {
  home = temporaryFolder();
  process.env.DAYBOOK_HOME = join(home, 'state');
  dir = join(home, 'book');
  other = join(home, 'other');
  await daybook('new', dir, '--site', 'Upper battery');
  cpSync(dir, other, { recursive: true });
  return () => {
    delete process.env.DAYBOOK_HOME;
  };
});

describe('check', () => {
  it('says of a line that is not here that it is late or removed, and counts what is before it', async () => {
    put(dir, 'desk-one.jsonl', lines('desk-one', 5).toSpliced(2, 1));
    const { code, out, err } = await daybook('check', dir, '--json');
    expect(code).toBe(1);
    expect(JSON.parse(out)).toMatchObject({
      entries: 2,
      faults: [{ desk: 'desk-one', line: 3, problem: 'line 3 is not here: not delivered yet, or removed' }],
      notices: [],
    });
    expect(problemsIn(err)[0]?.problem).toContain('Desk desk-one, line 3 is not here: not delivered yet, or removed');
  });

  it('names a fork by desk and line, shows both ways on and counts neither', async () => {
    put(dir, 'desk-one.jsonl', lines('desk-one', 4));
    put(dir, 'desk-one (1).jsonl', lines('desk-one', 3, 3));
    const { code, out, err } = await daybook('check', dir, '--json');
    expect(code).toBe(1);
    const { entries, faults } = JSON.parse(out);
    expect(entries).toBe(2);
    expect(faults).toMatchObject([{ desk: 'desk-one', line: 3 }]);
    expect(faults[0].branches.map((b: { lines: number }) => b.lines).sort()).toEqual([1, 2]);
    expect(faults[0].branches[0].entries[0]).toMatchObject({ n: 3, id: 'note-000003', kind: 'note' });
    expect(problemsIn(err)[0]?.problem).toContain('Desk desk-one, line 3');
    const text = await daybook('check', dir);
    for (const { end_mark } of faults[0].branches) expect(text.out).toContain(end_mark);
  });
});

describe('what is worked out over a part of the record', () => {
  const cases = [
    [
      'a fork',
      () => {
        put(dir, 'desk-one.jsonl', lines('desk-one', 4));
        put(dir, 'desk-one (1).jsonl', lines('desk-one', 3, 3));
      },
    ],
    ['lines that are not here', () => put(dir, 'desk-one.jsonl', lines('desk-one', 5).toSpliced(2, 1))],
  ] as const;
  it.each(cases)(
    'says so on standard error, in the account, in the manifest and first among the reservations of the paper: %s',
    async (_, made) => {
      made();
      const calls = [
        ['account', dir, '--json'],
        ['movements', dir, '--csv'],
        ['export', dir, '--out', join(home, 'taken')],
        ['paper', dir, 'mercury-account', '--out', join(home, 'account.pdf')],
      ];
      const ended = await Promise.all(calls.map((call) => daybook(...call)));
      for (const { code, err } of ended) {
        expect(code).toBe(0);
        const told = err
          .trimEnd()
          .split('\n')
          .map((line) => JSON.parse(line).notice);
        expect(told).toHaveLength(1);
        expect(told[0]).toMatch(/desk desk-one.*up to line 2 only/);
      }
      expect(JSON.parse(ended[0]?.out ?? '').reservations[0]).toMatchObject({
        code: 'desk-in-part',
        text: expect.stringContaining('line 2 only'),
      });
      const manifest = JSON.parse(readFileSync(join(home, 'taken', 'manifest.json'), 'utf8'));
      expect(manifest.left_out).toEqual([expect.stringContaining('line 2 only')]);
      const printed = execFileSync('pdftotext', ['-layout', join(home, 'account.pdf'), '-'], { encoding: 'utf8' });
      expect(printed).toMatch(/1\.\s+(Two different lines|Lines of desk)[\s\S]*line\s+2\s+only/);
    },
  );

  it('says nothing of a record that is whole', async () => {
    put(dir, 'desk-one.jsonl', lines('desk-one', 4));
    const { code, out, err } = await daybook('account', dir, '--json');
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(out).reservations.map((r: { code: string }) => r.code)).not.toContain('desk-in-part');
  });
});

describe('join', () => {
  it('prints what came in, and the second time that nothing is left to bring', async () => {
    put(dir, 'desk-one.jsonl', lines('desk-one', 2));
    put(other, 'desk-one.jsonl', lines('desk-one', 4));
    put(other, 'desk-two.jsonl', lines('desk-two', 1));
    const png = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1]);
    const file = `${createHash('sha256').update(png).digest('hex')}.png`;
    writeFileSync(join(other, 'evidence', file), png);
    const first = await daybook('join', dir, other);
    expect(first).toEqual({ code: 0, out: 'desk-one: 2 lines\ndesk-two: 1 line\nevidence: 1 file\n', err: '' });
    expect(readFileSync(join(dir, 'evidence', file))).toEqual(png);
    expect(JSON.parse((await daybook('check', dir, '--json')).out)).toMatchObject({ entries: 5, faults: [], notices: [] });
    const before = everything(dir);
    expect((await daybook('join', dir, other)).out).toContain('nothing');
    expect(everything(dir)).toEqual(before);
    // and back: both folders hold the same
    expect((await daybook('join', other, dir)).out).toContain('nothing');
  });

  it('of a broken record ends with 1 and names desk and line, of another daybook with 2, and writes nothing', async () => {
    const four = lines('desk-one', 4);
    put(dir, 'desk-one.jsonl', four.slice(0, 1));
    put(other, 'desk-one.jsonl', four.with(2, four[2]!.replace('as it was', 'tidied up')));
    const before = everything(dir);
    const broken = await daybook('join', dir, other);
    expect([broken.code, broken.out]).toEqual([1, '']);
    expect(problemsIn(broken.err)).toMatchObject([{ field: 'OTHER', problem: expect.stringContaining('desk desk-one, line 3') }]);
    const strange = join(home, 'strange');
    await daybook('new', strange, '--site', 'Lower battery');
    const refused = await daybook('join', dir, strange);
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(problemsIn(refused.err)).toMatchObject([{ field: 'OTHER', problem: expect.stringContaining('“Lower battery”') }]);
    expect((await daybook('join', dir, join(home, 'nowhere'))).code).toBe(2);
    expect(everything(dir)).toEqual(before);
  });

  it('that brings a fork in keeps both ways on', async () => {
    put(dir, 'desk-one.jsonl', lines('desk-one', 4));
    put(other, 'desk-one.jsonl', lines('desk-one', 4, 4));
    expect((await daybook('join', dir, other)).out).toBe('desk-one: 1 line\n');
    const { code, out } = await daybook('check', dir, '--json');
    expect([code, JSON.parse(out).entries, JSON.parse(out).faults.length]).toEqual([1, 3, 1]);
  });
});
