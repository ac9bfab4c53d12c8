/** `sample`: the invented site on disk, the same bytes every time, sound by its own check; and the large one by its seed. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { readDaybook } from '../../main/host/daybook-folder.ts';
import { sampleName } from '../../main/host/sample/site.ts';
import { runTerminal } from '../../main/terminal/run.ts';
import { aHost, bookIn, codesIn } from '../host/a-host.ts';
import { now } from '../host/drafts.ts';
import { problemsIn } from './built.ts';

let place: string;
beforeEach(() => {
  place = mkdtempSync(join(tmpdir(), 'sample-'));
});
afterEach(() => rmSync(place, { recursive: true, force: true }));

async function daybook(...args: string[]) {
  let out = '';
  let err = '';
  const code = await runTerminal(args, {
    print: (line) => {
      out += `${line}\n`;
    },
    complain: (line) => {
      err += `${line}\n`;
    },
    input: async () => Buffer.alloc(0),
    ended: async () => {},
  });
  return { code, out, err };
}
const journal = (name: string) => readFileSync(join(place, name, 'desks', 'sample-desk.jsonl'), 'utf8');

test('the sample site verifies, and is the same bytes every time', async () => {
  const { code, out } = await daybook('sample', join(place, 'one'));
  expect(code).toBe(0);
  expect(out).toContain(sampleName);
  await daybook('sample', join(place, 'two'));
  expect(journal('two')).toBe(journal('one'));
  expect((await daybook('check', join(place, 'one'))).code).toBe(0);
  expect(JSON.parse((await daybook('account', join(place, 'one'), '--json')).out)).toMatchObject({ found_g: 1842.6 });
});

test('a generated one has as many entries as asked, the same for the same seed and others for another', async () => {
  for (const [name, seed] of [
    ['a', '7'],
    ['b', '7'],
    ['c', '8'],
  ] as const)
    expect((await daybook('sample', join(place, name), '--entries', '60', '--seed', seed)).code).toBe(0);
  expect(journal('a').trimEnd().split('\n')).toHaveLength(60);
  expect(journal('b')).toBe(journal('a'));
  expect(journal('c')).not.toBe(journal('a'));
  const read = readDaybook(join(place, 'a'));
  expect(read.ok && read.value.notices).toEqual([]);
});

test('what is no number of entries is refused, and so is a folder with something in it', async () => {
  for (const [option, value] of [
    ['--entries', '0'],
    ['--entries', '1e3'],
    ['--entries', '10000000'],
    ['--seed', '-1'],
  ] as const) {
    const { code, err } = await daybook('sample', join(place, 'one'), `${option}=${value}`);
    expect([code, problemsIn(err).map((p) => p.field)]).toEqual([2, [option]]);
  }
  writeFileSync(join(place, 'something'), '');
  const { code, err } = await daybook('sample', place);
  expect([code, problemsIn(err).map((p) => p.field)]).toEqual([2, ['DIR']]);
});

test('the window opens it beside its other daybooks, writes in it as in any, and finds it again as it was left', async () => {
  const { ask, options, host } = aHost();
  const opened = bookIn(await ask('open', { sample: true }));
  expect(opened).toMatchObject({ name: sampleName, folder: join(options.documents, sampleName), writable: true, notices: [] });
  const note = {
    id: 'note-in-the-sample',
    happened: now,
    by: null,
    kind: 'note',
    body: { text: 'Looked around.' },
  };
  expect(await ask('keep', note)).toMatchObject({ ok: true });
  await ask('close');
  const again = bookIn(await ask('open', { sample: true }));
  expect(again.desks.reduce((n, d) => n + d.entries, 0)).toBe(opened.desks.reduce((n, d) => n + d.entries, 0) + 1);
  expect(codesIn(await ask('open', { sample: false }))).not.toEqual([]);
  await host.close();
});
