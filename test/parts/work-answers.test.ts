import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { answersFrom, rowsFrom, rowsShown, worksFor } from '../../app/screens/shared/work-answers.ts';
import { workCautions, worksOf } from '../../app/words/work-cautions.ts';
import { workChecks } from '../../app/words/work-checks.ts';

const at = '2026-03-14T10:00+13:00';
const { current } = readBook([]);

test('a plate that was scaled is asked about scaling, one that was steamed about heat, one that was set about neither', () => {
  expect(worksFor('plate-work', { what: 'scaled' }).map(({ work }) => work)).toEqual(['scaling']);
  expect(worksFor('plate-work', { what: 'steamed' }).map(({ work }) => work)).toEqual(['plate-heat']);
  expect(worksFor('plate-work', { what: 'set' })).toEqual([]);
  expect(worksFor('melt', {}).map(({ work }) => work)).toEqual(['melting']);
});

test('every work besides a run belongs to a form, with cautions and questions of its own', () => {
  const shown = new Set(Object.values(worksOf).flatMap((works) => works.map(({ work }) => work)));
  expect([...shown].sort()).toEqual(Object.keys(workChecks).sort());
  for (const work of shown) expect([workCautions[work].length > 0, workChecks[work].length > 0]).toEqual([true, true]);
});

test('answers go from rows to names and back in the order they are asked, notes as typed, blank answers left out', () => {
  const rows = [
    { check: 'tray-under', answer: 'no', by: 'ann-of-site', note: 'none was found ' },
    { check: 'plate-cold', answer: 'yes', by: '', note: '' },
  ];
  const answers = answersFrom(rows);
  expect(answers['tray-under']).toEqual({ answer: 'no', by: 'ann-of-site', note: 'none was found ' });
  expect(rowsFrom(current, 'plate-work', at, { ...answers, washed: { answer: '', note: 'x', by: '' } })).toEqual([
    rows[1],
    rows[0],
  ]);
});

test('an answer to a work that the entry is no longer about is not kept, a question both works ask is', () => {
  const rows = [{ check: 'tray-under' }, { check: 'people' }, { check: 'of-its-own' }];
  expect(rowsShown(current, 'plate-work', at, { what: 'steamed' }, rows)).toEqual([{ check: 'people' }, { check: 'of-its-own' }]);
  expect(rowsShown(current, 'plate-work', at, { what: 'scaled' }, rows)).toEqual(rows);
});
