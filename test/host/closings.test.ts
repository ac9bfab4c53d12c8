/** Closing a period through the host's one door, and what `check` says of it afterwards. All things and persons are invented. */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { BackupsState, ReplyOf } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import type { Problem } from '../../app/core/result.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { canonicalText, sha256 } from '../../main/host/canonical.ts';
import type { HostOptions } from '../../main/host/host.ts';
import { fingerprintOf } from '../../main/host/sign-key.ts';
import { readSignatures } from '../../main/host/sign-lines.ts';
import { called, everything } from '../terminal/called.ts';
import { type AHost, aHost, bookIn, codesIn } from './a-host.ts';
import { valueIn } from './backed-up.ts';
import { keeper } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const at = (day: string, hour = '12:00') => `2026-${day}T${hour}+13:00`;
const stated = (g: string) => ({ how: 'stated', mass: `${g} g` });
const read = (path: string) => JSON.parse(readFileSync(path, 'utf8')) as Record<string, never>;

interface ABook extends AHost {
  readonly folder: string;
  readonly keep: (id: string, kind: string, happened: string, body: Record<string, unknown>) => Promise<Entry>;
  readonly files: () => string[];
  readonly path: (ending: string) => string;
  /** `check --json`: exit code, faults, notices. */
  readonly check: () => Promise<{
    code: number | null;
    faults: { desk: string; line: number; problem: string }[];
    notices: { notice: string }[];
  }>;
}

/** 10,000 g here at the beginning and 9,900 g at the first count: 100 g not accounted for. */
async function aBook(more: Parameters<typeof aHost>[0] = {}): Promise<ABook> {
  const host = aHost({ clock: () => '2026-07-01T09:30:00+13:00', ...more });
  const { folder } = bookIn(await host.ask('open', { make: 'Upper Battery' }));
  const keep: ABook['keep'] = async (id, kind, happened, body) => {
    const answer = await host.ask('keep', { id, kind, happened, by: keeper.id, body });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
    return answer.value.entry as unknown as Entry;
  };
  await keep(keeper.id, keeper.kind, keeper.happened, keeper.body);
  await keep('standing', 'standing', at('03-01'), { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] });
  await keep('bottle-one', 'vessel', at('03-01'), { label: 'Working bottle', use: 'bottle', mercury: 'mixed' });
  await keep('was-here', 'receipt', at('04-01'), { vessel: 'bottle-one', weight: stated('10000'), way: 'already-here' });
  await count({ keep }, 'count-one', '04-30', '9900');
  const files = () => readdirSync(join(folder, 'closings')).sort();
  return {
    ...host,
    folder,
    keep,
    files,
    path: (ending) => join(folder, 'closings', files().find((name) => name.endsWith(ending))!),
    check: async () => {
      const { code, out } = await called(['check', folder, '--json']);
      return { code, ...(JSON.parse(out) as Omit<Awaited<ReturnType<ABook['check']>>, 'code'>) };
    },
  };
}

const count = ({ keep }: Pick<ABook, 'keep'>, id: string, day: string, g: string) =>
  keep(id, 'stock-take', at(day), {
    scope: 'whole',
    lines: [
      { how: 'weighed', place: 'vessel:bottle-one', weight: stated(g) },
      ...['mortar', 'plates', 'pan', 'trap'].map((part) => ({
        how: 'estimated',
        place: `circuit:${part}`,
        estimate: { mass: '0 g', method: 'none there' },
      })),
    ],
  });

const first = { id: 'closing-one', happened: at('05-02'), by: keeper.id, closing: 'count-one' };
const keptIn = (answer: Awaited<ReturnType<AHost['ask']>>) => {
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value as unknown as { entry: Entry; desk: { desk: string; entries: number; endMark: string } };
};

describe('closing a period', () => {
  it('keeps one entry whose files lie in the folder under its desk, day, short id and version, with their hashes in it', async () => {
    const book = await aBook();
    const { entry, desk } = keptIn(await book.ask('close-period', first));
    expect(entry).toMatchObject({ id: 'closing-one', kind: 'closing', n: 6, body: { version: 1, closing: 'count-one' } });
    expect(desk).toEqual({ desk: entry.desk, entries: 6, endMark: entry.hash });
    const stem = `${entry.desk}-2026-04-30-${sha256('closing-one').slice(0, 8)}-v1`;
    expect(book.files()).toEqual([`${stem}.json`, `${stem}.pdf`]);
    expect(entry.body.statement).toBe(sha256(readFileSync(book.path('.json'))));
    expect(entry.body.paper).toBe(sha256(readFileSync(book.path('.pdf'))));
    expect(await book.check()).toMatchObject({ code: 0, faults: [], notices: [] });
  });

  it('is signed with its entry as the end mark, and papers printed from then on are given the key', async () => {
    const told: CoveredDesk[][] = [];
    const print: HostOptions['print'] = async (_entries, _site, desks) => {
      told.push([...desks]);
      return { ok: true, value: new Uint8Array([told.length]) };
    };
    const book = await aBook({ print });
    const { entry } = keptIn(await book.ask('close-period', first));
    const lines = readSignatures(book.folder).get(entry.desk)?.lines ?? [];
    expect(lines.map(({ mark }) => [mark?.entries, mark?.end_mark])).toEqual([[6, entry.hash]]);
    await book.post('/ask/paper', JSON.stringify({ name: 'wall-sheet' }));
    const key = fingerprintOf(lines[0]!.mark!.key);
    expect(told.map((desks) => desks.map((d) => [d.key, d.signed]))).toEqual([[[undefined, undefined]], [[key, 6]]]);
  });

  it('has a backup of its own that holds the closing, beside the one that was asked for', async () => {
    const place = temporaryFolder();
    const book = await aBook({ places: [place], drives: () => [] });
    const backups = async () => valueIn<BackupsState>(await book.ask('backups'));
    const [offered] = (await backups()).offered;
    valueIn<BackupsState>(await book.ask('backup-place', { place: offered!.key }));
    await expect.poll(async () => (await backups()).list.map(({ why }) => why)).toEqual(['asked']);
    keptIn(await book.ask('close-period', first));
    await expect.poll(async () => (await backups()).list.map(({ why }) => why).sort()).toEqual(['asked', 'closing']);
    const { last, list } = await backups();
    expect(last).toMatchObject({ why: 'closing', entries: 6 });
    const looked = valueIn<ReplyOf<'backup-look'>>(
      await book.ask('backup-look', { from: list.find(({ why }) => why === 'closing')!.key }),
    );
    expect(looked.holds).toMatchObject({ entries: 6, faults: [] });
    await book.host.close();
  });

  it('writes a statement in canonical JSON with exact figures, the end marks it rests on, and who closed it', async () => {
    const book = await aBook();
    const { entry } = keptIn(await book.ask('close-period', { ...first, note: 'end of April', falseAlarm: 0.05 }));
    const text = readFileSync(book.path('.json'), 'utf8');
    const statement = JSON.parse(text) as Record<string, unknown>;
    expect(text).toBe(canonicalText(statement));
    expect(statement).toMatchObject({
      format: 1,
      program: '0.1.0',
      daybook: { name: 'Upper Battery' },
      closing: 'closing-one',
      version: 1,
      by: keeper.id,
      by_name: 'Keeper',
      note: 'end of April',
      false_alarm: '0.050000',
      period: { opening: null, closing: { stock_take: 'count-one', at: at('04-30') } },
      figures: { opening_g: '10000.000000', closing_g: '9900.000000', unaccounted_g: '100.000000' },
      end_marks: [{ desk: entry.desk, entries: 5, end_mark: entry.prev }],
    });
    expect(statement.figures).toEqual(entry.body.figures);
    expect(statement.stocks).toEqual([expect.objectContaining({ place: 'vessel:bottle-one', g: '9900.000000' })]);
  });

  it('is asked for twice and done once', async () => {
    const book = await aBook();
    const one = keptIn(await book.ask('close-period', first));
    const before = everything(book.folder);
    expect(keptIn(await book.ask('close-period', first))).toEqual(one);
    expect(everything(book.folder)).toEqual(before);
  });

  it('rests on the entries it was asked with, though others are kept while its paper is printed', async () => {
    const during: (() => Promise<unknown>)[] = [];
    const book: ABook = await aBook({
      print: async () => {
        for (const act of during.splice(0)) await act();
        return { ok: true, value: Buffer.from('%PDF-slow') };
      },
    });
    during.push(() => book.keep('meanwhile', 'note', at('05-01'), { text: 'kept meanwhile' }));
    const { entry } = keptIn(await book.ask('close-period', first));
    expect([entry.n, (entry.body.ends as { entries: number }[])[0]!.entries]).toEqual([7, 5]);
    expect(await book.check()).toMatchObject({ code: 0, faults: [] });
  });

  it('hands its files out as they were issued, and no others', async () => {
    const book = await aBook();
    await book.ask('close-period', first);
    const answer = await book.post('/ask/issued', JSON.stringify({ closing: 'closing-one', file: 'paper' }));
    expect(Buffer.from(await answer.arrayBuffer()).equals(readFileSync(book.path('.pdf')))).toBe(true);
    expect(codesIn(await book.ask('issued', { closing: 'count-one', file: 'paper' }))).toEqual(['no-such-closing']);
    writeFileSync(book.path('.pdf'), '%PDF-other');
    expect(codesIn(await book.ask('issued', { closing: 'closing-one', file: 'paper' }))).toEqual(['closing-changed']);
    rmSync(book.path('.json'));
    expect(codesIn(await book.ask('issued', { closing: 'closing-one', file: 'statement' }))).toEqual(['closing-gone']);
  });
});

describe('nothing is written', () => {
  it.each([
    ['without a stock-take at its end', { closing: 'was-here' }, ['unknown-id']],
    ['with a beginning that is no count', { opening: 'nobody-knows' }, ['unknown-id']],
    ['as the next version of nothing', { replaces: 'was-here', note: 'why' }, ['unknown-id']],
    ['by somebody who is not on the register', { by: 'nobody-knows' }, ['unknown-id']],
    ['on a day that has not come', { happened: at('12-01') }, ['in-the-future']],
    ['with a field nobody knows', { figures: {} }, ['unknown-field']],
  ])('for a period %s', async (_name, change, codes) => {
    const book = await aBook();
    const before = everything(book.folder);
    expect(codesIn(await book.ask('close-period', { ...first, ...change }))).toEqual(codes);
    expect(everything(book.folder)).toEqual(before);
  });

  it('for a period of which a part is closed already', async () => {
    const book = await aBook();
    await book.ask('close-period', first);
    await count(book, 'count-two', '05-31', '9890');
    const before = everything(book.folder);
    for (const more of [
      { closing: 'count-one' },
      { closing: 'count-two' },
      { closing: 'count-two', replaces: 'closing-none', note: 'x' },
    ])
      expect(codesIn(await book.ask('close-period', { ...first, id: 'closing-two', ...more }))).toContain('closing-overlaps');
    expect(everything(book.folder)).toEqual(before);
  });

  it('when its paper cannot be printed', async () => {
    const failing: Problem = { code: 'paper-failed', field: '', data: { detail: 'exit' } };
    const book = await aBook({ print: async () => ({ ok: false, problems: [failing] }) });
    const before = everything(book.folder);
    expect(codesIn(await book.ask('close-period', first))).toEqual(['paper-failed']);
    expect(everything(book.folder)).toEqual(before);
  });

  it('for a closing that is handed in like any entry, because its files would be missing', async () => {
    const book = await aBook();
    const { entry } = keptIn(await book.ask('close-period', first));
    const before = everything(book.folder);
    const draft = { id: 'by-itself', happened: at('05-03'), by: keeper.id, kind: 'closing', body: { ...entry.body } };
    expect(codesIn(await book.ask('keep', draft))).toEqual(['closing-by-itself']);
    expect(everything(book.folder)).toEqual(before);
  });
});

describe('check', () => {
  it('finds a statement or a paper that was changed or is gone, names the closing and ends with 1', async () => {
    const book = await aBook();
    const { entry } = keptIn(await book.ask('close-period', first));
    const whole = readFileSync(book.path('.json'), 'utf8');
    writeFileSync(book.path('.json'), whole.replace('"100.000000"', '"10.000000"'));
    const changed = await book.check();
    expect(changed).toMatchObject({ code: 1, faults: [{ desk: entry.desk, line: 6 }] });
    expect(changed.faults[0]!.problem).toMatch(/30 April 2026, version 1.*is not the one that was issued/);
    writeFileSync(book.path('.json'), whole);
    rmSync(book.path('.pdf'));
    const gone = await book.check();
    expect(gone).toMatchObject({ code: 1, faults: [{ desk: entry.desk, line: 6 }] });
    expect(gone.faults[0]!.problem).toMatch(/has lost its paper/);
  });

  it('finds figures that the covered entries do not give, although every chain verifies', async () => {
    const lying = await aBook();
    keptIn(await lying.ask('close-period', first));
    const path = join(lying.folder, 'desks', readdirSync(join(lying.folder, 'desks'))[0]!);
    const lines = readFileSync(path, 'utf8').trimEnd().split('\n');
    const { hash: _, ...line } = JSON.parse(lines.pop()!) as Record<string, unknown> & {
      body: { figures: Record<string, string> };
    };
    line.body.figures.unaccounted_g = '1.000000';
    const again = canonicalText({ ...line, hash: sha256(canonicalText(line)) });
    writeFileSync(path, `${[...lines, again].join('\n')}\n`);
    const told = await lying.check();
    expect(told.code).toBe(1);
    expect(told.faults.map((f) => f.problem).join()).toMatch(/no longer agrees .*not accounted for by \+99\.000000/);
  });

  it('finds a tail that was cut off behind an end mark, by the closing of another desk or by a statement left alone', async () => {
    const book = await aBook();
    const { entry } = keptIn(await book.ask('close-period', first));
    const path = join(book.folder, 'desks', `${entry.desk}.jsonl`);
    const lines = readFileSync(path, 'utf8').trimEnd().split('\n');
    writeFileSync(path, `${lines.slice(0, 5).join('\n')}\n`);
    expect((await book.check()).faults.map((f) => f.problem).join()).toMatch(/signed lines 1 to 6/);
    rmSync(join(book.folder, 'signatures'), { recursive: true });
    const orphaned = await book.check();
    // the closing alone is gone, and its signature: its files belong to nothing, and no mark is missed
    expect(orphaned).toMatchObject({ code: 0, faults: [] });
    expect(orphaned.notices.map((n) => n.notice).join()).toMatch(/belongs to no closing/);
    writeFileSync(path, `${lines.slice(0, 4).join('\n')}\n`);
    const cut = await book.check();
    expect(cut).toMatchObject({ code: 1, faults: [{ desk: entry.desk, line: 5 }] });
    expect(cut.faults[0]!.problem).toMatch(/tail was cut off/);
  });

  it('tells later entries that touch a closed period as a notice that names them and what they changed', async () => {
    const book = await aBook();
    await book.ask('close-period', first);
    await book.keep('later-note', 'note', at('05-03'), { text: 'nothing of weight' });
    expect((await book.check()).notices).toEqual([]);
    await book.keep('forgotten', 'receipt', at('04-10'), { vessel: 'bottle-one', weight: stated('5'), way: 'bought' });
    const told = await book.check();
    expect(told).toMatchObject({ code: 0, faults: [] });
    expect(told.notices).toHaveLength(1);
    expect(told.notices[0]!.notice).toMatch(/30 April 2026, version 1.*\(forgotten\).*5\.00\sg more is not accounted for/);
  });

  it('says nothing more of them once the next version is issued, and both versions stay', async () => {
    const book = await aBook();
    const one = keptIn(await book.ask('close-period', first)).entry;
    await book.keep('forgotten', 'receipt', at('04-10'), { vessel: 'bottle-one', weight: stated('5'), way: 'bought' });
    const old = readFileSync(book.path('v1.json'));
    const next = { ...first, id: 'closing-two', happened: at('06-01'), replaces: 'closing-one' };
    expect(codesIn(await book.ask('close-period', next))).toEqual(['closing-why']);
    const two = keptIn(await book.ask('close-period', { ...next, note: 'a receipt was found' })).entry;
    expect(two.body).toMatchObject({
      version: 2,
      replaces: one.id,
      figures: { receipts_g: '5.000000', unaccounted_g: '105.000000' },
    });
    expect(read(book.path('v2.json'))).toMatchObject({ version: 2, replaces: one.id, replaces_statement: one.body.statement });
    expect(readFileSync(book.path('v1.json')).equals(old)).toBe(true);
    expect(await book.check()).toMatchObject({ code: 0, faults: [], notices: [] });
  });

  it('is told as text too', async () => {
    const book = await aBook();
    await book.ask('close-period', first);
    expect((await called(['check', book.folder])).out).toMatch(/The closing agrees with the entries it rests on\./);
    rmSync(book.path('.json'));
    const { code, out, err } = await called(['check', book.folder]);
    expect([code, out.includes('FAULT  The closing of the period to 30 April 2026')]).toEqual([1, true]);
    expect(JSON.parse(err.trim())).toMatchObject({ problem: expect.stringMatching(/has lost its statement/) });
  });
});

describe('the next period', () => {
  it('takes over in its statement, by name, what the closed one before it was found different by', async () => {
    const book = await aBook();
    await book.ask('close-period', first);
    await book.keep('forgotten', 'receipt', at('04-10'), { vessel: 'bottle-one', weight: stated('5'), way: 'bought' });
    await count(book, 'count-two', '05-31', '9890');
    const second = { ...first, id: 'closing-two', happened: at('06-01'), opening: 'count-one', closing: 'count-two' };
    const { entry } = keptIn(await book.ask('close-period', second));
    // 9,900 − 9,890 = 10 of its own; 5 more than was said are missing in the period before it
    expect(entry.body).toMatchObject({
      figures: { unaccounted_g: '10.000000' },
      adjustments: [{ of: 'closing-one', g: '-5.000000' }],
    });
    const statement = read(book.path(`${sha256('closing-two').slice(0, 8)}-v1.json`));
    expect(statement.adjustments).toEqual([
      expect.objectContaining({
        of: 'closing-one',
        g: '-5.000000',
        entries: [expect.objectContaining({ entry: 'forgotten', g: '-5.000000' })],
      }),
    ]);
    // as closed before: 100 + 15 = 115 = 10,000 + 5 − 9,890
    expect(statement.unaccounted_as_closed_before_g).toBe('15.000000');
  });
});
