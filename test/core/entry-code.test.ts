import { expect, test } from 'vitest';
import { codeOfEntry, entryOfCode } from '../../app/core/entry-code.ts';

const id = '0b9f6c1e-3a52-4d0e-9a77-5c1d2e3f4a5b';

test('the code of an entry says its id in plain text, and is read back whatever its case and the blanks around it', () => {
  expect(codeOfEntry(id)).toBe(`retort-daybook:entry/${id}`);
  expect(entryOfCode(`retort-daybook:entry/${id}`)).toBe(id);
  expect(entryOfCode(`  RETORT-DAYBOOK:ENTRY/${id.toUpperCase()}\r\n`)).toBe(id);
});

test('any other text is no code: a bare id, another address, an id with more behind it, nothing', () => {
  for (const text of [
    '',
    id,
    `https://invalid.example/entry/${id}`,
    `retort-daybook:entry/${id}/1`,
    `retort-daybook:entry/${id} x`,
  ])
    expect(entryOfCode(text), text).toBeNull();
});
