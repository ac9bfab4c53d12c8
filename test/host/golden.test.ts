/** The bytes of every kind of entry on disk, pinned. What to do when one must change stands in test/golden/README.md. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { firstPrev } from '../../app/core/entry.ts';
import { draftFrom, kinds } from '../../app/core/kinds/index.ts';
import { readJournal } from '../../main/host/journal.ts';
import { lineFor } from '../../main/host/line.ts';

const golden = (name: string) => readFileSync(new URL(`../golden/${name}`, import.meta.url));
const drafts = JSON.parse(golden('drafts.json').toString('utf8')) as { kind: string }[];
const lines = golden('desk-golden.jsonl').toString('utf8').trimEnd().split('\n');

describe('golden entries', () => {
  it('hold one entry of every kind the program knows', () => {
    expect(new Set(drafts.map((draft) => draft.kind))).toEqual(new Set(Object.keys(kinds)));
  });

  it.each(drafts.map((draft, i) => ({ kind: draft.kind, draft, i })))('$kind is written in these bytes', ({ draft, i }) => {
    const read = draftFrom(draft);
    expect(read).toMatchObject({ ok: true });
    if (!read.ok) return;
    const prev = i === 0 ? firstPrev : (JSON.parse(lines[i - 1]!) as { hash: string }).hash;
    const { line } = lineFor(read.value, { desk: 'desk-golden', n: i + 1, prev }, '2026-03-14T17:00:00+13:00');
    expect(line).toBe(lines[i]);
  });

  it('verify as a journal', () => {
    const journal = readJournal(golden('desk-golden.jsonl'), 'desk-golden');
    expect(journal.fault).toBeUndefined();
    expect(journal.entries).toHaveLength(drafts.length);
    expect(journal.endMark).toBe((JSON.parse(lines.at(-1)!) as { hash: string }).hash);
  });
});
