import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { barsHeader, barsTable } from '../../app/papers/csv/bars.ts';
import data from '../outside/data/bullion-book.json' with { type: 'json' };
import { bookOf, year } from './year.ts';

const rowsOf = (text: string) => Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true }).data;

test('a bar has one row with its exact mass, its fineness and fine gold unrounded to twelve places', () => {
  const { book, ids } = year();
  const { proofed: p } = data;
  book.add('assay', 'assay', {
    subject: 'bar',
    bar: `${ids.melt}/1`,
    method: 'fire-assay',
    replicates: p.replicates,
    proofs: p.proofs,
    balanceU: p.balanceU,
    repeatability: p.repeatability,
    proofScatter: p.proofScatter,
  });
  const made = barsTable(bookOf(book));
  const [row, ...more] = rowsOf(made.text);
  expect([made.rows, more.length]).toEqual([1, 0]);
  expect(row).toMatchObject({ bar: `${ids.melt}/1`, label: 'Bar 12', poured: '2026-03-05', grams: '146.2', u_g: '0.1' });
  expect(Number(row?.gold_permille).toFixed(6)).toBe(p.goldPermille);
  expect(Number(row?.gold_u_permille).toFixed(6)).toBe(p.u);
  // 146.2 g at the printed fineness
  expect(Number(row?.fine_gold_g)).toBeCloseTo(0.1462 * Number(p.goldPermille), 6);
  expect(row).toMatchObject({
    gold_class: 'proofed',
    silver_permille: '',
    base_permille: '',
    settled_permille: '',
    fate: 'here',
  });
});

test('what is not known is an empty cell, an impossible base keeps its sign, and a name is never run as a formula', () => {
  const { book, ids } = year({ bar: '=1+1' });
  const unknown = rowsOf(barsTable(bookOf(book)).text)[0];
  expect([unknown?.gold_permille, unknown?.fine_gold_g, unknown?.gold_class]).toEqual(['', '', '']);
  expect(unknown?.label).toBe("'=1+1");
  const result = { unit: 'permille' as const, gold: '950', silver: '60' };
  book.add('certificate', 'assay', { subject: 'bar', bar: `${ids.melt}/1`, method: 'outside', result });
  const known = rowsOf(barsTable(bookOf(book)).text)[0];
  expect(Number(known?.base_permille)).toBe(-10);
  // no uncertainty was stated: it is empty and not nothing
  expect([known?.gold_u_permille, known?.fine_gold_u_g]).toEqual(['', '']);
});

test('the header tells no place', () => {
  expect(barsHeader.join(' ')).not.toMatch(/place|kept|safe/);
});
