import { expect, test } from 'vitest';
import { transferSheet } from '../../app/papers/transfer-sheet.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, stated, year } from './year.ts';

const sheet = (made = year(), id = made.ids.transfer) => said(transferSheet(bookOf(made.book), id, frameOf(made.book)));

test('what moved, to whom, under which document, seal and carrier', () => {
  const text = between(sheet(), 'What moved', 'Weights, side by side');
  for (const fact of [
    'What\nMercury',
    'Which\nWorking bottle',
    'Way\nout of this site',
    'Other party\nRefiner',
    'For what\nrefining',
    'Document\nC 8',
    'Their document\nR 4',
    'Carrier\nCarter',
    'Seal\nS 31',
    'Recorded by\nKeeper',
  ])
    expect(text).toContain(fact);
});

test('both weights stand beside each other with the difference, and neither replaces the other', () => {
  const text = between(sheet(), 'Weights, side by side', 'Mercury in it, as the account books it');
  expect(text).toContain('Ours\n500');
  expect(text).toContain('Theirs, of 9 April 2026\n498.6');
  // 498.6 − 500 = −1.4; U = 2·√(0.1² + 0.1²) = 0.283
  expect(text).toContain('Theirs less ours\n−1.4\n± 0.28');
  expect(text).toContain('The two differ by more than their uncertainties together explain');
});

test('weights that lie within their uncertainties are said to, and unknown ones cannot be told', () => {
  const made = year();
  const add = (name: string, theirs: ReturnType<typeof stated>) =>
    made.book.add(name, 'transfer', {
      way: 'out',
      what: 'mercury',
      party: 'Refiner',
      vessel: made.ids.bottle,
      weight: stated('100', '0.1'),
      theirs: { weight: theirs, on: '2026-05-01' },
    });
  expect(sheet(made, add('close', stated('100.2', '0.1')))).toContain('differ by no more than');
  expect(sheet(made, add('bare', stated('100.2')))).toContain('whether they agree cannot be told');
});

test('their weight that has not come is not recorded, never nothing', () => {
  const made = year();
  const id = made.book.add('sent', 'transfer', {
    way: 'out',
    what: 'mercury',
    party: 'Refiner',
    vessel: made.ids.bottle,
    weight: stated('100', '0.1'),
  });
  const text = sheet(made, id);
  expect(text).toContain('The other side’s weight is not on the record yet.');
  expect(text).toContain('Carrier\nnot recorded');
  expect(text).not.toContain('Theirs less ours');
});

test('it names who decides, leaves the answers blank and declares nothing', () => {
  const text = between(sheet(), 'Who decides', 'Handed over and taken');
  expect(text).toContain('This sheet declares nothing: it is no consignment note');
  for (const whom of [
    'the authority for this place',
    'the carrier, by its own rules',
    'the receiver, and the authority that oversees it',
  ])
    expect(text).toContain(`\n${whom}\n\n`);
  expect(sheet()).not.toMatch(/\b(safe|safely|approved|compliant|authori[sz]ed)\b/i);
});

test('the mercury in it is what the account moved', () => {
  expect(between(sheet(), 'Mercury in it, as the account books it', 'Who decides')).toContain(
    'Working bottle\nOutside this book\nstated by another\n500.00\n',
  );
});

test('an unknown id and an id of another kind are refused; an entry not understood keeps it from being printed', () => {
  const { book, ids } = year();
  const codes = (id: string) => {
    const got = transferSheet(bookOf(book), id, frameOf(book));
    return got.ok ? [] : got.problems.map(({ code, data }) => [code, data?.wanted]);
  };
  expect(codes('no-such-transfer')).toEqual([['paper-no-such', 'transfer']]);
  expect(codes(ids.spill)).toEqual([['paper-no-such', 'transfer']]);
  fromLater(book, { received: ids.transfer });
  expect(codes(ids.transfer)).toEqual([['paper-not-understood', undefined]]);
});
