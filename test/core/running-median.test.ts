import fc from 'fast-check';
import { expect, test } from 'vitest';
import { RunningMedian } from '../../app/core/book/running-median.ts';

test('after every value the median is that of all values so far, sorted', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ noNaN: true, min: -1, max: 1 })), (values) => {
      const running = new RunningMedian();
      const seen: number[] = [];
      for (const value of values) {
        running.add(value);
        seen.push(value);
        const sorted = seen.toSorted((a, b) => a - b);
        const half = sorted.length >> 1;
        const middle = sorted.length % 2 === 1 ? sorted[half] : ((sorted[half - 1] ?? 0) + (sorted[half] ?? 0)) / 2;
        expect([running.count, running.median() + 0]).toEqual([seen.length, (middle ?? 0) + 0]);
      }
    }),
  );
});
