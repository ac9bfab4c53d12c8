/** `reckon series`: a run of periods looked at together. */
import type { Decimal } from '../decimal.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { seriesFigures } from '../series.ts';
import { z } from '../zod.ts';
import { num } from './answer.ts';
import { decimal, decimalUncertainty, notNegative, topic } from './input.ts';

const schema = z.strictObject({
  differences_g: z.array(decimal),
  inventory_u_g: z.array(decimalUncertainty),
  throughput_u_g: z.array(decimalUncertainty),
  shared: z.array(z.strictObject({ coefficients: z.array(decimal), u: decimalUncertainty })),
  k: notNegative.optional(),
  false_alarm: z
    .number()
    .refine((p) => p > 0 && p < 1, { params: { code: 'chance-range' } })
    .optional(),
});

/** More periods than any site has closed; the work grows with the cube of them. */
const mostPeriods = 500;

export const seriesTopic = topic(schema, (input) => {
  const n = input.differences_g.length;
  const problems: Problem[] = [];
  const wants = (list: readonly Decimal[], count: number, field: string) => {
    if (list.length !== count) problems.push(problem('how-many', field, { wanted: count, got: list.length }));
  };
  if (n === 0) problems.push(problem('no-periods', 'differences_g'));
  if (n > mostPeriods) problems.push(problem('too-long', 'differences_g', { most: mostPeriods }));
  wants(input.inventory_u_g, n + 1, 'inventory_u_g');
  wants(input.throughput_u_g, n, 'throughput_u_g');
  input.shared.forEach((one, i) => {
    wants(one.coefficients, n, `shared[${i}].coefficients`);
  });
  if (problems.length > 0) return bad(...problems);
  const series = seriesFigures(
    {
      differences: input.differences_g,
      inventoryU: input.inventory_u_g,
      throughputU: input.throughput_u_g,
      shared: input.shared,
    },
    input.k ?? 0.5,
    input.false_alarm ?? 0.05,
  );
  if (!series) return bad(problem('not-positive-definite', ''));
  return good({
    covariance_g2: series.covariance.map((row) => row.map(num)),
    z: series.z,
    y: series.y,
    page: series.page,
    threshold: series.threshold,
    signal_at: series.signalAt,
    cumulative_g: series.cumulative.map(num),
    cumulative_u_g: series.cumulativeU,
  });
});
