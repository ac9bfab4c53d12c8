/** A meter's table is read as a whole or not at all, and every fault is told by row and column. */
import { expect, test } from 'vitest';
import { type MeterTable, readMeterTable } from '../../app/core/meter-table.ts';
import { problemText } from '../../app/words/problems.ts';

const how: MeterTable = {
  columns: { time: 'time', value: 'Hg', mark: 'flag' },
  offset: '+13:00',
  ends: '2026-03-14T09:15+13:00',
  reading: { sample: 'area', place: 'bench', unit: 'ug/m3' },
};
const read = (text: string, more: Partial<MeterTable> = {}) => readMeterTable(text, { ...how, ...more });
const faults = (text: string, more: Partial<MeterTable> = {}) => {
  const got = read(text, more);
  if (got.ok) throw new Error('it was read');
  for (const p of got.problems) expect(problemText(p), p.code).not.toContain(p.code);
  return got.problems.map((p) => `${p.code} ${p.field}`);
};

test('each row lasts until the next, keeps its figure as it stands, and its sign', () => {
  const got = read('time,Hg,flag\n2026-03-14 09:00:00,12.50,\n2026-03-14 09:05:00,3,<\n2026-03-14T09:10:00+13:00,>999,>\n');
  expect(got.ok && got.value.map((r) => [r.from, r.to, r.shows])).toEqual([
    ['2026-03-14T09:00:00+13:00', '2026-03-14T09:05:00+13:00', '12.50'],
    ['2026-03-14T09:05:00+13:00', '2026-03-14T09:10:00+13:00', '<3'],
    ['2026-03-14T09:10:00+13:00', '2026-03-14T09:15+13:00', '>999'],
  ]);
});

test('all faults are told at once, and nothing is read', () => {
  expect(
    faults(
      'time,Hg,flag\n2026-03-14 09:00,12,\n2026-03-14 25:00,12,\n2026-03-14 09:05,twelve,\n2026-03-14 09:06,12,~\n2026-03-14 09:02,12,\n',
    ),
  ).toEqual([
    'meter-time row 3, column "time"',
    'air-figure row 4, column "Hg"',
    'meter-mark row 5, column "flag"',
    'meter-order row 6, column "time"',
  ]);
});

test('a column that is not there, an end that nobody gave and an end before its beginning are faults', () => {
  expect(faults('when,Hg\n2026-03-14 09:00,12\n')).toEqual([
    'meter-column row 1, column "time"',
    'meter-column row 1, column "flag"',
  ]);
  expect(faults('time,Hg,flag\n2026-03-14 09:00,12,\n', { ends: undefined } as unknown as Partial<MeterTable>)).toEqual([
    'meter-ends row 2, column "time"',
  ]);
  const ended = { columns: { time: 'time', value: 'Hg', end: 'end' } };
  expect(faults('time,Hg,end\n2026-03-14 09:00,12,2026-03-14 08:00\n', ended)).toEqual(['meter-order row 2, column "end"']);
});

test('a sign in the cell and another beside it contradict each other', () => {
  expect(faults('time,Hg,flag\n2026-03-14 09:00,<3,>\n')).toEqual(['air-figure row 2, column "flag"']);
});
