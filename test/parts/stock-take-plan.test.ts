import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { countRow } from '../../app/screens/mercury/stock-take/plan.ts';
import { weightOf } from '../../app/screens/shared/weighing-entry.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

const usual = { scale: 'scale-bench', unit: 'g' } as const;

test('a vessel weighed empty before is counted less its tare; one that never was, as the scale shows it', () => {
  const maker = BookMaker.site();
  const flask = maker.add('flask', 'vessel', { label: 'Flask A', use: 'flask', tare: stated('1200.0', '0.1') });
  const jar = maker.add('jar', 'vessel', { label: 'Jar', use: 'jar' });
  const { registers } = readBook(maker.entries);
  const at = '2026-04-01T09:00+13:00';
  const counted = (vessel: string) => {
    const row = countRow(`vessel:${vessel}`, usual, registers, at);
    return weightOf({ ...row.weight, gross: { amount: '2598.9', unit: 'g' } });
  };
  expect(counted(flask)).toMatchObject({ gross: '2598.9 g', tare: '1200.0 g', vessel: flask });
  expect(counted(jar)).toMatchObject({ gross: '2598.9 g', tare: undefined, vessel: undefined });
});
