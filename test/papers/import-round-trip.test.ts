/**
 * What export writes can be taken in again: for every kind but corrections and closings, a table of entries gives the same ids, days, envelopes and bodies.
 * Bodies are drawn from the kinds' own schemas. Two things do not come back as they were: a text that itself begins with an apostrophe and a formula, and one of blanks alone.
 */
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Book } from '../../app/core/book/book.ts';
import { readBook } from '../../app/core/book/book.ts';
import type { Entry } from '../../app/core/entry.ts';
import { formula } from '../../app/core/formula.ts';
import { importableKinds, importFields } from '../../app/core/importing/fields.ts';
import { readImport } from '../../app/core/importing/import.ts';
import { mappingFromHeadings } from '../../app/core/importing/mapping.ts';
import { type Column, fieldAt, parseRow } from '../../app/core/importing/row.ts';
import { readSeparated } from '../../app/core/importing/separated.ts';
import { bodyFrom, type Kind, kinds } from '../../app/core/kinds/index.ts';
import { day, decimalText, id, mass, moment, partId, partKey, someMass } from '../../app/core/shapes.ts';
import type { z } from '../../app/core/zod.ts';
import { entryTables } from '../../app/papers/csv/entries.ts';
import { eighteenMonths } from '../../main/host/sample/eighteen-months.ts';
import { journalOf } from '../../main/host/sample/write.ts';

type Schema = z.core.$ZodType;

const two = (n: number) => String(n).padStart(2, '0');
const days = fc
  .tuple(fc.integer({ min: 1850, max: 2026 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 }))
  .map(([y, m, d]) => `${y}-${two(m)}-${two(d)}`);
const moments = fc
  .tuple(
    days,
    fc.integer({ min: 0, max: 23 }),
    fc.integer({ min: 0, max: 59 }),
    fc.constantFrom('+13:00', '-03:30', '+00:00'),
    fc.constantFrom('', ':07', ':59.125'),
  )
  .map(([d, h, m, offset, s]) => `${d}T${two(h)}:${two(m)}${s}${offset}`);
const masses = fc.oneof(
  fc.tuple(fc.integer({ min: 1, max: 99999 }), fc.constantFrom('g', 'kg', 'ozt', 'lb', 'long-ton')).map(([n, u]) => `${n} ${u}`),
  fc.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 1, max: 9999 })).map(([n, f]) => `${n}.${f}0 g`),
  fc.constant('18 ozt 18 dwt 6 gr'),
);
const texts = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }),
    fc.string({ minLength: 1, maxLength: 12, unit: fc.constantFrom(...'=+-@\t\n,;"\' 1.[]{}x') }),
    fc.constantFrom('=SUM(A1)', '-0.5', '[]', '{}', 'a,b', '"q"', ' lead and trail ', 'two\nlines', '1e5', "'tis", '\ufeffx'),
  )
  .filter((t) => t.trim() !== '' && !(t.startsWith("'") && formula.test(t.slice(1))));
const ids = fc.constantFrom('thing-one', 'thing-two', 'a1b2c3d4-0000');

/** Values of a schema; what a rule of the schema refuses is filtered away by whoever draws. */
function drawn(schema: Schema, path = ''): fc.Arbitrary<unknown> {
  const def = (schema as unknown as { _zod: { def: Record<string, unknown> & { type: string } } })._zod.def;
  switch (def.type) {
    case 'optional':
      return fc.option(drawn(def.innerType as Schema, path), { nil: undefined, freq: 2 });
    case 'nullable':
      return fc.option(drawn(def.innerType as Schema, path), { nil: null });
    case 'object':
      return fc
        .record(
          Object.fromEntries(
            Object.entries(def.shape as Record<string, Schema>).map(([key, member]) => [key, drawn(member, `${path}.${key}`)]),
          ),
        )
        .map((value) => Object.fromEntries(Object.entries(value).filter(([, member]) => member !== undefined)));
    case 'array':
      return fc.array(drawn(def.element as Schema, path), { maxLength: 3 });
    case 'union':
      return fc.oneof(...(def.options as Schema[]).map((option) => drawn(option, path)));
    case 'enum':
      return fc.constantFrom(...Object.values(def.entries as Record<string, string>));
    case 'literal':
      return fc.constantFrom(...(def.values as string[]));
    case 'number':
      return fc.oneof(
        fc.integer({ min: 0, max: 20 }),
        fc.double({ min: 1e-9, max: 1, noNaN: true }),
        fc.constantFrom(0.35, 1e-7, 12.5),
      );
    case 'string':
      if (schema === mass || schema === someMass) return masses;
      if (schema === day) return days;
      if (schema === moment) return moments;
      if (schema === id) return ids;
      if (schema === partId) return ids.map((one) => `${one}/1a`);
      if (schema === partKey) return fc.constantFrom('1', '2', 'a3');
      if (schema === decimalText) return fc.constantFrom('884.6', '0.10', '3');
      if (path.endsWith('.volume')) return fc.constantFrom('186.0 ml', '2 fl-oz-imp');
      return texts;
    default:
      throw new Error(`no values for ${def.type} at ${path}`);
  }
}

const entry = (kind: Kind, n: number, body: Record<string, unknown>, more: Partial<Entry> = {}): Entry => ({
  format: 1,
  desk: 'desk-one',
  n,
  prev: '0'.repeat(64),
  hash: 'f'.repeat(64),
  id: `entry-${n}`,
  written: '2026-11-01T08:00:00+13:00',
  happened: '2026-03-01T08:00+13:00',
  by: null,
  kind,
  body,
  ...more,
});

/** A book of which export asks nothing but its readings. */
const bookOf = (entries: readonly Entry[]): Book =>
  ({
    entries,
    current: {
      byId: new Map(
        entries.map((e) => [
          e.id,
          {
            id: e.id,
            kind: e.kind,
            entry: e,
            body: e.body,
            happened: e.happened,
            corrections: [],
            struck: null,
            contested: false,
          },
        ]),
      ),
      notUnderstood: [],
    },
  }) as unknown as Book;

const golden = JSON.parse(readFileSync(new URL('../golden/drafts.json', import.meta.url), 'utf8')) as Entry[];
const empty = readBook([]);

/** A table as export writes it, read again row by row: what each row says, and what is wrong with it apart from names that are not in a book of nothing. */
function back(kind: Kind, entries: readonly Entry[]) {
  const text = entryTables(bookOf(entries)).find(({ name }) => name === kind)?.text ?? '';
  const table = readSeparated(text);
  if (!table.ok) throw new Error(JSON.stringify(table.problems));
  const fields = importFields(kind);
  const columns = mappingFromHeadings(kind, table.value.headings).map(
    ({ column, field }, index): Column => ({
      heading: column,
      index,
      path: field === '' ? column : field,
      field: fieldAt(fields, field) ?? null,
      settings: {},
    }),
  );
  return table.value.rows.map((row) => {
    const { value, faults } = parseRow(row, { kind, columns, mapping: {}, offset: '+13:00' }, empty);
    return { value, faults: faults.map(({ problem }) => problem).filter(({ code }) => code !== 'import-unknown-name') };
  });
}

describe('a table as export writes it', () => {
  it.each(importableKinds.map((kind) => ({ kind })))('of $kind comes back with the same bodies', ({ kind }) => {
    // of kinds whose fields hang together few of those drawn are bodies at all: the golden ones stand beside them
    const pool = [
      ...golden.filter((draft) => draft.kind === kind).map(({ body }) => body),
      ...fc.sample(drawn(kinds[kind] as Schema, 'body'), 200),
    ];
    const bodies = fc.constantFrom(...(pool.filter((body) => bodyFrom(kind, body).ok) as Record<string, unknown>[]));
    let seen = 0;
    fc.assert(
      fc.property(fc.array(bodies, { minLength: 1, maxLength: 3 }), (list) => {
        const rows = back(
          kind,
          list.map((body, i) => entry(kind, i + 1, body)),
        );
        expect(rows.flatMap(({ faults }) => faults)).toEqual([]);
        expect(rows.map(({ value }) => value.body)).toEqual(list);
        seen += list.length;
      }),
      { numRuns: 60 },
    );
    expect(seen).toBeGreaterThanOrEqual(60);
  });

  it('comes back with its ids, days and envelopes', () => {
    const full = entry(
      'note',
      1,
      { text: 'a' },
      {
        id: 'note-one',
        happened: '2025-02-03T04:05:06-03:30',
        by: 'thing-one',
        witness: ['thing-two', 'thing-one'],
        timing: 'about',
        form: { number: 'F 7', page: '2' },
        transcribed: { book: 'Book 3', page: '17' },
        evidence: [{ file: `${'a'.repeat(64)}.png`, shows: 'Page 17' }],
      },
    );
    const { format: _f, desk: _d, n: _n, prev: _p, hash: _h, written: _w, kind: _k, ...kept } = full;
    expect(back('note', [full]).map(({ value }) => value)).toEqual([kept]);
  });
});

const sample = journalOf(eighteenMonths())
  .trimEnd()
  .split('\n')
  .map((line) => JSON.parse(line) as Entry);

it('the sample site is taken in again kind by kind, judged by the rules, into the same entries', () => {
  const book = readBook(sample);
  const before: Entry[] = [];
  // kinds stand in the order in which one needs another; what counts the whole comes last
  const order = [
    'person' as const,
    ...importableKinds.filter((kind) => kind !== 'person' && kind !== 'stock-take'),
    'stock-take' as const,
  ].filter((kind) => book.current.of(kind).length > 0);
  for (const kind of order) {
    const text = entryTables(book).find(({ name }) => name === kind)?.text ?? '';
    const got = readImport({
      kind,
      text,
      mapping: {},
      batch: `batch-${kind}`,
      entries: before,
      now: '2027-12-31T10:00:00+13:00',
    });
    expect([kind, got.ok ? got.value.problems.slice(0, 3) : got.problems]).toEqual([kind, []]);
    if (!got.ok) continue;
    for (const draft of got.value.drafts) before.push(entry(kind, before.length + 1, draft.body, { ...draft }));
    before.sort((a, b) => (a.happened < b.happened ? -1 : 1));
  }
  const same = (list: readonly { id: string; kind: string; happened: string; body: unknown }[]) =>
    Object.fromEntries(list.map(({ id: of, kind, happened, body }) => [of, { kind, happened, body }]));
  // as each reads now: what a correction put right comes back put right
  const readings = [...book.current.byId.values()].filter(({ kind }) => (order as string[]).includes(kind));
  expect(same(before)).toEqual(same(readings));
  expect(before.length).toBeGreaterThan(100);
});
