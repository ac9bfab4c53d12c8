/** The `daybook` command's verbs against the contract: what is printed where, the exit codes, and that nothing is written on 1 or 2. */
import { appendFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { paperNames } from '../../app/contract.ts';
import { reckonTopics } from '../../app/core/reckon/index.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { runTerminal } from '../../main/terminal/run.ts';
import { problemsIn, type Ran, type RunOptions } from './built.ts';

let home: string;
let dir: string;

const stood = process.cwd();

/** One call, with streams of its own. */
async function daybook(args: readonly string[], { input = '' }: RunOptions = {}): Promise<Ran> {
  const out: string[] = [];
  const err: string[] = [];
  const code = await runTerminal(args, {
    print: (line) => out.push(`${line}\n`),
    complain: (line) => err.push(`${line}\n`),
    input: async () => Buffer.from(input),
    ended: () => Promise.resolve(),
  });
  return { code, out: out.join(''), err: err.join('') };
}

beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'terminal-'));
  dir = join(home, 'book');
  process.chdir(home);
});
afterEach(() => {
  process.chdir(stood);
  rmSync(home, { recursive: true, force: true });
});

/** Every path below a folder, with its content: to show that nothing was written. */
function everything(folder: string): Record<string, string> {
  if (!existsSync(folder)) return {};
  return Object.fromEntries(
    readdirSync(folder, { recursive: true, withFileTypes: true }).map((item) => {
      const path = join(item.parentPath, item.name);
      return [path, item.isFile() ? readFileSync(path, 'latin1') : ''];
    }),
  );
}

/** Expects a refusal: exit 2, nothing printed, one JSON line for each of these fields, and nothing written. */
async function refuses(args: readonly string[], fields: readonly string[], input = '') {
  const before = everything(home);
  const { code, out, err } = await daybook(args, { input });
  expect([code, out]).toEqual([2, '']);
  const problems = problemsIn(err);
  expect(problems.map((p) => p.field)).toEqual(fields);
  for (const { problem } of problems) expect(problem.length).toBeGreaterThan(20);
  expect(everything(home)).toEqual(before);
  return problems;
}

/** A daybook with this many notes in it, written by this installation's own desk. */
function bookWith(notes: number): string {
  const installation = openInstallation(join(home, 'state'));
  if (!installation.ok) throw new Error('no installation');
  const opened = openDaybook(dir, installation.value);
  if (!opened.ok) throw new Error('no daybook');
  for (let n = 1; n <= notes; n++) {
    const kept = opened.value.keep(
      { id: `note-number-${n}`, happened: '2026-03-14T09:20+13:00', by: null, kind: 'note', body: { text: `Note ${n}` } },
      '2026-03-14T09:30:00+13:00',
    );
    if (!kept.ok) throw new Error(JSON.stringify(kept.problems));
  }
  opened.value.close();
  return join(dir, 'desks', `${installation.value.desk}.jsonl`);
}

describe('a call', () => {
  it('without a verb shows the help, says so and ends with 2', async () => {
    const { code, out, err } = await daybook([]);
    expect(code).toBe(2);
    expect(out).toContain('daybook check DIR');
    expect(problemsIn(err)).toMatchObject([{ field: '' }]);
  });

  it('for help ends with 0, and names every verb, topic and paper', async () => {
    for (const args of [['help'], ['--help'], ['check', '--help']]) {
      const { code, out, err } = await daybook(args);
      expect([code, err]).toEqual([0, '']);
      for (const name of ['new', 'check', 'serve', 'paper', 'reckon', ...reckonTopics, ...paperNames])
        expect(out).toContain(name);
    }
  });

  it('with a verb that does not exist is refused by its name', async () => {
    const [only] = await refuses(['weigh'], ['']);
    expect(only!.problem).toContain('“weigh”');
    await refuses(['constructor'], ['']);
    await refuses(['__proto__'], ['']);
  });

  it('with an option the verb does not have is refused by its name', async () => {
    const [first] = await refuses(['check', 'book', '--fast'], ['--fast']);
    expect(first!.problem).toContain('--fast');
    await refuses(['check', 'book', '-j'], ['-j']);
    await refuses(['check', 'book', '--no-json'], ['--no-json']);
    await refuses(['check', 'book', '--constructor'], ['--constructor']);
  });

  it('is refused when a word or an option is missing, is too many, has no value or stands twice', async () => {
    await refuses(['check'], ['DIR']);
    await refuses(['new', 'book'], ['--site']);
    await refuses(['new', 'book', '--site'], ['--site']);
    await refuses(['new', 'book', '--site='], ['--site']);
    await refuses(['new', 'book', '--site', '--json'], ['--site']);
    await refuses(['new', '--site', 'A', '--site', 'B', 'book'], ['--site']);
    await refuses(['check', 'book', 'other'], ['']);
    await refuses(['check', 'book', '--json=yes'], ['--json']);
    await refuses(['new', 'Upper', 'Battery', '--sight', 'X'], ['--sight', '', '', '--site']);
  });
});

describe('new', () => {
  it('makes an empty daybook that check finds whole', async () => {
    const made = await daybook(['new', 'book', '--site', 'Upper Battery']);
    expect([made.code, made.err]).toEqual([0, '']);
    expect(JSON.parse(readFileSync(join(dir, 'daybook.json'), 'utf8'))).toMatchObject({ name: 'Upper Battery', format: 1 });
    const { code, out, err } = await daybook(['check', dir, '--json']);
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(out)).toMatchObject({ entries: 0, desks: [], faults: [] });
  });

  it('takes the value of an option after an equals sign as well', async () => {
    const { code } = await daybook(['new', '--site=Upper Battery', 'book']);
    expect(code).toBe(0);
  });

  it('refuses a folder that holds anything, and leaves it as it was', async () => {
    mkdirSync(dir);
    writeFileSync(join(dir, 'letter.txt'), 'ours');
    await refuses(['new', 'book', '--site', 'Upper Battery'], ['DIR']);
  });

  it('refuses a name that says nothing, and makes no folder', async () => {
    await refuses(['new', 'book', '--site', '   '], ['--site']);
    expect(existsSync(dir)).toBe(false);
  });
});

describe('check', () => {
  beforeEach(async () => {
    await daybook(['new', 'book', '--site', 'Upper Battery']);
  });

  it('prints entries, desks and end marks, as text and as one line of JSON', async () => {
    const journal = bookWith(3);
    const last = JSON.parse(readFileSync(journal, 'utf8').trim().split('\n').at(-1)!);
    const text = await daybook(['check', dir]);
    expect([text.code, text.err]).toEqual([0, '']);
    expect(text.out).toContain('3 entries, 1 desk');
    expect(text.out).toContain(last.hash);
    const json = await daybook(['check', dir, '--json']);
    expect(json.out.trimEnd().split('\n')).toHaveLength(1);
    expect(JSON.parse(json.out)).toMatchObject({
      entries: 3,
      desks: [{ desk: last.desk, entries: 3, end_mark: last.hash }],
      faults: [],
    });
  });

  it('ends with 1 when a complete line fails, and names desk, line and cause', async () => {
    const journal = bookWith(3);
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('Note 2', 'Note 7'));
    const before = everything(home);
    const { code, out, err } = await daybook(['check', dir, '--json']);
    expect(code).toBe(1);
    const [fault] = JSON.parse(out).faults;
    expect(fault).toMatchObject({ line: 2 });
    expect(fault.desk).toMatch(/^desk-/);
    expect(fault.problem).toContain('hash');
    expect(problemsIn(err)).toHaveLength(1);
    expect(problemsIn(err)[0]!.problem).toContain(`desk ${fault.desk}, line 2`);
    expect(everything(home)).toEqual(before);
  });

  it('takes a torn last line for a notice, ends with 0 and leaves it where it is', async () => {
    const journal = bookWith(2);
    appendFileSync(journal, '{"body":{"text":"cut of');
    const before = everything(home);
    const { code, out, err } = await daybook(['check', dir, '--json']);
    expect([code, err]).toEqual([0, '']);
    expect(JSON.parse(out)).toMatchObject({ entries: 2, faults: [], notices: [{ line: 3 }] });
    expect((await daybook(['check', dir])).out).toContain('notice');
    expect(everything(home)).toEqual(before);
  });

  it('refuses what is no daybook: a folder that is not there, another folder, a file', async () => {
    writeFileSync(join(home, 'file'), '');
    await refuses(['check', 'nowhere'], ['DIR']);
    await refuses(['check', '.'], ['DIR']);
    await refuses(['check', 'file'], ['DIR']);
    await refuses(['check', ''], ['DIR']);
  });
});

describe('reckon', () => {
  it('reads one JSON object and prints one, on one line', async () => {
    const { code, out, err } = await daybook(['reckon', 'mass'], { input: '{"mass":"9 lb","to":["g"]}' });
    expect([code, err]).toEqual([0, '']);
    expect(out.endsWith('}\n')).toBe(true);
    expect(out.trimEnd().split('\n')).toHaveLength(1);
    // 1 lb is 453.59237 g exactly (international yard and pound agreement, 1959)
    expect(JSON.parse(out).g).toBeCloseTo(9 * 453.59237, 9);
  });

  it('puts the reason in words where a figure cannot be computed', async () => {
    const input = JSON.stringify({ bar: '68.55 ozt', gold_permille: 801, ore: '0 t' });
    const { code, out } = await daybook(['reckon', 'yield'], { input });
    expect(code).toBe(0);
    expect(JSON.parse(out).fine_g_t.not_computable).toMatch(/ore/);
  });

  it('names every field it refuses, one line each', async () => {
    const problems = await refuses(['reckon', 'mass'], ['mass', 'extra'], '{"mass":"9 oz","to":["g"],"extra":1}');
    expect(problems[0]!.problem).toContain('ozt');
  });

  it('refuses what is not one JSON object', async () => {
    for (const input of [
      '',
      ' \n',
      '[]',
      'null',
      '"9 lb"',
      '9',
      'true',
      '{',
      '{"mass":9 lb}',
      '{} {}',
      "{'mass':'9 lb'}",
      '[{"mass":"9 lb"}]',
    ])
      await refuses(['reckon', 'mass'], [''], input);
  });

  it('refuses bytes that are not text, and takes text with a mark before it', async () => {
    const bytes = new Uint8Array([...new TextEncoder().encode('{"mass":"9 lb","to":["g"]}'), 0xff]);
    expect((await daybook(['reckon', 'mass'], { input: bytes })).code).toBe(2);
    expect((await daybook(['reckon', 'mass'], { input: '\ufeff{"mass":"9 lb","to":["g"]}' })).code).toBe(0);
  });

  it('refuses a key that stands twice, since one of the two weights would be lost', async () => {
    await refuses(['reckon', 'mass'], ['mass'], '{"mass":"9 lb","to":["g"],"mass":"8 lb"}');
    await refuses(['reckon', 'mass'], ['a[1].b'], '{"a":[{"b":1},{"b":1,"\\u0062":2}]}');
  });

  it('refuses a topic that does not exist before it reads anything', async () => {
    for (const topic of ['weight', '__proto__', 'constructor']) {
      const [only] = await refuses(['reckon', topic], ['TOPIC']);
      expect(only!.problem).toContain('mass');
    }
  });
});

describe('paper', () => {
  beforeEach(async () => {
    await daybook(['new', 'book', '--site', 'Upper Battery']);
  });

  it('refuses a paper that does not exist, a file that is no PDF, and a place that is not there', async () => {
    await refuses(['paper', 'book', 'letter', '--out', 'a.pdf'], ['NAME']);
    await refuses(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'a.jsonl'], ['--out']);
    await refuses(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'nowhere/a.pdf'], ['--out']);
    await refuses(['paper', 'nowhere', 'run-sheet', '--id', 'x', '--out', 'a.pdf'], ['DIR']);
  });

  it('never prints into the daybook, whose folder holds the record alone', async () => {
    await refuses(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'book/a.pdf'], ['--out']);
    await refuses(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'book/evidence/a.pdf'], ['--out']);
    await refuses(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'book/../book/a.pdf'], ['--out']);
  });

  it('prints nothing from a record that does not verify, and ends with 1', async () => {
    const journal = bookWith(2);
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('Note 1', 'Note 7'));
    const before = everything(home);
    const { code, out, err } = await daybook(['paper', 'book', 'run-sheet', '--id', 'x', '--out', 'a.pdf']);
    expect([code, out]).toEqual([1, '']);
    expect(problemsIn(err)[0]!.problem).toContain('line 1');
    expect(everything(home)).toEqual(before);
  });

  it('refuses a charge that is not in the book, and writes nothing', async () => {
    await refuses(['paper', 'book', 'run-sheet', '--id', 'no-such-charge', '--out', 'a.pdf'], ['--id']);
    await refuses(['paper', 'book', 'run-sheet', '--out', 'a.pdf'], ['--id']);
  });
});
