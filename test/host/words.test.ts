/** Whatever the host can say has words of its own. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Notice } from '../../app/contract.ts';
import { openBook } from '../../app/contract.ts';
import { noticeText } from '../../app/words/notices.ts';
import { backupProblems } from '../../app/words/problems-backups.ts';
import { hostProblems } from '../../app/words/problems-host.ts';
import { importProblems } from '../../app/words/problems-import.ts';
import { paperProblems } from '../../app/words/problems-papers.ts';
import { terminalProblems } from '../../app/words/problems-terminal.ts';

const main = fileURLToPath(new URL('../../main', import.meta.url));
const sources = [
  join(main, 'loopback.ts'),
  ...readdirSync(join(main, 'host'), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.ts') && !name.startsWith('print'))
    .map((name) => join(main, 'host', name)),
].map((path) => readFileSync(path, 'utf8'));

/** The host's own words, and those of the papers, tables and backups it is asked for and of the verbs that run it. */
const told = { ...hostProblems, ...importProblems, ...paperProblems, ...backupProblems, ...terminalProblems };

describe('the words of the host', () => {
  it('tell every problem that its sources can make', () => {
    const made = sources.flatMap((text) => [...text.matchAll(/problem\(\s*'([a-z-]+)'/g)].map((m) => m[1]!));
    const disk = sources.flatMap((text) => [...text.matchAll(/^ {2}E[A-Z]+: '([a-z-]+)',$/gm)].map((m) => m[1]!));
    expect(new Set(made).size).toBeGreaterThan(20);
    expect(disk.length).toBeGreaterThan(10);
    expect([...new Set([...made, ...disk, 'disk-error'])].filter((code) => !Object.hasOwn(told, code))).toEqual([]);
  });

  it('have no gap where a value belongs', () => {
    const data = {
      path: '/book',
      detail: 'x',
      desk: 'desk-one',
      line: 3,
      cause: 'wrong-hash',
      format: 2,
      pid: 7,
      host: 'here',
      file: 'f.png',
      wanted: 'JSON',
      most: 1e6,
      port: 4711,
      other: 'Lower battery',
      otherId: 'book-two',
      name: 'Upper battery',
      id: 'book-one',
      to: '2026-03-31',
      version: 1,
      entries: 40,
      kind: 'assay',
      what: 'paper',
      lines: 'closing stock 9.0 now 8.0',
      program: '0.1.0',
      here: 5,
      least: 8,
      seconds: 20,
      where: 'backup.json',
      how: 'key',
      before: 'ab'.repeat(32),
      after: 'cd'.repeat(32),
    };
    for (const [code, text] of Object.entries({ ...hostProblems, ...backupProblems }))
      expect(text(data), code).not.toMatch(/undefined|NaN|null/);
  });

  it('tell every notice, with desk and line where it has them', () => {
    for (const code of openBook.shape.notices.element.shape.code.options) {
      const notice: Notice = { code, desk: 'desk-one', line: 3, detail: code === 'elsewhere-open' ? '7 here' : 'wrong-hash' };
      expect(noticeText(notice)).not.toMatch(/undefined/);
      expect(noticeText({ code }), code).not.toMatch(/undefined/);
    }
    expect(noticeText({ code: 'broken-chain', desk: 'desk-one', line: 3, detail: 'wrong-hash' })).toContain(
      'desk desk-one, line 3',
    );
  });

  it('never call anything safe, approved, compliant or authorised', () => {
    const all = [
      ...Object.values(hostProblems).map((text) => text({})),
      ...openBook.shape.notices.element.shape.code.options.map((code) => noticeText({ code })),
    ];
    for (const text of all) expect(text).not.toMatch(/\b(safe|approved|compliant|authori[sz]ed)\b/i);
  });
});
