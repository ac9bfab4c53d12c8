/** A table becomes entries as its columns say, whole or not at all; every fault is named with its row and its column. The old book here is invented. */
import { describe, expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import type { Entry } from '../../app/core/entry.ts';
import { readImport } from '../../app/core/importing/import.ts';
import { type Mapping, mapping as mappingShape } from '../../app/core/importing/mapping.ts';
import type { Kind } from '../../app/core/kinds/index.ts';
import { BookMaker } from './book-maker.ts';
import { faults, oldMapping, oldRows, separated } from './old-book.ts';

const now = '2026-11-20T10:00:00+13:00';

function site(): BookMaker {
  const book = BookMaker.site();
  book.add('helper', 'person', { name: 'Helper', roles: ['helper'] });
  return book;
}

function reading(kind: Kind, text: string, mapping: unknown = {}, entries: readonly Entry[] = site().entries) {
  const read = mappingShape.parse(mapping);
  return readImport({ kind, text, mapping: read as Mapping, batch: 'batch-one', entries, now });
}

/** The problems as `row 3, column "x": code`. */
function told(got: ReturnType<typeof readImport>): string[] {
  const problems = got.ok ? got.value.problems : got.problems;
  return problems.map((p) => `${p.field}: ${p.code}`);
}

const drafts = (got: ReturnType<typeof readImport>) => (got.ok ? got.value.drafts : []);
const bodies = (got: ReturnType<typeof readImport>) => drafts(got).map(({ body }) => body);

describe('an invented old book of 500 rows', () => {
  it('with seven faults names all seven with row and column, and adds nothing', () => {
    const got = reading('clean-up', separated(oldRows(true)), oldMapping);
    expect(told(got)).toEqual(faults.map(({ row, column, code }) => `row ${row + 2}${lines(row)}, column "${column}": ${code}`));
    expect(drafts(got)).toEqual([]);
  });

  it('put right, adds 500 clean-ups with their day, their page and every cell as it stood', () => {
    const got = reading('clean-up', separated(oldRows(false)), oldMapping);
    expect(told(got)).toEqual([]);
    expect(drafts(got)).toHaveLength(500);
    expect(drafts(got)[4]).toEqual({
      id: 'batch-one-5',
      kind: 'clean-up',
      by: 'keeper',
      happened: '1897-01-05T12:00+11:30',
      timing: 'day',
      transcribed: { book: 'Battery book 3 (invented)', page: '1' },
      body: {
        type: 'routine',
        ore: { mass: '16.4 long-ton' },
        lots: [{ key: '1', label: 'Ball 5', weight: { how: 'stated', mass: '9 ozt 5 dwt' } }],
        strained: { weight: { how: 'stated', mass: '2.25 lb' }, vessel: 'bottle' },
        note: '-1+2',
      },
      imported: {
        batch: 'batch-one',
        n: 5,
        of: 500,
        row: 6,
        cells: [
          { column: 'Date', text: '05/01/1897' },
          { column: 'Ball', text: 'Ball 5' },
          { column: 'Amalgam', text: '9 oz. 5 dwts.' },
          { column: 'Ore', text: '16,4' },
          { column: 'Kind of clean-up', text: 'routine' },
          { column: 'Keeper', text: 'Keeper' },
          { column: 'Folio', text: '1' },
          { column: 'Remark', text: '-1+2' },
          { column: 'Poured into', text: 'Working bottle' },
          { column: 'Strained off', text: '2,25' },
        ],
      },
    });
    const book = readBook([
      ...site().entries,
      ...drafts(got).map(
        (d, i): Entry => ({
          ...d,
          format: 1,
          desk: 'desk-two',
          n: i + 1,
          prev: '0'.repeat(64),
          hash: 'f'.repeat(64),
          written: now,
        }),
      ),
    ]);
    expect(book.lots.all.size).toBe(500);
  });

  it.each([
    [';', '\n', ''],
    ['\t', '\n', ''],
    [',', '\r\n', ''],
    [';', '\r\n', '\ufeff'],
    [',', '\r', ''],
  ])('is the same with %j between cells, %j at the end of lines and %j before it', (mark, end, before) => {
    const rows = oldRows(false).slice(0, 60);
    const plain = reading('clean-up', separated(rows), oldMapping);
    const other = reading('clean-up', before + separated(rows, mark, end), oldMapping);
    expect(bodies(other)).toEqual(bodies(plain));
    expect(bodies(other)).toHaveLength(60);
  });
});

/** Remarks of two lines push the rows after them down: rows 5, 11, 17 … each add one. */
function lines(row: number): string {
  const more = Math.floor((row + 0) / 6);
  return more === 0 ? '' : ` (line ${row + 2 + more})`;
}

describe('a table', () => {
  it.each([
    ['', ['row 1: import-empty']],
    ['text\n', ['row 2: import-no-rows']],
    ['text,about;x\nhello,\n', ['row 1: import-separator']],
    ['text\n"open\n', ['row 2: import-quote-open']],
    ['text\n"a"b\n', ['row 2: import-quote-after']],
    ['happened,text,text\n2026-01-01,a,b\n', ['row 1, column "text": import-heading-twice']],
    ['happened,text\n2026-01-01,a,b\n', ['row 2: import-cells']],
    ['happened,text\n2026-01-01,a\u0000b\n', ['row 2, column "text": unprintable']],
    ['happened,text\n2026-01-01,\u202eevil\n', ['row 2, column "text": unprintable']],
    [`happened,text\n2026-01-01,${'x'.repeat(4001)}\n`, ['row 2, column "text": import-cell-long']],
    ['happened,text,mood\n2026-01-01,a,good\n', ['row 1, column "mood": import-column-unplaced']],
    ['happened,text,struck\n2026-01-01,a,strike-one\n', ['row 2, column "struck": import-struck']],
    ['happened,text,page\n2026-01-01,a,4\n', ['row 2, no column for "transcribed.book": missing']],
  ])('%j is refused at its place', (text, problems) => {
    const got = reading('note', text);
    expect(told(got)).toEqual(problems);
    expect(drafts(got)).toEqual([]);
  });

  it('over ten million characters, or with more rows than are counted, is refused before it is read', () => {
    expect(told(reading('note', `text\n${'x'.repeat(10_000_000)}`))).toEqual([': import-too-large']);
    expect(told(reading('note', `text\n${'x\n'.repeat(2_002)}`))).toEqual([': import-rows-many']);
  });

  it('whose column is left out on purpose, or empty, is taken without it', () => {
    const got = reading('note', 'happened,text,mood,empty\n2026-01-01,a,good,\n', { columns: [{ column: 'mood', field: '' }] });
    expect(bodies(got)).toEqual([{ text: 'a' }]);
  });

  it('cannot bring corrections or closings', () => {
    expect(told(reading('correction', 'x\ny\n'))).toEqual(['--as: import-not-this-kind']);
    expect(told(reading('closing', 'x\ny\n'))).toEqual(['--as: import-not-this-kind']);
  });
});

describe('a cell', () => {
  const receipt = (cell: string, heading = 'weight') =>
    reading('receipt', `happened;vessel;way;${heading}\n2026-01-01;Working bottle;bought;${cell}\n`, { separator: 'semicolon' });
  const weight = (cell: string, heading?: string) => bodies(receipt(cell, heading)).map((body) => body.weight);

  it.each([
    ['2.50 kg', 'weight', '2.50 kg'],
    ['2.50', 'weight [kg]', '2.50 kg'],
    ['2,50', 'weight [kg, comma]', '2.50 kg'],
    ['18 oz 18 dwt', 'weight [ozt]', '18 ozt 18 dwt'],
    ['18 ozs.', 'weight [oz-av]', '18 oz-av'],
    ['87 11 10', 'weight [ozt-dwt-gr]', '87 ozt 11 dwt 10 gr'],
    ['87.11.10', 'weight [ozt-dwt-gr]', '87 ozt 11 dwt 10 gr'],
    ['3 lb', 'weight [kg]', '3 lb'],
  ])('%j under %j is %j', (cell, heading, mass) => {
    expect(weight(cell, heading)).toEqual([{ how: 'stated', mass }]);
  });

  it.each([
    ['2.50', 'weight', 'mass-no-unit'],
    ['18 oz', 'weight', 'mass-bare-ounce'],
    ['2 tons', 'weight [ozt]', 'mass-bare-ton'],
    ['2,50', 'weight [kg]', 'import-comma'],
    ['1.234,5', 'weight [g, comma]', 'import-point'],
    ['87.11', 'weight [ozt-dwt-gr]', 'import-three-numbers'],
    ['87.20.0', 'weight [ozt-dwt-gr]', 'import-three-numbers'],
    ['-3 g', 'weight', 'mass-sign'],
  ])('%j under %j is refused: %s', (cell, heading, code) => {
    expect(told(receipt(cell, heading))).toEqual([`row 2, column "${heading}": ${code}`]);
  });

  const day = (cell: string, form: string) => reading('note', `happened [${form}],text\n${cell},a\n`);
  it.each([
    ['1898-03-04', 'year-month-day', '1898-03-04T12:00+13:00'],
    ['4.3.1898', 'day-month-year', '1898-03-04T12:00+13:00'],
    ['3/4/1898', 'month-day-year', '1898-03-04T12:00+13:00'],
    ['4 March 1898', 'day-month-year', '1898-03-04T12:00+13:00'],
    ['4 Mar 1898 9:20', 'day-month-year', '1898-03-04T09:20+13:00'],
    ['2026-03-04T09:20:01+11:00', 'day-month-year', '2026-03-04T09:20:01+11:00'],
  ])('%j as %s is %s', (cell, form, moment) => {
    expect(drafts(day(cell, form)).map(({ happened, timing }) => [happened, timing])).toEqual([
      [moment, moment.includes('T12:00') ? 'day' : undefined],
    ]);
  });

  it.each([
    ['13/04/1898', 'month-day-year', 'import-day'],
    ['4/3/98', 'day-month-year', 'import-year'],
    ['1898-03-04', 'day-month-year', 'import-day'],
    ['4/3/1898', 'year-month-day', 'import-day'],
    ['4/3/1898 25:00', 'day-month-year', 'import-time'],
  ])('%j as %s is refused: %s', (cell, form, code) => {
    expect(told(day(cell, form))).toEqual([`row 2, column "happened [${form}]": ${code}`]);
  });

  it('keeps what looks like a formula as the text it was, and loses the apostrophe that an export gave it', () => {
    const got = reading(
      'note',
      `happened,text\n2026-01-01,=1+1\n2026-01-01,'=1+1\n2026-01-01,"=cmd|' /C x'!A0"\n2026-01-01,'tis\n`,
    );
    expect(bodies(got)).toEqual([{ text: '=1+1' }, { text: '=1+1' }, { text: "=cmd|' /C x'!A0" }, { text: "'tis" }]);
    expect(drafts(got).map(({ imported }) => imported?.cells[1]?.text)).toEqual(['=1+1', "'=1+1", "=cmd|' /C x'!A0", "'tis"]);
  });
});

describe('a name', () => {
  it('that fits two things is told with how many, and an unknown one with what it should be', () => {
    const book = site();
    const lots = book.lots('march', ['10', '20']);
    book.add('again', 'clean-up', {
      type: 'routine',
      lots: [{ key: '1', label: 'march A', weight: { how: 'stated', mass: '1 g' } }],
    });
    const got = reading(
      'squeeze',
      `happened,lots[0],made[0].label,made[0].weight\n2026-05-01,march A,x,1 g\n2026-05-01,march B,y,1 g\n2026-05-01,march C,z,1 g\n`,
      {},
      book.entries,
    );
    expect(told(got)).toEqual(['row 2, column "lots[0]": import-two-names', 'row 4, column "lots[0]": import-unknown-name']);
    const fine = reading(
      'squeeze',
      `happened,lots[0],made[0].label,made[0].weight\n2026-05-01,march B,y,1 g\n`,
      {},
      book.entries,
    );
    expect(bodies(fine)).toMatchObject([{ lots: [lots[1]] }]);
  });

  it('of a row above is known to the row below', () => {
    const got = reading(
      'person',
      'id,happened,name,roles[0],by\nnew-one,2026-01-01,Assayer,assayer,new-one\n,2026-01-02,Reader,reader,Assayer\n',
    );
    expect(told(got)).toEqual([]);
    expect(drafts(got).map(({ by }) => by)).toEqual(['new-one', 'new-one']);
    expect(told(reading('person', 'happened,name,roles[0]\n2026-01-01,Assayer,assayer\n2026-01-02,Assayer,reader\n'))).toEqual([
      'row 3, column "name": name-taken',
    ]);
  });

  it('of an entry that is here already is refused, so that nothing comes in twice', () => {
    expect(told(reading('person', 'id,happened,name,roles[0]\nkeeper,2026-01-01,Another,reader\n'))).toEqual([
      'row 2, column "id": import-known-id',
    ]);
  });
});

describe('pictures of the old book', () => {
  it('go with the rows of their page, and one without a page with every row', () => {
    const file = (c: string) => `${c.repeat(64)}.png`;
    const got = reading('note', 'happened,text,page\n1899-01-01,a,4\n1899-01-02,b,5\n', {
      same: [{ field: 'book', text: 'Invented book' }],
      pictures: [
        { file: file('a'), page: '4' },
        { file: file('b'), shows: 'Cover' },
      ],
    });
    expect(drafts(got).map(({ evidence }) => evidence)).toEqual([
      [{ file: file('a') }, { file: file('b'), shows: 'Cover' }],
      [{ file: file('b'), shows: 'Cover' }],
    ]);
  });
});
