/** Rows of limits that the program offers: each with its source, none set, conflicts named on both sides. */
import { expect, test } from 'vitest';
import { bodyFrom } from '../../app/core/kinds/index.ts';
import { limitFromRow, limitRows } from '../../app/core/limit-rows.ts';

test('every row can be kept as a limit, has a source, and is neither checked nor picked', () => {
  expect(new Set(limitRows.map((r) => r.key)).size).toBe(limitRows.length);
  for (const row of limitRows) {
    const body = limitFromRow(row);
    expect(bodyFrom('limit', body).ok, row.key).toBe(true);
    expect([body.picked, body.checked, body.form], row.key).toEqual(['no', undefined, 'elemental-vapour']);
  }
});

test('a row that names a conflict names a row that is there and names it back', () => {
  const named = limitRows.filter((r) => r.conflict !== undefined);
  expect(named.map((r) => r.key)).toEqual(['osha-mean', 'osha-ceiling', 'germany', 'germany-superseded']);
  for (const row of named) {
    const other = limitRows.find((r) => r !== row && row.conflict?.includes(`“${r.label}”`));
    expect(other?.conflict, row.key).toContain(`“${row.label}”`);
  }
});

test('figures for work and for the public lie apart, and the public ones are under every one for work', () => {
  const least = Math.min(...limitRows.filter((r) => r.people === 'work').map((r) => Number(r.mgM3)));
  for (const row of limitRows) if (row.people === 'public') expect(Number(row.mgM3), row.key).toBeLessThan(least);
});
