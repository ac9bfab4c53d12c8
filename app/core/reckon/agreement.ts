/** `reckon agreement`: how far replicates, and the means of two laboratories, may lie apart by the method's own scatter. */
import { betweenLimit, criticalDifference, mostResults, rangeLimit, repeatLimit } from '../agreement.ts';
import { bad, good, problem } from '../result.ts';
import { z } from '../zod.ts';
import { orReason } from './answer.ts';
import { notNegative, topic } from './input.ts';

const results = z.int().min(1).max(mostResults);

const schema = z.strictObject({
  repeat_s_permille: notNegative,
  between_s_permille: notNegative,
  site_results: results,
  other_results: results,
});

export const agreementTopic = topic(schema, (input) => {
  const spread = { repeatS: input.repeat_s_permille, betweenS: input.between_s_permille };
  if (spread.betweenS < spread.repeatS) return bad(problem('between-below-repeat', 'between_s_permille'));
  const { site_results: site, other_results: other } = input;
  return good({
    repeat_limit_permille: repeatLimit(spread),
    between_limit_permille: betweenLimit(spread),
    site_range_permille: orReason(rangeLimit(spread, site), 'one-result'),
    other_range_permille: orReason(rangeLimit(spread, other), 'one-result'),
    critical_difference_permille: criticalDifference(spread, site, other),
  });
});
