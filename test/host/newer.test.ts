/**
 * What a newer program wrote is refused before anything is touched, wherever its format number stands: the daybook's title page, a line of a journal,
 * the folder of the installation. Through the host as the window asks, and through every verb of the command; not a byte and not a name may change.
 */
import { cpSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { canonicalText, sha256 } from '../../main/host/canonical.ts';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { coveredDesks } from '../../main/host/left-out.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { called, everything } from '../terminal/called.ts';
import { aHost, codesIn } from './a-host.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

/** A line with members changed and hashed anew, as a newer program would write it. */
function rehashed(line: string, changes: Record<string, unknown>): string {
  const { hash: _, ...bare } = { ...(JSON.parse(line) as Record<string, unknown>), ...changes };
  return canonicalText({ ...bare, hash: sha256(canonicalText(bare)) });
}

let home: string;
let folder: string;
let before: Record<string, string>;
const kept = process.env.DAYBOOK_HOME;

/** A daybook of this installation with two notes, closed again. */
beforeEach(() => {
  home = temporaryFolder();
  process.env.DAYBOOK_HOME = home;
  folder = join(temporaryFolder(), 'book');
  makeDaybook(folder, 'Battery', now);
  const installation = openInstallation(home);
  if (!installation.ok) throw new Error('no installation');
  const opened = openDaybook(folder, installation.value);
  if (!opened.ok) throw new Error('not opened');
  for (const i of [1, 2]) opened.value.keep(note(i), now);
  opened.value.close();
});
afterEach(() => {
  if (kept === undefined) delete process.env.DAYBOOK_HOME;
  else process.env.DAYBOOK_HOME = kept;
});

const edit = (path: string, change: (text: string) => string) => writeFileSync(path, change(readFileSync(path, 'utf8')));
const title = (change: (value: object) => object) => () =>
  edit(join(folder, 'daybook.json'), (text) => JSON.stringify(change(JSON.parse(text) as object)));
const ownJournal = () => {
  const { desk } = JSON.parse(readFileSync(join(home, 'desk.json'), 'utf8')) as { desk: string };
  return join(folder, 'desks', `${desk}.jsonl`);
};

/** Each way a newer program shows, by the place its number stands in. */
const places: Readonly<Record<string, () => void>> = {
  'the title page': title((value) => ({ ...value, format: 2 })),
  'a title page with more on it': title((value) => ({ ...value, format: 3, seals: ['x'] })),
  'the last line of our own journal': () =>
    edit(ownJournal(), (text) => {
      const lines = text.trimEnd().split('\n');
      return `${lines[0]}\n${rehashed(lines[1]!, { format: 2, shape: 'other' })}\n`;
    }),
  'a line of another desk’s journal': () => {
    const line = readFileSync(ownJournal(), 'utf8').split('\n')[0]!;
    writeFileSync(
      join(folder, 'desks', 'desk-other.jsonl'),
      `${rehashed(line, { desk: 'desk-other', id: 'other-1', format: 9 })}\n`,
    );
  },
};

const questions: readonly [string, unknown][] = [
  ['keep', note(3)],
  ['close-period', { from: '2026-03-01', to: '2026-03-31' }],
  ['import', { kind: 'note', text: 'happened,text\n', mapping: {} }],
];

describe.each(Object.entries(places))('a newer format in %s', (where, written) => {
  beforeEach(() => {
    written();
    before = everything(folder);
  });

  it('opens for reading only, and nothing the window asks changes a byte of it', async () => {
    const { ask, host, post } = aHost({ home });
    expect(await host.openFolder(folder)).toMatchObject({
      ok: true,
      value: { writable: false, notices: expect.arrayContaining([expect.objectContaining({ code: 'newer-format' })]) },
    });
    expect(codesIn(await ask('keep', note(3)))).toEqual(['newer-format']);
    for (const [question, value] of questions) expect((await ask(question, value)).ok, question).toBe(false);
    const picture = Buffer.from('iVBORw0KGgo=', 'base64');
    const evidence = await post('/ask/evidence', picture, { 'content-type': 'application/octet-stream' });
    expect(((await evidence.json()) as { ok: boolean }).ok).toBe(false);
    await host.close();
    expect(everything(folder)).toEqual(before);
  });

  it('is told by a paper where lines are left out for it', () => {
    const read = readDaybook(folder);
    if (!read.ok) throw new Error('not read');
    const told = coveredDesks(read.value.desks).flatMap((desk) => desk.leftOut ?? []);
    expect(told.filter((text) => text.includes('newer version'))).toHaveLength(where.includes('line') ? 1 : 0);
  });

  it('ends every verb that reads figures or writes with 2, and says which version to use', async () => {
    const csv = join(temporaryFolder(), 'notes.csv');
    writeFileSync(csv, 'happened [day-month-year],by,text\n14/3/2026,,One\n');
    const copy = join(temporaryFolder(), 'copy');
    makeDaybook(copy, 'Battery', now);
    const { id, name, made } = JSON.parse(readFileSync(join(folder, 'daybook.json'), 'utf8')) as Record<string, string>;
    writeFileSync(join(copy, 'daybook.json'), JSON.stringify({ id, name, format: 1, made }));
    const out = join(temporaryFolder(), 'out');
    const calls = [
      ['check', folder],
      ['account', folder],
      ['movements', folder, '--csv'],
      ['export', folder, '--out', out],
      ['paper', folder, 'run-sheet', '--id', 'run-1', '--out', join(temporaryFolder(), 'run.pdf')],
      ['import', folder, '--as', 'note', csv],
      ['join', folder, copy],
      ['join', copy, folder],
    ];
    const copied = everything(copy);
    for (const call of calls) {
      const { code, err } = await called(call);
      expect([call[0], code]).toEqual([call[0], 2]);
      const problems = err.trim().split('\n');
      expect(err, call.join(' ')).toMatch(/newer version/);
      for (const line of problems) expect(() => JSON.parse(line)).not.toThrow();
    }
    expect([everything(folder), everything(copy), everything(out)]).toEqual([before, copied, {}]);
  });
});

describe('a title page of a later shape', () => {
  it('is refused by its number, and not called damaged', async () => {
    title(() => ({ format: 5, called: 'Battery' }))();
    before = everything(folder);
    const { host } = aHost({ home });
    expect(await host.openFolder(folder)).toMatchObject({ ok: false, problems: [{ code: 'newer-unread', data: { format: 5 } }] });
    await host.close();
    for (const verb of ['check', 'account']) {
      const { code, err } = await called([verb, folder]);
      expect([code, err]).toEqual([2, expect.stringContaining('format 5')]);
    }
    expect(everything(folder)).toEqual(before);
  });
});

describe('a folder of the installation that a newer program wrote', () => {
  it('is refused before a lock, a list or a desk is made in it', async () => {
    const newer = temporaryFolder();
    mkdirSync(join(newer, 'later'));
    writeFileSync(join(newer, 'desk.json'), '{"format":2,"desks":["desk-0000000000000001"]}\n');
    const was = everything(newer);
    expect(openInstallation(newer)).toMatchObject({ ok: false, problems: [{ code: 'home-newer', data: { format: 2 } }] });
    before = everything(folder);
    const { ask, host } = aHost({ home: newer });
    expect(codesIn(await ask('state'))).toEqual(['home-newer']);
    expect(await host.openFolder(folder)).toMatchObject({ ok: false, problems: [{ code: 'home-newer' }] });
    await host.close();
    process.env.DAYBOOK_HOME = newer;
    const copy = join(temporaryFolder(), 'copy');
    cpSync(folder, copy, { recursive: true });
    const copied = everything(copy);
    for (const call of [
      ['join', folder, copy],
      ['serve', folder],
    ]) {
      const { code, err } = await called(call);
      expect([call[0], code, err]).toEqual([call[0], 2, expect.stringContaining('DAYBOOK_HOME')]);
    }
    expect([everything(newer), everything(folder), everything(copy)]).toEqual([was, before, copied]);
  });
});
