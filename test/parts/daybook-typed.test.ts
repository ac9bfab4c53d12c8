/** A correction form takes a reading up and gives it back: untouched it changes nothing, touched it changes only that. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { bodyFrom, type Kind, kinds } from '../../app/core/kinds/index.ts';
import { rowsOf, unanswered } from '../../app/screens/daybook/rows.ts';
import { bodyOf, clockThere, filled, newItem, type Typed, type TypedMoment } from '../../app/screens/daybook/typed.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import type { FieldWords } from '../../app/words/daybook-shapes.ts';
import { samples } from './daybook-samples.ts';

/** As it goes to the host: members left undefined are gone. */
const sent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const cases = (Object.keys(kinds) as Kind[]).flatMap((kind) => samples[kind].map((body) => [kind, body] as const));

describe('a form filled from a reading', () => {
  test('the samples are bodies of their kinds, and together answer every question', () => {
    const asked = new Set<string>();
    const answered = new Set<string>();
    const walk = (fields: readonly FieldWords[], bodies: readonly Record<string, unknown>[], at: string): void => {
      for (const field of fields) {
        const path = `${at}.${field.key}`;
        const values = bodies.flatMap((body) => (body[field.key] === undefined ? [] : [body[field.key]]));
        asked.add(path);
        if (values.length > 0) answered.add(path);
        if (field.shape.is === 'group') walk(field.shape.fields, values as Record<string, unknown>[], path);
        if (field.shape.is === 'list') walk(field.shape.fields, values.flat() as Record<string, unknown>[], path);
      }
    };
    for (const kind of Object.keys(kinds) as Kind[]) {
      for (const body of samples[kind]) expect(bodyFrom(kind, body), kind).toMatchObject({ ok: true });
      if (kind !== 'correction') walk(fieldsOf[kind], samples[kind] as readonly Record<string, unknown>[], kind);
    }
    expect([...asked].filter((path) => !answered.has(path))).toEqual([]);
  });

  test.each(cases)('makes the same body again when nothing is touched: %s', (kind, body) => {
    const typed = filled(fieldsOf[kind], body as Record<string, unknown>);
    // drafts keep plain data only
    const again = sent(bodyOf(fieldsOf[kind], sent(typed) as Typed, '+01:00'));
    expect(again).toEqual(body);
  });

  test('a time that was there keeps its offset when it is put right, and a new one takes the offset of the entry', () => {
    const [body] = samples.firing;
    const typed = filled(fieldsOf.firing, body as Record<string, unknown>);
    (typed.lit as TypedMoment).time = '08:05';
    typed.finishTo = { day: '2026-03-14', time: '10:45', timing: 'exact' };
    const made = bodyOf(fieldsOf.firing, typed, '+02:00');
    expect(made).toMatchObject({
      lit: '2026-03-14T08:05+13:00',
      finishTo: '2026-03-14T10:45+02:00',
      opened: '2026-03-14T16:00:30+13:00',
    });
  });

  test('"now" is told at the offset of the entry, not of the machine', () => {
    const machine = { now: () => '2026-03-14T23:30+01:00', offsetAt: () => '+01:00' };
    expect(clockThere(machine, '+13:00').now()).toBe('2026-03-15T11:30+13:00');
    expect(clockThere(machine, '-03:30').now()).toBe('2026-03-14T19:00-03:30');
    expect(clockThere(machine, '+13:00').offsetAt('2026-03-14', '09:00')).toBe('+13:00');
  });

  test('what is half typed is refused by the schema and never lost on the way', () => {
    const typed = filled(fieldsOf.scale, samples.scale[0] as Record<string, unknown>);
    typed.tolerance = 'a tenth';
    const made = sent(bodyOf(fieldsOf.scale, typed, '+13:00'));
    expect(made).toMatchObject({ tolerance: 'a tenth' });
    expect(bodyFrom('scale', made)).toMatchObject({ ok: false, problems: [{ field: 'body.tolerance' }] });
  });

  test('an answer that is not asked any more leaves the body', () => {
    const typed = filled(fieldsOf.charge, samples.charge[0] as Record<string, unknown>);
    const [, part] = typed.rows as Typed[];
    if (!part) throw new Error('the sample has a part');
    part.take = 'whole';
    const { rows } = sent(bodyOf(fieldsOf.charge, typed, '+13:00')) as { rows: Record<string, unknown>[] };
    expect(rows[1]).toEqual({
      take: 'whole',
      key: '2',
      lot: 'march-clean/7',
      weight: { how: 'scale', scale: 'bench-scale', gross: '400.0 g' },
    });
  });

  test('a new row has a key that no row of the entry has, in whatever list', () => {
    const typed = filled(fieldsOf.charge, samples.charge[0] as Record<string, unknown>);
    const rows = fieldsOf.charge.find((f) => f.key === 'rows');
    if (rows?.shape.is !== 'list') throw new Error('rows are a list');
    expect(newItem(rows.shape.fields, typed).key).toBe('6');
  });
});

describe('an entry read out field by field', () => {
  const empty = readBook([]);

  test.each(cases)('every answer of the body is told: %s', (kind, body) => {
    const rows = rowsOf(empty, kind, body, '2026-03-14T09:00+13:00');
    const told = new Set(rows.map((row) => row.path));
    const leaves: string[] = [];
    const walk = (fields: readonly FieldWords[], value: Record<string, unknown>, path: string): void => {
      for (const field of fields) {
        const own = value[field.key];
        const at = path === '' ? field.key : `${path}.${field.key}`;
        if (own === undefined || field.shape.is === 'key') continue;
        if (field.shape.is === 'group') walk(field.shape.fields, own as Record<string, unknown>, at);
        else if (field.shape.is === 'list')
          for (const [i, item] of (own as Record<string, unknown>[]).entries()) {
            if (field.key === 'checks') leaves.push(`${at}[${i}]`);
            else walk(field.shape.fields, item, `${at}[${i}]`);
          }
        else leaves.push(at);
      }
    };
    walk(fieldsOf[kind], body as Record<string, unknown>, '');
    expect(leaves.filter((leaf) => !told.has(leaf))).toEqual([]);
    for (const row of rows) expect(row.text, row.path).not.toMatch(/[{}[\]]|undefined|\[object/);
  });

  test('what was not answered is named as not recorded', () => {
    expect(unanswered('receipt', samples.receipt[0])).toEqual([]);
    expect(unanswered('receipt', { vessel: 'bottle', weight: {}, way: 'given' })).toEqual([
      'From whom',
      'Document',
      'Seal number',
    ]);
  });

  test('a share is read as a percentage without a rounding of its own', () => {
    const rows = rowsOf(empty, 'retort', samples.retort[0], '2026-03-14T09:00+13:00');
    expect(rows.filter((r) => /Ratio|atioBand|lossBand/.test(r.path)).map((r) => r.text.replace('\u00a0', ' '))).toEqual([
      '7 %',
      '3.5 %',
      '2.25 %',
    ]);
  });
});
