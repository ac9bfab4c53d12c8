/** The quick look at a value says yes to nothing its schema refuses or would change, and it does say yes to what people write. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entry } from '../../app/core/entry.ts';
import { isKind, kinds } from '../../app/core/kinds/index.ts';
import { plainLook } from '../../app/core/plainly.ts';
import { z } from '../../app/core/zod.ts';
import drafts from '../golden/drafts.json' with { type: 'json' };
import { dice, mutated, seed } from '../host/mutate.ts';

interface Written {
  readonly kind: string;
  readonly body: unknown;
}
const written = (drafts as readonly Written[]).filter(({ kind }) => isKind(kind));
const schemaOf = (kind: string): z.ZodType => kinds[kind as keyof typeof kinds] as unknown as z.ZodType;

/** What the schema says, held against what the look says: yes only where the schema accepts the value and leaves it as it is. */
function holds(schema: z.ZodType, value: unknown): boolean {
  if (!plainLook(schema)(value)) return false;
  const got = schema.safeParse(value);
  expect([JSON.stringify(value), got.success]).toEqual([JSON.stringify(value), true]);
  expect(got.data).toEqual(value);
  return true;
}

test('every kind that people write is seen plainly', () => {
  const open = written.filter(({ kind, body }) => !holds(schemaOf(kind), body)).map(({ kind }) => kind);
  expect(open).toEqual([]);
  expect(written.length).toBeGreaterThan(40);
});

test('a body with any place of its text changed is never called plain where the schema refuses it', () => {
  const roll = dice(seed);
  let [plain, refused] = [0, 0];
  for (const { kind, body } of written) {
    const sample = Buffer.from(JSON.stringify(body));
    for (let i = 0; i < 400; i++) {
      let value: unknown;
      try {
        value = JSON.parse(mutated(sample, roll).toString('utf8'));
      } catch {
        continue;
      }
      if (holds(schemaOf(kind), value)) plain += 1;
      else refused += 1;
    }
  }
  // both answers came often enough to tell something
  expect(Math.min(plain, refused)).toBeGreaterThan(200);
});

test('nor is a body with a member left out, added, or replaced by a value of any shape', () => {
  const kindsThere = fc.constantFrom(...written);
  fc.assert(
    fc.property(
      kindsThere,
      fc.nat(),
      fc.jsonValue({ maxDepth: 2 }),
      fc.constantFrom('out', 'in', 'other'),
      (one, at, value, how) => {
        const body = structuredClone(one.body) as Record<string, unknown>;
        const names = Object.keys(body);
        const name = names[at % Math.max(1, names.length)] ?? 'x';
        if (how === 'out') delete body[name];
        else body[how === 'in' ? `${name}X` : name] = value;
        holds(schemaOf(one.kind), body);
      },
    ),
    { numRuns: 5000 },
  );
});

test('what a schema allows beyond the plain is left to the schema', () => {
  const own = JSON.parse('{"a":"x","__proto__":{"b":1}}');
  for (const [schema, value] of [
    [z.strictObject({ a: z.string() }), own],
    [z.object({ a: z.string() }), { a: 'x', b: 1 }],
    [z.strictObject({ a: z.string().optional() }), { a: undefined }],
    [
      z.strictObject({ a: z.string() }),
      new (class {
        a = 'x';
      })(),
    ],
    [z.coerce.number(), 3],
    [z.string().trim(), ' x'],
    [z.number(), Number.NaN],
    [z.array(z.string()).max(1), ['a', 'b']],
    [z.xor([z.strictObject({ a: z.literal(1) }), z.strictObject({ a: z.number() })]), { a: 1 }],
    [z.record(z.string(), z.number()), { a: 1 }],
    [z.record(z.string().max(1), z.unknown()), { a: 1 }],
    [z.record(z.string(), z.unknown()), own],
    [z.string().transform((text) => text.length), 'abc'],
    [z.string().default('x'), undefined],
    [z.strictObject({ a: z.number() }).refine(({ a }) => a > 1), { a: 1 }],
  ] as const)
    expect(plainLook(schema)(value)).toBe(false);
});

test('an envelope is seen plainly with all that may stand in it', () => {
  const line = {
    ...{
      body: {},
      by: null,
      desk: 'desk-one',
      format: 1,
      happened: '2026-03-14T09:20+13:00',
      hash: 'a'.repeat(64),
      id: 'note-0001',
    },
    ...{ kind: 'note', n: 1, prev: '0'.repeat(64), written: '2026-03-14T09:20+13:00' },
  };
  expect([holds(entry, line), holds(entry, { ...line, n: 1.5 }), holds(entry, { ...line, n: 0 })]).toEqual([true, false, false]);
});
