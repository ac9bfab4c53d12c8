/** The built command as the system meets it: streams, exit codes, a reader that stops reading. What the verbs do is in contract.test.ts. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { daybookCommand } from '../../main/build/paths.mjs';
import { openInstallation } from '../../main/host/installation.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { buildOnce, daybook, problemsIn, run } from './built.ts';

let home: string;

beforeAll(() => buildOnce(), 120_000);
beforeEach(() => {
  home = mkdtempSync(join(tmpdir(), 'command-'));
});
afterEach(() => rmSync(home, { recursive: true, force: true }));

describe('the built command', () => {
  it('ends with 0 when it is done, and prints to standard output alone', async () => {
    const { code, out, err } = await daybook(['help']);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('daybook check DIR');
  });

  it('ends with 2 when the call is wrong, and says why as JSON on standard error', async () => {
    const { code, out, err } = await daybook(['weigh']);
    expect([code, out]).toEqual([2, '']);
    expect(problemsIn(err)).toHaveLength(1);
  });

  it('ends with 1 when the record itself is at fault', async () => {
    const book = join(home, 'book');
    expect((await daybook(['new', 'book', '--site', 'Upper Battery'], { cwd: home })).code).toBe(0);
    const installation = openInstallation(join(home, 'state'));
    const opened = installation.ok ? openDaybook(book, installation.value) : installation;
    if (!installation.ok || !opened.ok) throw new Error('not opened');
    const note = { id: 'note-000001', happened: '2026-03-14T09:20+13:00', by: null, kind: 'note', body: { text: 'Note 1' } };
    expect(opened.value.keep(note, '2026-03-14T09:30:00+13:00').ok).toBe(true);
    opened.value.close();
    const journal = join(book, 'desks', `${installation.value.desk}.jsonl`);
    writeFileSync(journal, readFileSync(journal, 'utf8').replace('Note 1', 'Note 2'));
    const { code, err } = await daybook(['check', 'book'], { cwd: home });
    expect(code).toBe(1);
    expect(problemsIn(err)).toHaveLength(1);
  });

  it('reads standard input to its end, in however many pieces it comes', async () => {
    const { code, out } = await run('bash', [
      '-c',
      `(printf '{"mass":'; sleep 0.2; printf '"9 lb","to":["g"]}') | "${process.execPath}" "${daybookCommand}" reckon mass`,
    ]);
    expect(code).toBe(0);
    // 1 lb is 453.59237 g exactly (international yard and pound agreement, 1959)
    expect(JSON.parse(out).g).toBeCloseTo(9 * 453.59237, 9);
  });

  it('ends quietly when whoever reads its output stops reading', async () => {
    const { code, err } = await run('bash', [
      '-c',
      `"${process.execPath}" "${daybookCommand}" help | true; echo "\${PIPESTATUS[0]}" >&2`,
    ]);
    expect([code, err.trim()]).toEqual([0, '0']);
  });

  it('prints the same from a folder with blanks and other letters in its name', async () => {
    const { code, out } = await daybook(['new', join(home, 'Grube Süd 2'), '--site', 'Grube Süd'], { cwd: home });
    expect(code).toBe(0);
    expect(out).toContain('Grube Süd');
  });
});
