/** `reckon assay`: fineness by fire assay with proofs. */
import { assayFigures, cornetOverSample } from '../assay.ts';
import { bad, good, problem } from '../result.ts';
import { z } from '../zod.ts';
import { ratioOr } from './answer.ts';
import { decimal, decimalNotNegative, topic } from './input.ts';

const schema = z.strictObject({
  samples: z.array(z.strictObject({ sample_mg: decimal, cornet_mg: decimalNotNegative, bead_mg: decimalNotNegative.optional() })),
  proofs: z
    .array(z.strictObject({ taken_mg: decimal, found_mg: decimalNotNegative, silver_loss_mg: decimal.optional() }))
    .optional(),
});

export const assayTopic = topic(schema, (input) => {
  const samples = input.samples.map((s) => ({ sample: s.sample_mg, cornet: s.cornet_mg, bead: s.bead_mg }));
  const proofs = (input.proofs ?? []).map((p) => ({ taken: p.taken_mg, found: p.found_mg, silverLoss: p.silver_loss_mg }));
  const heavy = samples.flatMap((s, i) =>
    cornetOverSample(s) ? [problem('cornet-over-sample', `samples[${i}].cornet_mg`)] : [],
  );
  if (heavy.length > 0) return bad(...heavy);
  const assay = assayFigures(samples, proofs);
  const withoutProofs = proofs.length === 0 ? 'no-proofs' : 'over-nothing';
  return good({
    delta_mg: ratioOr(assay.delta, 'no-proofs'),
    gold_permille: assay.gold.map((gold) => ratioOr(gold, 'over-nothing')),
    gold_mean_permille: ratioOr(assay.goldMean, 'over-nothing'),
    range_permille: ratioOr(assay.range, 'over-nothing'),
    uncorrected_mean_permille: ratioOr(assay.uncorrectedMean, 'over-nothing'),
    surcharge_permille: ratioOr(assay.surcharge, withoutProofs),
    ...(assay.silver !== undefined && { silver_permille: ratioOr(assay.silver, 'over-nothing') }),
    ...(assay.base !== undefined && { base_permille: ratioOr(assay.base, 'over-nothing') }),
    findings: assay.findings,
  });
});
