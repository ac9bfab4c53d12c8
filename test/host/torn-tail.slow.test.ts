/** A journal cut at any byte of its last two lines: what is whole is read and counted, what is torn is moved aside by the desk's own writer alone. */
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeDaybook, readDaybook } from '../../main/host/daybook-folder.ts';
import { openInstallation } from '../../main/host/installation.ts';
import { desksFolder, journalPath } from '../../main/host/journal-writer.ts';
import { openDaybook } from '../../main/host/open-daybook.ts';
import { called, everything } from '../terminal/called.ts';
import { note, now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

const value = <T>(result: { ok: true; value: T } | { ok: false; problems: unknown }): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.value;
};

/** A daybook of four notes, and where its last two lines begin. */
function written() {
  const folder = join(temporaryFolder(), 'book');
  value(makeDaybook(folder, 'Test Battery', now));
  const here = value(openInstallation(temporaryFolder()));
  const book = value(openDaybook(folder, here));
  for (let i = 1; i <= 4; i++) value(book.keep(note(i), now));
  book.close();
  const path = journalPath(folder, here.desk);
  const whole = readFileSync(path);
  const ends = [...whole.keys()].filter((i) => whole[i] === 10).map((i) => i + 1);
  return { folder, here, path, whole, ends };
}

it('cut at every byte of its last two lines opens with every whole line, sets the rest aside byte for byte, and is written on', async () => {
  const { folder, here, path, whole, ends } = written();
  const desks = desksFolder(folder);
  let cuts = 0;
  for (let at = ends[1]!; at < whole.length; at++, cuts++) {
    const lines = ends.filter((end) => end <= at).length;
    const tail = whole.subarray(ends[lines - 1], at);
    for (const name of readdirSync(desks)) rmSync(join(desks, name));
    // as after a loss of power: the machine had not yet noted how far it had seen
    rmSync(join(here.home, 'daybooks'), { recursive: true, force: true });
    writeFileSync(path, whole.subarray(0, at));
    const before = everything(folder);

    // reading counts what is whole and changes nothing
    const read = value(readDaybook(folder));
    expect([at, read.entries.length, read.notices.map((n) => n.code)]).toEqual([at, lines, tail.length > 0 ? ['torn-line'] : []]);
    const checked =
      at % 40 === 0 || tail.length === 0 || at === whole.length - 1 ? await called(['check', folder, '--json']) : null;
    if (checked) expect([checked.code, JSON.parse(checked.out)]).toMatchObject([0, { entries: lines, faults: [] }]);
    expect(everything(folder)).toEqual(before);

    // another installation is another desk: it opens the book and leaves the tail where it is
    if (at % 40 === 0) {
      const other = value(openDaybook(folder, value(openInstallation(temporaryFolder()))));
      expect(other.describe().notices.map((n) => n.code)).toEqual(tail.length > 0 ? ['torn-line'] : []);
      other.close();
      expect(everything(folder)).toEqual(before);
    }

    const book = value(openDaybook(folder, here));
    expect(value(book.whole()).entries).toHaveLength(lines);
    expect(readdirSync(desks).length).toBe(tail.length > 0 ? 2 : 1);
    if (tail.length > 0) expect(readFileSync(join(desks, `${here.desk}.torn-${lines + 1}`))).toEqual(tail);
    const kept = value(book.keep(note(9), now));
    expect([kept.entry.n, value(book.whole()).entries.length]).toEqual([lines + 1, lines + 1]);
    book.close();
    const again = value(readDaybook(folder));
    expect([again.entries.length, again.notices]).toEqual([lines + 1, []]);
    expect(readFileSync(path).subarray(0, ends[lines - 1])).toEqual(whole.subarray(0, ends[lines - 1]));
  }
  expect(cuts).toBe(whole.length - ends[1]!);
});
