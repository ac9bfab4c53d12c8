import { expect, test } from 'vitest';
import { mercuryRegister } from '../../app/papers/mercury-register.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, stated, year } from './year.ts';

const whole = { from: null, to: null };
const register = (made = year(), id?: string, period: { from: string | null; to: string | null } = whole) =>
  said(mercuryRegister(bookOf(made.book), id, period, frameOf(made.book)));

test('a receipt shows from whom, under which document and seal, and its container', () => {
  const flask = between(register(), 'In containers', 'Losses of this time, kept apart');
  expect(flask).toContain('3 January 2026\nReceipt of mercury: bought, from Metal dealer, document D 17, seal S 900\n34473.00\n');
  expect(flask).toContain('Mercury\nnew\n');
  expect(flask).toContain('seal S 900 stands: not opened, not weighed');
});

test('the balance after each movement is what came in less what went out', () => {
  const text = between(register(), 'Working bottle', 'Losses of this time, kept apart');
  // 2000 − 600 + 247.5 − 500 − 50 + 44.5 = 1142; the scale found 1138
  for (const line of [
    /Receipt of mercury: already here when the book began\n2000\.00\n\n2000\.00\n/,
    /to plates \(in circuit\)\n\n600\.00\n1400\.00\n/,
    /\n247\.50\n\n1647\.50\n/,
    /Transfer.*: to Refiner, for refining, document C 8, seal S 31, carrier Carter, weighed there as 498\.6 g on 9 April 2026\n\n500\.00\n1147\.50\n/,
    /\n\n50\.00\n1097\.50\n/,
    /\n44\.50\n\n1142\.00\n/,
    /Stock-take: count against the book\n−4\.00\n\n1138\.00\n/,
  ])
    expect(text).toMatch(line);
});

test('a difference at a count stands with its reason as noted, and without one it says so', () => {
  const found = between(register(), 'Working bottle', 'Losses of this time, kept apart');
  expect(found).toContain('30 June 2026\n1138.00\n1142.00\n−4.00\na film of water was found under the stopper\nKeeper');
  const silent = year();
  silent.book.add(
    'count two',
    'stock-take',
    { lines: [{ how: 'weighed', place: `vessel:${silent.ids.bottle}`, weight: stated('1130', '0.1') }] },
    { happened: '2026-07-30T09:00+13:00' },
  );
  expect(register(silent)).toContain('30 July 2026\n1130.00\n1138.00\n−8.00\nnone noted\n');
});

test('a note written about a count is its reason too', () => {
  const made = year();
  made.book.add('later note', 'note', { text: 'The stopper leaked.', about: made.ids.count });
  expect(register(made)).toContain('a film of water was found under the stopper; The stopper leaked.');
});

test('losses measured, estimated and unaccounted are kept apart', () => {
  const text = between(register(), 'Losses of this time, kept apart', 'Corrections, strikes and notes');
  expect(text).toContain('Measured: spilled and not gathered up\n5.50\n');
  expect(text).toMatch(/Estimated or by difference: lost at the retort\n[\d.]+\n/);
  expect(text).toContain('Not accounted for, from counts of single places\n4.00\n');
});

test('a broken seal is no seal: mercury drawn from a sealed flask leaves it open', () => {
  const made = year();
  made.book.add(
    'draw',
    'issue',
    { vessel: made.ids.flask, to: 'vessel', into: made.ids.bottle, weight: stated('100', '0.1') },
    { happened: '2026-07-01T09:00+13:00' },
  );
  const text = between(register(made), 'Containers', 'In containers');
  expect(text).toContain('Flask 7\nnew\nopen, or no seal on the record\n34373.00\n');
  expect(between(register(), 'Containers', 'In containers')).toContain('Flask 7\nnew\nS 900\n34473.00\n');
});

test('one container alone is named, and a period carries the balance from before it', () => {
  const made = year();
  const text = register(made, made.ids.bottle, { from: '2026-04-01', to: '2026-04-30' });
  expect(text).toContain('Working bottle, 1 April 2026 to 30 April 2026');
  expect(text).toContain('Carried from before 1 April 2026\n\n\n1647.50\n');
  expect(text).toContain('At the end, by the book\n\n\n1142.00\n');
  expect(text).not.toContain('Flask 7');
  expect(text).not.toContain('2000.00');
});

test('a corrected entry keeps its old reading on the register, with who and why', () => {
  const made = year();
  made.book.add('fix', 'correction', {
    corrects: made.ids.transfer,
    body: { way: 'out', what: 'mercury', party: 'Refiner', vessel: made.ids.bottle, weight: stated('510', '0.1') },
    why: 'A digit was misread.',
  });
  const text = register(made);
  expect(text).toContain('Why: A digit was misread.');
  expect(text).toContain('weight, mass\n500 g\n510 g');
});

test('an id that is no container is refused with what is wanted, and so is a book with an unknown kind', () => {
  const { book, ids } = year();
  expect(mercuryRegister(bookOf(book), ids.melt, whole, frameOf(book))).toEqual({
    ok: false,
    problems: [{ code: 'paper-no-such', field: 'id', data: { wanted: 'vessel', id: ids.melt } }],
  });
  fromLater(book, {});
  expect(mercuryRegister(bookOf(book), undefined, whole, frameOf(book))).toMatchObject({
    ok: false,
    problems: [{ code: 'paper-not-understood' }],
  });
});
