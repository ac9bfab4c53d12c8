import { describe, expect, test } from 'vitest';
import { decimalTails } from '../../app/parts/decimal-column.ts';

describe('figures of one column', () => {
  test('every figure ends at the same place after the point', () => {
    const texts = ['212.4', '7', '0.055', '−3.10', '1 200.5'];
    const tails = decimalTails(texts);
    expect(tails).toEqual(['00', '.000', '', '0', '00']);
  });

  test('words in the column take no room after them', () => {
    expect(decimalTails(['not recorded', '2.50'])).toEqual(['', '']);
  });

  test('a column of whole figures needs nothing', () => {
    expect(decimalTails(['1', '22', '333'])).toEqual(['', '', '']);
  });
});
