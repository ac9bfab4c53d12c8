import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Draft } from '../../app/core/entry.ts';
import { checkCharacter, serialStands, withCheck } from '../../app/core/form-serial.ts';
import { BookMaker } from './book-maker.ts';

test('a published identifier checked by MOD 37-2 has its check character', () => {
  // the donation number of ICCBBA, ISBT 128 Standard, which uses this system, as the worked example of ISO/IEC 7064 libraries has it; from memory
  expect(checkCharacter('G1234 89 654321')).toBe('Y');
});

const figures = fc.stringMatching(/^[1-9][0-9]{0,4}-[0-9a-f]{8}$/);

test('any one character mistyped is refused, whichever it is and whatever stands there instead', () => {
  fc.assert(
    fc.property(figures, fc.nat(), fc.constantFrom(...'0123456789abcdefghijklmnopqrstuvwxyz*'), (serial, at, typed) => {
      const right = withCheck(serial);
      expect(serialStands(right)).toBe(true);
      const places = [...right].flatMap((character, i) => (character === '-' ? [] : [i]));
      const place = places[at % places.length] as number;
      fc.pre(right[place]?.toLowerCase() !== typed);
      const wrong = right.slice(0, place) + typed + right.slice(place + 1);
      // a letter among the first figures makes it no number of this program at all
      expect(serialStands(wrong)).not.toBe(true);
    }),
    { numRuns: 2000 },
  );
});

test('two neighbours exchanged are refused, the check character and its neighbour too', () => {
  fc.assert(
    fc.property(figures, fc.nat(), (serial, at) => {
      const right = withCheck(serial);
      const i = at % (right.length - 1);
      const [a = '', b = ''] = [right[i], right[i + 1]];
      fc.pre(a !== b && a !== '-' && b !== '-');
      expect(serialStands(right.slice(0, i) + b + a + right.slice(i + 2))).not.toBe(true);
    }),
    { numRuns: 2000 },
  );
});

test('case and blanks around it do not count, two desks have one check character, and numbers of other forms are left alone', () => {
  const right = withCheck('12-3f9a01c4');
  expect(serialStands(`  ${right.toUpperCase()} `)).toBe(true);
  const two = withCheck('12-3f9a01c4 · 7-00ab12cd');
  expect(serialStands(two)).toBe(true);
  expect(serialStands(two.replace('7-', '8-'))).toBe(false);
  expect(serialStands('12-3f9a01c4')).toBe(false);
  for (const other of ['C-14', 'F 7', 'Pad 3, 2024-11', '2024-001', '']) expect(serialStands(other)).toBeNull();
});

test('an entry that names a mistyped form is refused at the field, and one with the right number or a pad’s own is not', () => {
  const book = readBook(BookMaker.site().entries);
  const asked = (number: string) =>
    checkDraft(
      book,
      {
        id: 'remark-one',
        kind: 'note',
        happened: '2026-03-02T08:00+13:00',
        by: null,
        body: { text: 'a' },
        form: { number, page: '2' },
      } as Draft,
      '2026-03-03T08:00:00+13:00',
    ).map(({ code, field }) => [code, field]);
  const right = withCheck('212-3f9a01c4');
  expect(asked(right)).toEqual([]);
  expect(asked('C-14')).toEqual([]);
  expect(asked(right.replace('3f', '3e'))).toEqual([['form-number', 'form.number']]);
  expect(asked('212-3f9a01c4')).toEqual([['form-number', 'form.number']]);
});
