import { expect, test } from 'vitest';
import { incidentSheet } from '../../app/papers/incident-sheet.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, stated, year } from './year.ts';

const sheet = (made: ReturnType<typeof year>, id: string) => said(incidentSheet(bookOf(made.book), id, frameOf(made.book)));

test('an incident tells what, where, who, what was done and whom it was told, or that this is not recorded', () => {
  const made = year();
  const text = sheet(made, made.ids.incident);
  for (const fact of [
    'Where\nstore',
    'People\nKeeper',
    'Told\nnot recorded',
    'Medical assessment advised\nno',
    'What happened\nA flask fell and held.',
    'What was done\nStore aired, floor read.',
  ])
    expect(text).toContain(fact);
  expect(text).not.toContain('What was spilled');
});

test('a spill has its weights: what ran out, what was gathered up, and what was not', () => {
  const made = year();
  const text = between(sheet(made, made.ids.spill), 'What was spilled', 'Cautions');
  expect(text).toContain('Ran out\n50');
  expect(text).toContain('less gathered up, into Working bottle\n44.5\n');
  // 50 − 44.5; U = 2·√(2² + 0.1²) = 4.005
  expect(text).toContain('Not gathered up\n5.5\n± 4.0');
  expect(text).toContain('It does not lie inside an issue that was booked.');
});

test('what ran out and was not known is no nothing', () => {
  const made = year();
  const id = made.book.add('unknown spill', 'spill', {
    where: 'yard',
    recovered: { weight: stated('3', '0.1'), vessel: made.ids.bottle },
    insideIssue: 'na',
  });
  const text = sheet(made, id);
  expect(text).toContain('How much ran out is not known');
  expect(text).toContain('Gathered up, into Working bottle\n3');
  expect(text).not.toContain('\nNot gathered up\n');
});

test('there is room to sign, with the writer named, and no judgement of the place', () => {
  const made = year();
  for (const id of [made.ids.incident, made.ids.spill]) {
    const text = sheet(made, id);
    expect(text).toMatch(/Signatures\n[^\n]+\nWho\nName\nSignature and day\nRecorded by\nKeeper\n/);
    expect(text).toContain('Safety officer');
    expect(text).toContain('is for the safety officer and licensed people to say');
    expect(text).not.toMatch(/\b(safe|safely|approved|compliant|authori[sz]ed)\b/i);
  }
});

test('notes written about it since stand on it, with who and when', () => {
  const made = year();
  made.book.add(
    'note',
    'note',
    { text: 'Five grams are still under the bench.', about: made.ids.spill },
    { by: made.ids.keeper },
  );
  expect(between(sheet(made, made.ids.spill), 'Corrections, strikes and notes', 'Readings')).toContain(
    'Five grams are still under the bench.',
  );
});

test('an unknown id and an id of another kind are refused; an entry not understood keeps it from being printed', () => {
  const { book, ids } = year();
  const codes = (id: string) => {
    const got = incidentSheet(bookOf(book), id, frameOf(book));
    return got.ok ? [] : got.problems.map(({ code, data }) => [code, data?.wanted]);
  };
  expect(codes('no-such-thing')).toEqual([['paper-no-such', 'incident']]);
  expect(codes(ids.melt)).toEqual([['paper-no-such', 'incident']]);
  fromLater(book, { about: ids.spill });
  expect(codes(ids.spill)).toEqual([['paper-not-understood', undefined]]);
  expect(codes(ids.incident)).toEqual([]);
});
