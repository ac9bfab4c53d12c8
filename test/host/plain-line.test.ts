/** The quick look over a line's bytes says yes to nothing the general readers refuse, and a book read with it is the same book. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Entry, entry as entrySchema, firstPrev } from '../../app/core/entry.ts';
import { isPlainGrams, massFromText } from '../../app/core/mass.ts';
import { canonicalText, sha256 } from '../../main/host/canonical.ts';
import { readJournal } from '../../main/host/journal.ts';
import { isPlain } from '../../main/host/plain-line.ts';

const member = { from: -1, to: -1 };
const plain = (text: string): boolean => {
  const bytes = Buffer.from(text);
  return isPlain(bytes, 0, bytes.length, member);
};

/** Whether the text is the canonical form of what it says, by the package that knows the standard. */
function isCanonicalText(text: string): boolean {
  try {
    return canonicalText(JSON.parse(text)) === text;
  } catch {
    return false;
  }
}

test('what is called plain is canonical, whatever text it is', () => {
  const value = fc.dictionary(fc.string({ maxLength: 6 }), fc.jsonValue({ maxDepth: 3 }));
  fc.assert(
    fc.property(value, fc.nat(), fc.constantFrom('', ' ', '0', '.', ',', '"', '-', 'e', '\\', '1'), (made, at, put) => {
      for (const text of [canonicalText(made), JSON.stringify(made)]) {
        const place = at % (text.length + 1);
        for (const tried of [text, text.slice(0, place) + put + text.slice(place), text.slice(0, place) + text.slice(place + 1)])
          if (plain(tried)) expect([tried, isCanonicalText(tried)]).toEqual([tried, true]);
      }
    }),
    { numRuns: 3000 },
  );
});

test('a number is plain only as the canonical form writes it', () => {
  const digits = fc.stringMatching(/^-?\d{1,17}(\.\d{1,17})?$/);
  fc.assert(
    fc.property(digits, (number) => {
      const text = `{"a":${number}}`;
      if (plain(text)) expect([text, isCanonicalText(text)]).toEqual([text, true]);
    }),
    { numRuns: 5000 },
  );
  for (const number of ['-0', '01', '1.0', '1.', '.5', '0.0000001', '1e3', '1234567890123456789', '-0.50'])
    expect([number, plain(`{"a":${number}}`)]).toEqual([number, false]);
  for (const number of ['0', '-3', '0.02', '955.61', '0.000001'])
    expect([number, plain(`{"a":${number}}`)]).toEqual([number, true]);
});

test('members out of order, twice, spaced or escaped are never plain', () => {
  for (const text of [
    '{"b":1,"a":2}',
    '{"a":1,"a":1}',
    '{"ab":1,"a":1}',
    '{"a": 1}',
    '{"a":"\\u0041"}',
    '{"a":"é"}',
    '{"a":1}x',
    '[]',
    '{"a":1,}',
  ])
    expect([text, plain(text)]).toEqual([text, false]);
  expect(plain('{"a":1,"ab":[{"x":[]},null,true],"b":{}}')).toBe(true);
});

test('grams called plain are read as a mass', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^\d{0,13}\.?\d{0,13} ?k?g$/), (text) => {
      if (isPlainGrams(text)) expect([text, massFromText(text, '').ok]).toEqual([text, true]);
    }),
    { numRuns: 5000 },
  );
  expect(['2.50 g', '0.00 g', '412.15 g'].every(isPlainGrams)).toBe(true);
  expect(['.5 g', '5. g', '-1 g', '1.2.3 g', '5 kg', ' g'].some(isPlainGrams)).toBe(false);
});

/** A line with its hash, as its place in the chain asks, whatever else it says. */
const lineOf = (value: Readonly<Record<string, unknown>>): string =>
  canonicalText({ ...value, hash: sha256(canonicalText(value)) });

test('a second line is refused exactly where the schema of an entry refuses it', () => {
  const envelope = {
    by: null,
    desk: 'desk-one',
    format: 1,
    happened: '2026-03-14T09:20+13:00',
    written: '2026-03-14T09:20+13:00',
  };
  const note = { ...envelope, body: { text: 'first' }, id: 'note-0001', kind: 'note' };
  const first = lineOf({ ...note, n: 1, prev: firstPrev });
  const { hash } = JSON.parse(first) as Entry;
  const odd = fc.oneof(
    fc.constantFrom('', 'x', 'note-0002', 'NOTE-0002', '2026-02-30T09:20+13:00', 'no-such-kind', null, 1, 2),
    fc.jsonValue(),
  );
  const field = fc.constantFrom('by', 'happened', 'written', 'id', 'kind', 'body', 'format', 'witness', 'timing', 'strange');
  fc.assert(
    fc.property(field, odd, (name, put) => {
      // a higher format is a newer program's line, and a body is held against its own kind
      if (name === 'format' && typeof put === 'number' && put > 1) return;
      const bare = { ...note, id: 'note-0002', n: 2, prev: hash, [name]: put };
      const line = lineOf(bare);
      const got = readJournal(Buffer.from(`${first}\n${line}\n`), 'desk-one');
      if (!entrySchema.safeParse(JSON.parse(line)).success) expect(got.fault).toMatchObject({ line: 2, cause: 'not-an-entry' });
      else if (name !== 'body') expect([line, got.entries.length]).toEqual([line, 2]);
    }),
    { numRuns: 1500 },
  );
});
