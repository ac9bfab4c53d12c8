/** Who may see where a bar is kept and what a person breathed: by role, by the register's last word, and nobody else. */
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { maySee, rolesAt } from '../../app/core/book/may-see.ts';
import { roles } from '../../app/core/kinds/person.ts';
import { BookMaker } from './book-maker.ts';

test('the place of a bar is for keeper and assayer, personal air for the safety officer, and neither for anybody else', () => {
  expect(roles.filter((role) => maySee([role], 'bar-place'))).toEqual(['keeper', 'assayer']);
  expect(roles.filter((role) => maySee([role], 'personal-air'))).toEqual(['safety-officer']);
  expect(maySee([], 'bar-place')).toBe(false);
  expect(maySee(['reader', 'assayer'], 'bar-place')).toBe(true);
});

test('roles are those of the last statement at that moment; a stranger, and one who has left, has none', () => {
  const book = new BookMaker();
  const pat = book.add('first-hand', 'person', { name: 'First hand', roles: ['helper'] }, { happened: '2026-01-05T08:00+00:00' });
  book.add('now-assayer', 'person', { of: pat, name: 'First hand', roles: ['assayer'] }, { happened: '2026-03-01T08:00+00:00' });
  book.add(
    'gone-away',
    'person',
    { of: pat, name: 'First hand', roles: ['assayer'], left: '2026-06-30' },
    { happened: '2026-06-01T08:00+00:00' },
  );
  const { registers } = readBook(book.entries);
  const at = (moment: string) => rolesAt(registers, pat, moment);
  expect(at('2026-01-01T08:00+00:00')).toEqual([]);
  expect(at('2026-02-01T08:00+00:00')).toEqual(['helper']);
  expect(at('2026-04-01T08:00+00:00')).toEqual(['assayer']);
  expect(at('2026-06-30T20:00+00:00')).toEqual(['assayer']);
  expect(at('2026-07-01T08:00+00:00')).toEqual([]);
  expect(rolesAt(registers, null, '2026-04-01T08:00+00:00')).toEqual([]);
  expect(rolesAt(registers, 'nobody-here', '2026-04-01T08:00+00:00')).toEqual([]);
});
