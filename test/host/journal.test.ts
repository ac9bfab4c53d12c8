/** A journal shows every change: each byte, each missing line, each cut tail. */
import { describe, expect, it } from 'vitest';
import { firstPrev } from '../../app/core/entry.ts';
import { lineCauseText } from '../../app/words/line-causes.ts';
import { canonicalText, sha256 } from '../../main/host/canonical.ts';
import { readJournal } from '../../main/host/journal.ts';
import { lineCauses, lineFor } from '../../main/host/line.ts';
import { note, now } from './drafts.ts';

const desk = 'desk-one';

/** A journal of `count` notes, chained by the program. */
function journalOf(count: number): Buffer {
  let prev = firstPrev;
  const lines: string[] = [];
  for (let n = 1; n <= count; n++) {
    const { entry, line } = lineFor(note(n, `Räum ${n}`), { desk, n, prev }, now);
    prev = entry.hash;
    lines.push(`${line}\n`);
  }
  return Buffer.from(lines.join(''), 'utf8');
}

/** A line with members changed and hashed anew, as somebody would who knows the rule. */
function rehashed(line: string, changes: Record<string, unknown>): string {
  const { hash: _, ...bare } = { ...(JSON.parse(line) as Record<string, unknown>), ...changes };
  return canonicalText({ ...bare, hash: sha256(canonicalText(bare)) });
}

const small = journalOf(4);
const smallLines = small.toString('utf8').trimEnd().split('\n');
const lineOfByte = (at: number) => small.subarray(0, at).filter((byte) => byte === 10).length + 1;
const withLine = (i: number, line: string) => Buffer.from(`${smallLines.toSpliced(i, 1, line).join('\n')}\n`, 'utf8');

describe('a journal', () => {
  it('verifies as it was written, and its end mark is its last hash', () => {
    const journal = readJournal(small, desk);
    expect(journal).toMatchObject({ endMark: (JSON.parse(smallLines[3]!) as { hash: string }).hash, goodBytes: small.length });
    expect(journal.entries.map((entry) => entry.n)).toEqual([1, 2, 3, 4]);
    expect([journal.fault, journal.torn, journal.newer]).toEqual([undefined, undefined, undefined]);
  });

  it('that is empty has no entries and 64 zeros for its end mark', () => {
    expect(readJournal(new Uint8Array(), desk)).toEqual({ desk, entries: [], endMark: firstPrev, goodBytes: 0 });
  });

  // the last newline turned into NUL is what an unfinished write leaves: told as a torn line, and its line is named all the same
  it('shows any byte that was changed into any of several others, and names its line', () => {
    for (let at = 0; at < small.length; at++) {
      const was = small[at]!;
      for (const to of new Set([was ^ 1, was ^ 0x20, was ^ 0x80, 0, 10, 32, 0x39])) {
        if (to === was) continue;
        const changed = Buffer.from(small);
        changed[at] = to;
        const { fault, torn, newer, entries } = readJournal(changed, desk);
        const unfinished = at === small.length - 1 && to === 0;
        expect(newer, `byte ${at} to ${to}`).toBeUndefined();
        expect(unfinished ? torn?.line : fault?.line, `byte ${at} to ${to}`).toBe(lineOfByte(at));
        expect(entries).toHaveLength(lineOfByte(at) - 1);
      }
    }
  });

  it('cut anywhere in its last line has a torn line and every entry before it', () => {
    const start = small.lastIndexOf(10, small.length - 2) + 1;
    for (let end = start + 1; end < small.length; end++) {
      const { fault, torn, entries, goodBytes } = readJournal(small.subarray(0, end), desk);
      expect(fault).toBeUndefined();
      expect(torn).toEqual({ line: 4, bytes: end - start });
      expect([entries.length, goodBytes]).toEqual([3, start]);
    }
  });

  it('cut at the end of a line verifies, but with an earlier end mark', () => {
    const cut = readJournal(Buffer.from(`${smallLines.slice(0, 3).join('\n')}\n`, 'utf8'), desk);
    expect(cut.endMark).toBe((JSON.parse(smallLines[2]!) as { hash: string }).hash);
    expect(cut.endMark).not.toBe(readJournal(small, desk).endMark);
  });

  const changes: [string, Buffer, number, string][] = [
    ['a line taken out', Buffer.from(`${smallLines.toSpliced(1, 1).join('\n')}\n`), 2, 'wrong-number'],
    ['a line that stands twice', Buffer.from(`${smallLines.toSpliced(1, 0, smallLines[0]!).join('\n')}\n`), 2, 'wrong-number'],
    ['a text changed and hashed anew', withLine(1, rehashed(smallLines[1]!, { body: { text: 'tidied' } })), 3, 'wrong-prev'],
    ['an entry of another desk', withLine(2, rehashed(smallLines[2]!, { desk: 'desk-two' })), 3, 'wrong-desk'],
    ['a member nobody knows', withLine(3, rehashed(smallLines[3]!, { extra: 1 })), 4, 'not-an-entry'],
    ['a body that is not of its kind', withLine(3, rehashed(smallLines[3]!, { body: { words: 'x' } })), 4, 'not-an-entry'],
    ['blanks that mean nothing', withLine(1, smallLines[1]!.replace('":', '": ')), 2, 'not-canonical'],
    ['an empty line', withLine(1, ''), 2, 'not-json'],
    ['a list', withLine(1, '[]'), 2, 'not-json'],
    ['bytes that are no text', Buffer.concat([withLine(0, smallLines[0]!), Buffer.from([0xff, 0xfe, 10])]), 5, 'not-text'],
    ['a line that ends in a carriage return', withLine(3, `${smallLines[3]}\r`), 4, 'not-canonical'],
  ];
  it.each(changes)('with %s names the line and the cause', (_, bytes, line, cause) => {
    expect(readJournal(bytes, desk).fault).toMatchObject({ line, cause });
  });

  it('names what the schema found in an entry that is none', () => {
    const { fault } = readJournal(withLine(3, rehashed(smallLines[3]!, { body: { text: '' } })), desk);
    expect(fault?.problems).toMatchObject([{ code: 'empty-text', field: 'body.text' }]);
  });

  it('carries a kind this program does not know', () => {
    const { entries, fault } = readJournal(
      withLine(3, rehashed(smallLines[3]!, { kind: 'moon-phase', body: { hash: 'x' } })),
      desk,
    );
    expect(fault).toBeUndefined();
    expect(entries.at(-1)).toMatchObject({ kind: 'moon-phase', body: { hash: 'x' } });
  });

  it('with a line of a newer format is read up to it, and the rest left alone', () => {
    const { entries, fault, newer } = readJournal(
      withLine(2, rehashed(smallLines[2]!, { format: 2, shape: { hash: 'other' } })),
      desk,
    );
    expect([entries.length, fault, newer]).toEqual([2, undefined, { line: 3, format: 2 }]);
  });

  it('under another file name is not this desk’s', () => {
    expect(readJournal(small, 'desk-two').fault).toMatchObject({ line: 1, cause: 'wrong-desk' });
  });
});

describe('the causes', () => {
  it('each have words', () => {
    for (const cause of lineCauses) expect(lineCauseText(cause)).not.toBe(cause);
  });
});
