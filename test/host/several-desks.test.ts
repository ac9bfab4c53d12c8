/** Several desks in one folder that is carried about: what is late, twice or forked, and what is gone. Every test counts entries. */
import { appendFileSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { firstPrev } from '../../app/core/entry.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { joinDaybooks } from '../../main/host/join-daybooks.ts';
import { desksFolder, journalPath } from '../../main/host/journal-writer.ts';
import { lineFor } from '../../main/host/line.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

/** Lines of a desk chained by the program, with newlines. `text` tells one writing of them from another; `after` goes on from other lines. */
function linesOf(desk: string, count: number, { text = desk, after = [] as readonly string[], written = now } = {}): string[] {
  let prev = after.length > 0 ? (JSON.parse(after.at(-1)!) as { hash: string }).hash : firstPrev;
  return Array.from({ length: count }, (_, i) => {
    const n = after.length + i + 1;
    const draft = { ...note(n, `${text} ${n}`), id: `${text.replaceAll(' ', '-')}-note-${n}` };
    const { entry, line } = lineFor(draft, { desk, n, prev }, written);
    prev = entry.hash;
    return `${line}\n`;
  });
}

function book(files: Readonly<Record<string, string>> = {}): string {
  const folder = join(temporaryFolder(), 'book');
  expect(makeDaybook(folder, 'Upper battery', now).ok).toBe(true);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, 'desks', name), text);
  return folder;
}

function read(folder: string) {
  const daybook = readDaybook(folder);
  if (!daybook.ok) throw new Error(JSON.stringify(daybook.problems));
  return daybook.value;
}

function installed(home = temporaryFolder()) {
  const installation = openInstallation(home);
  if (!installation.ok) throw new Error('no installation');
  return installation.value;
}

function opened(folder: string, installation: ReturnType<typeof installed>) {
  const daybook = openDaybook(folder, installation);
  if (!daybook.ok) throw new Error(JSON.stringify(daybook.problems));
  return daybook.value;
}

const keep = (daybook: ReturnType<typeof opened>, i: number, at = now) => {
  const kept = daybook.keep(note(i), at);
  if (!kept.ok) throw new Error(JSON.stringify(kept.problems));
  return kept.value.entry;
};

const codes = (notices: readonly { code: string }[]) => notices.map(({ code }) => code);

/** Every file below a folder with its bytes and time of change. */
const everything = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((file) => file.isFile())
    .map((file) => join(file.parentPath, file.name))
    .sort()
    .map((path) => [path, readFileSync(path, 'latin1'), statSync(path).mtimeMs]);

const five = linesOf('desk-one', 5);
const text = (lines: readonly string[]) => lines.join('');

describe('lines of one desk over several files', () => {
  it.each([
    'desk-one.sync-conflict-20260314-093000-ABCDEFG.jsonl',
    'desk-one (conflicted copy).jsonl',
    'desk-one (1).jsonl',
    'desk-one-copy.jsonl',
    'whatever.txt',
  ])('fold into one chain whatever the copy is called: %s', (name) => {
    const folder = book({ 'desk-one.jsonl': text(five.slice(0, 3)), [name]: text(five.slice(2)) });
    const { entries, desks, notices } = read(folder);
    expect(entries.map(({ n }) => n)).toEqual([1, 2, 3, 4, 5]);
    expect(desks).toMatchObject([{ desk: 'desk-one', entries: 5, endMark: (JSON.parse(five[4]!) as { hash: string }).hash }]);
    expect(notices).toEqual([{ code: 'copy-read', desk: 'desk-one', lines: 2, detail: join('desks', name) }]);
  });

  it('come twice and out of order and count once', () => {
    const { entries, notices } = read(
      book({ 'desk-one.jsonl': text([five[0]!, five[2]!, five[1]!, five[2]!, five[4]!, five[3]!]) }),
    );
    expect([entries.length, notices]).toEqual([5, []]);
  });

  it('that are not here yet are waited for by name, and the lines before them count', () => {
    const { entries, desks, notices } = read(book({ 'desk-one.jsonl': text([five[0]!, five[1]!, five[4]!]) }));
    expect(entries).toHaveLength(2);
    expect(desks[0]).toMatchObject({ missing: [{ from: 3, to: 4 }], last: 5 });
    expect(notices).toEqual([{ code: 'lines-missing', desk: 'desk-one', line: 3, detail: '3-4' }]);
  });

  it('that fail are broken, not late, even beside a gap', () => {
    const { entries, notices } = read(
      book({ 'desk-one.jsonl': text([five[0]!, five[1]!.replace('desk-one 2', 'desk-one 7'), five[4]!]) }),
    );
    expect(entries).toHaveLength(1);
    expect(notices).toEqual([
      { code: 'broken-chain', desk: 'desk-one', line: 2, detail: 'wrong-hash' },
      { code: 'lines-missing', desk: 'desk-one', line: 3, detail: '3-4' },
    ]);
  });

  it('that fail in a copy and are whole in the journal count, and the copy is told of', () => {
    const { entries, notices } = read(
      book({
        'desk-one.jsonl': text(five),
        'copy.jsonl': text([five[0]!, five[1]!.replace('desk-one 2', 'desk-one 7'), five[2]!]),
      }),
    );
    expect(entries).toHaveLength(5);
    expect(codes(notices)).toEqual(['copy-read', 'copy-damaged']);
    expect(notices[1]).toMatchObject({ line: 2, detail: join('desks', 'copy.jsonl') });
  });

  it('that do not follow from the line before are broken', () => {
    const other = linesOf('desk-one', 3, { text: 'other words' });
    const { entries, notices } = read(book({ 'desk-one.jsonl': text([five[0]!, five[1]!, other[2]!]) }));
    expect(entries).toHaveLength(2);
    expect(notices).toMatchObject([{ code: 'broken-chain', line: 3, detail: 'wrong-prev' }]);
  });

  it('as a model: any partition of two desks over files with copies, shuffles and losses gives the verified prefix of what is there', () => {
    const desks = ['desk-one', 'desk-two'].map((desk) => linesOf(desk, 6));
    const folder = book();
    const line = fc.record({ desk: fc.nat(1), n: fc.nat(5), file: fc.nat(3) });
    fc.assert(
      fc.property(fc.array(line, { maxLength: 40 }), fc.nat(60), (placed, cut) => {
        rmSync(desksFolder(folder), { recursive: true });
        mkdirSync(desksFolder(folder));
        const files: string[][] = [[], [], [], []];
        // files 0 and 1 are the journals of the two desks, 2 and 3 copies of anything
        for (const { desk, n, file } of placed) files[file < 2 ? desk : file]!.push(desks[desk]![n]!);
        ['desk-one.jsonl', 'desk-two.jsonl', 'desk-one (1).jsonl', 'x.bak'].forEach((name, i) => {
          const torn = i === 2 && cut > 0 ? desks[0]![0]!.slice(0, cut) : '';
          writeFileSync(join(desksFolder(folder), name), text(files[i]!) + torn);
        });
        const got = read(folder);
        for (const [i, desk] of ['desk-one', 'desk-two'].entries()) {
          const here = new Set(placed.filter((p) => p.desk === i).map(({ n }) => n + 1));
          let prefix = 0;
          while (here.has(prefix + 1)) prefix += 1;
          expect(got.entries.filter((entry) => entry.desk === desk).map(({ n }) => n)).toEqual(
            Array.from({ length: prefix }, (_, k) => k + 1),
          );
          const waited = got.notices.some((notice) => notice.code === 'lines-missing' && notice.desk === desk);
          expect(waited).toBe([...here].some((n) => n > prefix));
          expect(got.desks.find((d) => d.desk === desk)?.fault).toBeUndefined();
        }
      }),
      { numRuns: 150 },
    );
  });
});

describe('a fork', () => {
  const one = linesOf('desk-one', 3, { text: 'branch a', after: five.slice(0, 2) });
  const two = linesOf('desk-one', 1, { text: 'branch b', after: five.slice(0, 2) });

  it('freezes the desk at the last common line and shows both ways on', () => {
    const folder = book({
      'desk-one.jsonl': text([...five.slice(0, 2), ...one]),
      'desk-one (1).jsonl': text([...five.slice(0, 2), ...two]),
    });
    const { entries, desks, notices } = read(folder);
    expect(entries.map(({ n }) => n)).toEqual([1, 2]);
    expect(desks[0]).toMatchObject({ entries: 2, fork: { line: 3 } });
    const fork = notices.find(({ code }) => code === 'fork');
    expect(fork).toMatchObject({ desk: 'desk-one', line: 3 });
    expect(fork?.branches?.map(({ count }) => count).sort()).toEqual([1, 3]);
    expect(fork?.branches?.flatMap(({ lines }) => lines.map(({ id }) => id)).sort()).toEqual([
      'branch-a-note-3',
      'branch-a-note-4',
      'branch-a-note-5',
      'branch-b-note-3',
    ]);
  });

  it('of our own desk makes this installation a new desk here, which goes on writing and stays', () => {
    const installation = installed();
    const folder = book();
    const daybook = opened(folder, installation);
    const old = daybook.describe().ownDesk;
    for (let i = 1; i <= 3; i++) keep(daybook, i);
    daybook.close();
    const own = readFileSync(journalPath(folder, old), 'utf8')
      .trimEnd()
      .split('\n')
      .map((line) => `${line}\n`);
    const clone = linesOf(old, 1, { text: 'clone', after: own.slice(0, 2) });
    writeFileSync(join(desksFolder(folder), 'conflict.jsonl'), text([...own.slice(0, 2), ...clone]));
    const again = opened(folder, installation);
    const { ownDesk, writable, notices } = again.describe();
    expect([writable, ownDesk === old, codes(notices)]).toEqual([true, false, expect.arrayContaining(['new-desk', 'fork'])]);
    expect(keep(again, 9)).toMatchObject({ desk: ownDesk, n: 1 });
    again.close();
    expect(readFileSync(journalPath(folder, old), 'utf8')).toBe(text(own));
    const third = opened(folder, installation);
    expect(third.describe().ownDesk).toBe(ownDesk);
    expect(third.whole()).toMatchObject({ ok: true, value: { entries: { length: 3 } } });
    third.close();
  });
});

describe('what an installation has seen', () => {
  it('shows a cut tail of another desk, how many lines are gone, until they are back', () => {
    const installation = installed();
    const folder = book({ 'desk-one.jsonl': text(five) });
    opened(folder, installation).close();
    writeFileSync(journalPath(folder, 'desk-one'), text(five.slice(0, 3)));
    const daybook = opened(folder, installation);
    expect(daybook.describe()).toMatchObject({
      writable: true,
      notices: [{ code: 'lines-gone', desk: 'desk-one', line: 4, lines: 2 }],
      desks: [{ entries: 3 }],
    });
    keep(daybook, 1);
    writeFileSync(journalPath(folder, 'desk-one'), text(five));
    expect(daybook.describe().notices).toEqual([]);
    expect(daybook.whole()).toMatchObject({ ok: true, value: { entries: { length: 6 } } });
    daybook.close();
  });

  it('shows a journal that was written anew', () => {
    const installation = installed();
    const folder = book({ 'desk-one.jsonl': text(five) });
    opened(folder, installation).close();
    writeFileSync(journalPath(folder, 'desk-one'), text(linesOf('desk-one', 6, { text: 'tidied' })));
    const daybook = opened(folder, installation);
    expect(daybook.describe().notices).toEqual([{ code: 'lines-differ', desk: 'desk-one', line: 5 }]);
    daybook.close();
  });

  it('of its own desk is more than a restored backup holds: it becomes a new desk, and the lost lines come in late', () => {
    const installation = installed();
    const folder = book();
    const backup = join(temporaryFolder(), 'backup');
    const first = opened(folder, installation);
    const old = first.describe().ownDesk;
    keep(first, 1);
    cpSync(folder, backup, { recursive: true });
    keep(first, 2);
    keep(first, 3);
    first.close();
    const whole = readFileSync(journalPath(folder, old), 'utf8');
    rmSync(folder, { recursive: true });
    cpSync(backup, folder, { recursive: true });

    const second = opened(folder, installation);
    const { ownDesk, notices, writable } = second.describe();
    expect([writable, ownDesk === old]).toEqual([true, false]);
    expect(notices).toMatchObject([
      { code: 'new-desk', desk: old, detail: 'shorter' },
      { code: 'lines-gone', desk: old, line: 2, lines: 2 },
    ]);
    expect(keep(second, 4)).toMatchObject({ desk: ownDesk, n: 1 });
    writeFileSync(join(desksFolder(folder), 'found on a stick.jsonl'), whole);
    expect(codes(second.describe().notices)).toEqual(['new-desk', 'copy-read']);
    expect(second.whole()).toMatchObject({ ok: true, value: { entries: { length: 4 } } });
    second.close();
  });

  it('that cannot be read is kept aside, and the machine becomes a new desk rather than guess', () => {
    const home = temporaryFolder();
    const folder = book();
    const first = opened(folder, installed(home));
    keep(first, 1);
    const old = first.describe().ownDesk;
    first.close();
    const [name] = readdirSync(join(home, 'daybooks'));
    writeFileSync(join(home, 'daybooks', name!), '{');
    const second = opened(folder, installed(home));
    expect(second.describe().ownDesk).not.toBe(old);
    expect(codes(second.describe().notices)).toEqual(['new-desk']);
    keep(second, 2);
    second.close();
    expect(readdirSync(join(home, 'daybooks')).some((file) => file.includes('.unreadable-'))).toBe(true);
    expect(read(folder).entries).toHaveLength(2);
  });
});

describe('our own journal', () => {
  it('goes on while lines of another desk are waited for or torn', () => {
    const folder = book({
      'desk-one.jsonl': text([five[0]!, five[2]!]),
      'desk-two.jsonl': text(linesOf('desk-two', 2)).slice(0, -9),
    });
    const daybook = opened(folder, installed());
    expect(codes(daybook.describe().notices)).toEqual(['lines-missing', 'torn-line']);
    expect(keep(daybook, 1).n).toBe(1);
    expect(daybook.whole()).toMatchObject({ ok: true, value: { entries: { length: 3 } } });
    daybook.close();
  });

  it('with a gap is broken: nothing is written and nothing changes', () => {
    const installation = installed();
    const lines = linesOf(installation.desk, 4);
    const folder = book({ [`${installation.desk}.jsonl`]: text([lines[0]!, lines[3]!]) });
    const before = everything(folder);
    const daybook = opened(folder, installation);
    expect(daybook.describe()).toMatchObject({ writable: false, desks: [{ entries: 1 }] });
    expect(daybook.keep(note(1), now)).toMatchObject({
      ok: false,
      problems: [{ code: 'chain-broken', data: { cause: 'line-missing' } }],
    });
    daybook.close();
    expect(everything(folder)).toEqual(before);
  });

  it('takes in what only a copy holds before it goes on, so that no number is given out twice', () => {
    const installation = installed();
    const lines = linesOf(installation.desk, 4);
    const folder = book({ [`${installation.desk}.jsonl`]: text(lines.slice(0, 2)), 'copy.jsonl': text(lines) });
    const daybook = opened(folder, installation);
    expect(keep(daybook, 9)).toMatchObject({ desk: installation.desk, n: 5 });
    daybook.close();
    rmSync(join(desksFolder(folder), 'copy.jsonl'));
    expect(read(folder)).toMatchObject({ entries: { length: 5 }, notices: [] });
  });

  it('that another machine wrote in meanwhile is left at once for a new desk', () => {
    const installation = installed();
    const folder = book();
    const daybook = opened(folder, installation);
    const { ownDesk: old } = daybook.describe();
    keep(daybook, 1);
    const own = [readFileSync(journalPath(folder, old), 'utf8')];
    writeFileSync(
      join(desksFolder(folder), 'from-a-clone.jsonl'),
      text([...own, ...linesOf(old, 1, { text: 'clone', after: own })]),
    );
    expect(keep(daybook, 2)).toMatchObject({ n: 1, desk: expect.not.stringMatching(old) });
    expect(codes(daybook.describe().notices)).toContain('new-desk');
    daybook.close();
    expect(read(folder).entries).toHaveLength(3);
  });

  it('keeps on with the clock set back, says so, and its order is that of its numbers', () => {
    const installation = installed();
    const folder = book();
    const daybook = opened(folder, installation);
    keep(daybook, 1, '2026-03-14T09:30:00+13:00');
    expect(keep(daybook, 2, '2026-03-14T09:10:00+13:00')).toMatchObject({ n: 2, written: '2026-03-14T09:10:00+13:00' });
    const told = [{ code: 'clock-back', desk: installation.desk, line: 1, detail: '2026-03-14T09:30:00+13:00' }];
    expect(daybook.describe().notices).toEqual(told);
    daybook.close();
    const again = opened(folder, installation);
    expect(again.describe().notices).toEqual(told);
    expect(keep(again, 3, '2026-03-14T09:31:00+13:00').n).toBe(3);
    expect(again.describe().notices).toEqual([]);
    again.close();
    const { entries, desks } = read(folder);
    expect([entries.length, desks[0]?.fault]).toEqual([3, undefined]);
  });
});

describe('formats', () => {
  const golden = readFileSync(new URL('../golden/desk-golden.jsonl', import.meta.url), 'utf8');

  it('of a folder of format 1 open with every entry counted', () => {
    const folder = join(temporaryFolder(), 'book');
    cpSync(new URL('../golden/format-1-folder', import.meta.url), folder, { recursive: true });
    expect(readFileSync(journalPath(folder, 'desk-golden'), 'utf8')).toBe(text(golden.split(/(?<=\n)/).slice(0, 33)));
    const daybook = opened(folder, installed());
    expect(daybook.whole()).toMatchObject({ ok: true, value: { entries: { length: 33 } } });
    expect(daybook.describe()).toMatchObject({ writable: true, notices: [] });
    daybook.close();
  });

  it('above 1 are refused before anything is touched: no lock, no byte, no torn tail', () => {
    const home = temporaryFolder();
    const installation = installed(home);
    const folder = book({ [`${installation.desk}.jsonl`]: `${text(linesOf(installation.desk, 2))}{"torn` });
    const path = join(folder, 'daybook.json');
    writeFileSync(path, JSON.stringify({ ...(JSON.parse(readFileSync(path, 'utf8')) as object), format: 2 }));
    const before = [everything(folder), everything(home)];
    const daybook = opened(folder, installation);
    expect(daybook.describe()).toMatchObject({ writable: false, desks: [{ entries: 2 }] });
    expect(daybook.keep(note(1), now)).toMatchObject({ ok: false, problems: [{ code: 'newer-format' }] });
    daybook.close();
    expect([everything(folder), everything(home)]).toEqual(before);
  });
});

describe('joining', () => {
  const pair = (mine: string, theirs: string) => {
    const dir = book({ 'desk-one.jsonl': mine });
    const other = join(temporaryFolder(), 'other');
    cpSync(dir, other, { recursive: true });
    writeFileSync(journalPath(other, 'desk-one'), theirs);
    return [dir, other] as const;
  };

  it('brings lines, evidence and closings in, once, and overwrites nothing', () => {
    const [dir, other] = pair(text(five.slice(0, 2)), text(five));
    writeFileSync(journalPath(other, 'desk-two'), text(linesOf('desk-two', 3)));
    const png = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 1]);
    const file = '6e1f6cb9b2ae22a8b9d3b9bd3d5d86a4b7e4f6ec8f0e7a7e0d3a2c1b0f9e8d7c.png';
    writeFileSync(join(other, 'evidence', file), png);
    writeFileSync(join(dir, 'closings', 'desk-one-2026.json'), 'mine');
    writeFileSync(join(other, 'closings', 'desk-one-2026.json'), 'theirs');
    const before = everything(dir);
    const joined = joinDaybooks(dir, other, installed());
    expect(joined).toMatchObject({
      ok: true,
      value: {
        lines: [
          { desk: 'desk-one', lines: 3 },
          { desk: 'desk-two', lines: 3 },
        ],
        evidence: 0,
        left: [file],
        closings: 1,
        beside: [{ name: 'desk-one-2026.json' }],
      },
    });
    expect(everything(dir)).toEqual(expect.arrayContaining(before));
    expect(read(dir)).toMatchObject({ entries: { length: 8 }, notices: [] });
    const once = everything(dir);
    expect(joinDaybooks(dir, other, installed())).toMatchObject({ ok: true, value: { lines: [], closings: 0 } });
    expect(everything(dir)).toEqual(once);
  });

  it('refuses a broken one by desk and line, another daybook by name, and while a window writes; nothing is written', () => {
    const [dir, other] = pair(text(five.slice(0, 2)), text(five).replace('desk-one 3', 'desk-one 8'));
    const before = everything(dir);
    const installation = installed();
    expect(joinDaybooks(dir, other, installation)).toMatchObject({
      problems: [{ code: 'join-broken', field: 'OTHER', data: { desk: 'desk-one', line: 3 } }],
    });
    expect(joinDaybooks(dir, book(), installation)).toMatchObject({ problems: [{ code: 'join-other-daybook', field: 'OTHER' }] });
    expect(joinDaybooks(dir, dir, installation)).toMatchObject({ problems: [{ code: 'join-itself' }] });
    const window = opened(dir, installation);
    writeFileSync(journalPath(other, 'desk-one'), text(five));
    expect(joinDaybooks(dir, other, installation)).toMatchObject({ problems: [{ code: 'elsewhere-open', field: 'DIR' }] });
    window.close();
    expect(everything(dir)).toEqual(before);
    appendFileSync(journalPath(other, 'desk-one'), '{"torn');
    expect(joinDaybooks(dir, other, installation)).toMatchObject({ ok: true, value: { lines: [{ lines: 3 }] } });
    expect(read(dir).entries).toHaveLength(5);
  });
});
