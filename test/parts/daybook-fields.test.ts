/** The words for fields are held against the schemas: what can be kept can be read out, and what is asked can be kept. */
import { describe, expect, test } from 'vitest';
import { type Kind, kinds } from '../../app/core/kinds/index.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import type { FieldWords } from '../../app/words/daybook-shapes.ts';
import { kindNames } from '../../app/words/labels.ts';

interface Def {
  type: string;
  shape?: Record<string, Schema>;
  innerType?: Schema;
  element?: Schema;
  options?: Schema[];
  entries?: Record<string, string>;
  values?: string[];
}
type Schema = { _zod: { def: Def } };

const def = (schema: Schema): Def => schema._zod.def;
const bare = (schema: Schema): Schema => (def(schema).type === 'optional' ? bare(def(schema).innerType as Schema) : schema);

/** The members of an object, or of all branches of a union of objects, with whether every branch that has one needs it. */
function members(schema: Schema): Map<string, { schemas: Schema[]; needed: boolean }> | null {
  const d = def(schema);
  const branches = d.type === 'union' ? (d.options ?? []) : [schema];
  if (!branches.every((b) => def(b).type === 'object')) return null;
  const found = new Map<string, { schemas: Schema[]; needed: boolean }>();
  for (const branch of branches)
    for (const [key, member] of Object.entries(def(branch).shape ?? {})) {
      const optional = def(member).type === 'optional';
      const before = found.get(key);
      found.set(key, {
        schemas: [...(before?.schemas ?? []), bare(member)],
        needed: !optional && (before?.needed ?? true),
      });
    }
  return found;
}

function answers(schemas: Schema[]): string[] {
  return schemas.flatMap((s) => (def(s).type === 'literal' ? (def(s).values ?? []) : Object.values(def(s).entries ?? {})));
}

function hold(fields: readonly FieldWords[], schema: Schema, at: string, faults: string[]): void {
  const wanted = members(schema);
  if (!wanted) throw new Error(`${at} is no object`);
  const union = def(schema).type === 'union';
  for (const key of wanted.keys()) if (!fields.some((f) => f.key === key)) faults.push(`${at}.${key} has no words`);
  for (const field of fields) {
    const member = wanted.get(field.key);
    const path = `${at}.${field.key}`;
    if (!member) {
      faults.push(`${path} is not in the schema`);
      continue;
    }
    if (field.label.trim() === '') faults.push(`${path} has an empty label`);
    // a member of one branch of several is needed only there
    if (!(union && !field.only) && (field.needed ?? false) !== member.needed) faults.push(`${path}: needed differs`);
    const [first] = member.schemas as [Schema];
    const { shape } = field;
    if (shape.is === 'group') hold(shape.fields, first, path, faults);
    if (shape.is === 'list') hold(shape.fields, def(first).element as Schema, `${path}[]`, faults);
    if (shape.is === 'one' || shape.is === 'many') {
      const schemas = shape.is === 'many' ? [def(first).element as Schema] : member.schemas;
      const has = Object.keys(shape.names).sort().join();
      const wants = [...new Set(answers(schemas))].sort().join();
      if (has !== wants) faults.push(`${path}: answers ${has} are not ${wants}`);
    }
    if (shape.is === 'number' || shape.is === 'share') if (def(first).type !== 'number') faults.push(`${path} is not a number`);
  }
}

const atMostSeven = expect.toSatisfy((n: number) => n >= 1 && n <= 7);

/** The most fields that stand open before Keep at once, over all answers that other questions hang on. */
function mostFirst(fields: readonly FieldWords[]): number {
  const keys = [...new Set(fields.flatMap((f) => (f.only ? [f.only.key] : [])))];
  let cases: Readonly<Record<string, string>>[] = [{}];
  for (const key of keys) {
    const { shape } = fields.find((f) => f.key === key) as FieldWords;
    if (shape.is !== 'one') throw new Error(`${key} is no choice`);
    cases = cases.flatMap((given) => Object.keys(shape.names).map((answer) => ({ ...given, [key]: answer })));
  }
  const shown = (given: Readonly<Record<string, string>>): number =>
    fields
      .filter((f) => f.first && (!f.only || f.only.has.includes(given[f.only.key] ?? '')))
      .reduce((n, { shape }) => n + (shape.is === 'group' || shape.is === 'list' ? mostFirst(shape.fields) : 1), 0);
  return Math.max(...cases.map(shown));
}

describe('the fields of entries have words', () => {
  test.each(Object.keys(kinds) as Kind[])('every field of "%s" has a label, and every label a field', (kind) => {
    const faults: string[] = [];
    hold(fieldsOf[kind], kinds[kind] as unknown as Schema, kind, faults);
    expect(faults).toEqual([]);
    expect(kindNames[kind]).not.toBe('');
  });

  test('a field without words would be found', () => {
    const faults: string[] = [];
    hold(
      fieldsOf.note.filter((f) => f.key !== 'about'),
      kinds.note as unknown as Schema,
      'note',
      faults,
    );
    expect(faults).toEqual(['note.about has no words']);
  });

  test('a question that hangs on another names one beside it', () => {
    const walk = (fields: readonly FieldWords[]): void => {
      for (const field of fields) {
        if (field.only) expect(fields.map((f) => f.key)).toContain(field.only.key);
        if (field.shape.is === 'group' || field.shape.is === 'list') walk(field.shape.fields);
      }
    };
    for (const fields of Object.values(fieldsOf)) walk(fields);
  });

  test('no kind asks more than seven things before Keep, whatever is answered', () => {
    for (const [kind, fields] of Object.entries(fieldsOf)) expect([kind, mostFirst(fields)]).toEqual([kind, atMostSeven]);
  });

  test('a kind that asks eight would be found', () => {
    const eight = [...fieldsOf.firing, { key: 'more', label: 'More', first: true, shape: { is: 'text' } } as const];
    expect(mostFirst(fieldsOf.firing)).toBe(7);
    expect(mostFirst(eight)).toBe(8);
  });

  test('what must be answered is never folded away', () => {
    const walk = (fields: readonly FieldWords[], at: string): void => {
      for (const field of fields) {
        if (field.needed && field.shape.is !== 'key') expect([at, field.key, field.first]).toEqual([at, field.key, true]);
        if (field.shape.is === 'group' || field.shape.is === 'list') walk(field.shape.fields, `${at}.${field.key}`);
      }
    };
    // a closing is drawn up by the program: nobody answers its fields
    for (const [kind, fields] of Object.entries(fieldsOf)) if (kind !== 'closing') walk(fields, kind);
  });

  test('what stands first within a group or a list is first there too, or nothing of it would show', () => {
    const walk = (fields: readonly FieldWords[]): void => {
      for (const { shape, first } of fields) {
        if (shape.is !== 'group' && shape.is !== 'list') continue;
        if (first) expect(shape.fields.some((f) => f.first)).toBe(true);
        walk(shape.fields);
      }
    };
    for (const fields of Object.values(fieldsOf)) walk(fields);
  });
});
