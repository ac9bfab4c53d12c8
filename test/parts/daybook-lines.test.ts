/** The list of the daybook and the readings of an entry: everything is there, in order, and nothing that was written is lost from sight. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import type { Body, Kind } from '../../app/core/kinds/index.ts';
import type { Daybook } from '../../app/daybook/book.svelte.ts';
import { everything, findingFrom, findingHref } from '../../app/screens/daybook/address.ts';
import { changesOf, correctionPlan } from '../../app/screens/daybook/correction.ts';
import { byDay, found, Lines, lineOf, linesPerPage, newestFirst } from '../../app/screens/daybook/lines.svelte.ts';
import { allCorrections, namedBy } from '../../app/screens/daybook/links.ts';
import { readingsOf } from '../../app/screens/daybook/readings.ts';
import { partsOf } from '../../app/screens/shared/places.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';

function written() {
  const book = BookMaker.site();
  const helper = book.add('helper', 'person', { name: 'Helper', roles: ['helper'] });
  const [lot = ''] = book.lots('march', ['955.6'], book.bench);
  const cleanUp = lot.split('/')[0] ?? '';
  const note = book.add(
    'note one',
    'note',
    { text: 'The <b>lamp</b> was out.' },
    { by: helper, happened: '2026-03-05T21:15+13:00' },
  );
  return { book, helper, lot, cleanUp, note };
}

describe('the list', () => {
  test('holds every entry once, the newest first, with kinds nobody here understands', () => {
    const { book, note } = written();
    book.add('later kind', 'furnace' as Kind, { stamps: 5 } as never, { happened: '2026-03-06T08:00+13:00' });
    const read = readBook(book.entries);
    const all = newestFirst(read);
    expect(new Set(all.map((k) => k.entry.id)).size).toBe(book.entries.length);
    expect(all.slice(0, 2).map((k) => k.entry.id)).toEqual(['later-kind', note]);
    const [strange] = all.map((k) => lineOf(read, k));
    expect(strange).toMatchObject({
      kind: 'furnace',
      text: '{"stamps":5}',
      marks: [{ text: 'not understood here', tone: 'warm' }],
    });
  });

  test('groups by the day on the wall, and no day comes twice though offsets differ', () => {
    const book = new BookMaker();
    book.add('east', 'note', { text: 'a' }, { happened: '2026-03-05T00:30+13:00' });
    book.add('west', 'note', { text: 'b' }, { happened: '2026-03-04T23:50-03:00' });
    book.add('late', 'note', { text: 'c' }, { happened: '2026-03-05T23:00+13:00' });
    const read = readBook(book.entries);
    const days = byDay(newestFirst(read).map((k) => lineOf(read, k)));
    expect(days.map((d) => [d.day, d.lines.map((l) => l.text)])).toEqual([
      ['2026-03-05', ['c', 'a']],
      ['2026-03-04', ['b']],
    ]);
  });

  test('finds by kind, writer, day and text, and by words that a correction took out', () => {
    const { book, note, helper, cleanUp } = written();
    const fix = book.add('fix', 'correction', {
      corrects: note,
      body: { text: 'The lantern was out.' },
      why: 'It is a lantern.',
    });
    const read = readBook(book.entries);
    const ids = (finding: Partial<typeof everything>) => found(read, { ...everything, ...finding }).map((k) => k.entry.id);
    expect(ids({ kind: 'clean-up' })).toEqual([cleanUp]);
    expect(ids({ by: helper })).toEqual([note]);
    expect(ids({ text: 'LANTERN' }).sort()).toEqual([fix, note].sort());
    expect(ids({ text: 'lamp' })).toEqual([note]);
    expect(ids({ text: 'march a' })).toEqual([cleanUp]);
    expect(ids({ until: '2026-03-04' })).not.toContain(note);
    expect(ids({ text: 'nowhere to be found' })).toEqual([]);
    expect(ids({ marked: true })).toContain(note);
  });

  test('pages are whole: every entry is on exactly one', () => {
    const book = new BookMaker();
    for (let i = 0; i < linesPerPage * 2 + 3; i++) book.add(`note-${i}`, 'note', { text: `n ${i}` });
    const lines = new Lines({ book: readBook(book.entries) } as Daybook);
    const seen: string[] = [];
    for (let page = 1; page <= lines.pages; page++) {
      lines.look({ page });
      seen.push(...lines.days.flatMap((d) => d.lines.map((l) => l.id)));
    }
    expect(lines.pages).toBe(3);
    expect(seen.length).toBe(book.entries.length);
    expect(new Set(seen).size).toBe(seen.length);
    lines.look({ page: 99 });
    expect(lines.page).toBe(3);
    lines.look({ text: 'n 12' });
    expect(lines.finding.page).toBe(1);
  });

  test('a book of twenty thousand entries gives its first page and a search within a second each', () => {
    const book = new BookMaker();
    for (let i = 0; i < 20_000; i++) book.add(`note-${i}`, 'note', { text: `entry ${i}` });
    const read = readBook(book.entries);
    const lines = new Lines({ book: read } as Daybook);
    const first = performance.now();
    expect(lines.days.flatMap((d) => d.lines)).toHaveLength(linesPerPage);
    const shown = performance.now();
    lines.look({ text: 'entry 19999' });
    expect(lines.count).toBe(1);
    expect(shown - first).toBeLessThan(1000);
    expect(performance.now() - shown).toBeLessThan(1000);
  });
});

describe('the address', () => {
  test('gives back what was looked for, whatever is typed', () => {
    const finding = { kind: 'firing', by: 'keeper-1', text: 'a/b=c & 5 % “x”', until: '2026-03-14', marked: true, page: 3 };
    const [, ...rest] = partsOf(findingHref(finding));
    expect(findingFrom(rest)).toEqual(finding);
    expect(findingHref(everything)).toBe('#/daybook');
    expect(findingFrom(['find', 'page=-4', 'nonsense'])).toEqual(everything);
  });
});

describe('readings', () => {
  test('old and new stand side by side with what changed, who, when and why', () => {
    const { book, cleanUp, helper } = written();
    const before = book.entries.find((e) => e.id === cleanUp)?.body as Body<'clean-up'>;
    const [lot] = before.lots;
    if (!lot) throw new Error('one lot');
    const fix = book.add(
      'fix',
      'correction',
      { corrects: cleanUp, body: { ...before, lots: [{ ...lot, weight: scaled('956.6', book.bench) }] }, why: 'Misread.' },
      { by: helper },
    );
    const read = readBook(book.entries);
    const root = read.current.byId.get(cleanUp);
    if (!root) throw new Error('the clean-up is there');
    const readings = readingsOf(read, root);
    expect(readings?.columns.map((c) => [c.title, c.by, c.why, c.counts])).toEqual([
      ['As first written', 'nobody named', null, false],
      ['Correction 1', 'Helper', 'Misread.', true],
    ]);
    expect(readings?.rows.map((r) => [r.name, r.texts.map((t) => t?.replace('\u00a0', ' ')), r.changed])).toEqual([
      ['Lot 1, Weight', ['955.6 g', '956.6 g'], [false, true]],
    ]);
    expect(namedBy(read).get(cleanUp)).toContain(fix);
  });

  test('two corrections of one reading are both shown and marked, and a struck one stays in sight', () => {
    const { book, note } = written();
    const fix = (name: string, text: string, corrects = note) =>
      book.add(name, 'correction', { corrects, body: { text }, why: `because ${name}` });
    const a = fix('fix a', 'a');
    fix('fix b', 'b');
    let read = readBook(book.entries);
    let root = read.current.byId.get(note);
    expect(root?.contested).toBe(true);
    expect(root && readingsOf(read, root)?.columns.map((c) => c.sideBySide)).toEqual([false, true, true]);
    book.add('strike a', 'strike', { strikes: a, why: 'the other is right' });
    read = readBook(book.entries);
    root = read.current.byId.get(note);
    if (!root) throw new Error('the note is there');
    expect(allCorrections(read, root)).toHaveLength(2);
    expect(readingsOf(read, root)?.columns.map((c) => [c.struck, c.sideBySide, c.counts])).toEqual([
      [false, false, false],
      [true, false, false],
      [false, false, true],
    ]);
  });

  test('a row taken out of a list does not make the rows after it look changed', () => {
    const book = BookMaker.site();
    const [first = ''] = book.lots('march', ['10', '20', '30'], book.bench);
    const cleanUp = first.split('/')[0] ?? '';
    const before = book.entries.find((e) => e.id === cleanUp)?.body as Body<'clean-up'>;
    book.add('fix', 'correction', { corrects: cleanUp, body: { ...before, lots: before.lots.slice(1) }, why: 'not there' });
    const read = readBook(book.entries);
    const root = read.current.byId.get(cleanUp);
    const readings = root && readingsOf(read, root);
    expect(readings?.rows.every((r) => r.name.startsWith('Lot 1,') && r.texts[1] === null)).toBe(true);
    expect(readings?.rows).toHaveLength(4);
  });

  test('a correction names the reading that was before its writer, and tells what it would change', () => {
    const { book, note } = written();
    const fix = book.add('fix', 'correction', { corrects: note, body: { text: 'b' }, why: 'w' });
    const read = readBook(book.entries);
    const reading = read.current.byId.get(note);
    if (!reading) throw new Error('the note is there');
    const plan = correctionPlan(reading);
    const values = plan.start();
    expect(values.corrects).toBe(fix);
    expect(changesOf(read, reading, values)).toEqual([]);
    expect(plan.body(values)).toEqual({ corrects: fix, body: { text: 'b' }, happened: undefined, why: undefined });
    values.fields.text = 'c';
    values.happened.time = '21:20';
    expect(changesOf(read, reading, values)).toEqual(['When it happened', 'Note']);
    expect(plan.body(values)).toMatchObject({ body: { text: 'c' }, happened: '2026-03-05T21:20+13:00' });
  });
});
