/** `reckon round`: decimal text rounded once, to places or to the step of a trade rule. */
import { decimalFromText } from '../decimal.ts';
import { bad, good, type Problem, problem } from '../result.ts';
import { roundedText, steppedText } from '../round.ts';
import { z } from '../zod.ts';
import { notComputable } from './answer.ts';
import { topic } from './input.ts';

/** More places than any weighing or assay has. */
const mostPlaces = 100;

const schema = z.strictObject({
  text: z.string(),
  places: z.number().optional(),
  step: z.string().optional(),
  rule: z.enum(['half-even', 'down']).optional(),
});

export const roundTopic = topic(schema, ({ text, places, step, rule = 'half-even' }) => {
  const problems: Problem[] = [];
  const value = decimalFromText(text);
  const stride = step === undefined ? null : decimalFromText(step);
  if (!value) problems.push(problem('decimal-text', 'text', { read: text.slice(0, 40) }));
  if (places !== undefined && !(Number.isInteger(places) && places >= 0 && places <= mostPlaces))
    problems.push(problem('places', 'places', { most: mostPlaces }));
  if (step !== undefined && !stride) problems.push(problem('decimal-text', 'step', { read: step.slice(0, 40) }));
  else if (places !== undefined && step !== undefined) problems.push(problem('places-and-step', 'step'));
  if (places === undefined && step === undefined) problems.push(problem('places-or-step', 'places'));
  if (problems.length > 0 || !value) return bad(...problems);
  if (places !== undefined) return good({ text: roundedText(value, places, rule) });
  if (!stride || stride.digits <= 0n) return good({ text: notComputable('over-nothing') });
  return good({ text: steppedText(value, stride, rule) });
});
