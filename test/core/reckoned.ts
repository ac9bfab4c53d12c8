/** Short ways to ask for a reckoning in tests: its output, or the fields it refuses. */
import { reckon } from '../../app/core/reckon/index.ts';
import { problemText } from '../../app/words/problems.ts';

type Output = Record<string, unknown>;

/** The output; a refused input fails the test with its problems. */
export function reckoned(topic: string, input: unknown): Output {
  const got = reckon(topic, input);
  if (!got.ok) throw new Error(`refused: ${JSON.stringify(got.problems)}`);
  return got.value;
}

/** Every problem as "field code", in the order told; an accepted input gives none. */
export function refused(topic: string, input: unknown): readonly string[] {
  const got = reckon(topic, input);
  if (got.ok) return [];
  for (const p of got.problems)
    if (problemText(p).startsWith('This cannot be accepted (')) throw new Error(`no words for ${p.code}`);
  return got.problems.map((p) => `${p.field} ${p.code}`.trim());
}

export const why = (reason: string) => ({ not_computable: reason });
