/** Rows of limits that the program offers: each with its source, none set, conflicts named on both sides. */
import { expect, test } from 'vitest';
import { bodyFrom } from '../../app/core/kinds/index.ts';
import { limitFromRow, limitRows, lookedUp } from '../../app/core/limit-rows.ts';

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

test('a row counts as looked up once the site’s own limit says the same figure from the same paper, and by nobody before', () => {
  const [row] = limitRows;
  if (!row) throw new Error('no rows');
  const own = (more: object) => ({ ...limitFromRow(row), label: 'As this site calls it', ...more });
  const earlier = { by: 'Keeper', on: '2025-03-01' };
  const later = { by: 'Safety officer', on: '2026-03-01' };
  expect(lookedUp(row, [])).toBeUndefined();
  expect(lookedUp(row, [own({})])).toBeUndefined();
  expect(lookedUp(row, [own({ checked: later }), own({ checked: earlier })])).toEqual(later);
  for (const other of [{ mgM3: '0.05' }, { basis: 'ceiling' }, { source: 'Another paper' }, { people: 'public' }] as const)
    expect(lookedUp(row, [own({ checked: later, ...other })]), JSON.stringify(other)).toBeUndefined();
});
