/**
 * Every reckoning by its name, as the fixed contract of the `daybook` command has it. A pure function: the terminal reads and prints, this
 * computes. Field names and units never change once released; they are only added to.
 */
import { bad, good, problem, type Result } from '../result.ts';
import { agreementTopic } from './agreement.ts';
import { finiteOnly } from './answer.ts';
import { assayTopic } from './assay.ts';
import { balanceTopic } from './balance.ts';
import { barsTopic } from './bars.ts';
import { densityTopic } from './density.ts';
import { exposureTopic } from './exposure.ts';
import { hoodTopic } from './hood.ts';
import type { Topic } from './input.ts';
import { massTopic } from './mass.ts';
import { meltTopic } from './melt.ts';
import { oldAssayTopic } from './old-assay.ts';
import { oldMoneyTopic } from './old-money.ts';
import { readingTopic } from './reading.ts';
import { reconcileTopic } from './reconcile.ts';
import { roomTopic } from './room.ts';
import { roundTopic } from './round.ts';
import { runTopic } from './run.ts';
import { seriesTopic } from './series.ts';
import { settleTopic } from './settle.ts';
import { vapourTopic } from './vapour.ts';
import { volumeTopic } from './volume.ts';
import { weighingTopic } from './weighing.ts';
import { yieldTopic } from './yield.ts';

const topics: ReadonlyMap<string, Topic> = new Map([
  ['mass', massTopic],
  ['volume', volumeTopic],
  ['weighing', weighingTopic],
  ['run', runTopic],
  ['melt', meltTopic],
  ['yield', yieldTopic],
  ['bars', barsTopic],
  ['assay', assayTopic],
  ['settle', settleTopic],
  ['agreement', agreementTopic],
  ['density', densityTopic],
  ['old-assay', oldAssayTopic],
  ['old-money', oldMoneyTopic],
  ['balance', balanceTopic],
  ['series', seriesTopic],
  ['reconcile', reconcileTopic],
  ['exposure', exposureTopic],
  ['vapour', vapourTopic],
  ['room', roomTopic],
  ['hood', hoodTopic],
  ['reading', readingTopic],
  ['round', roundTopic],
]);

/** Names of the topics that can be reckoned. */
export const reckonTopics: readonly string[] = [...topics.keys()];

/**
 * One calculation. `input` is the parsed JSON object; the output holds numbers, texts and, where a number cannot be had, `{ not_computable: code }`
 * (`app/words/reasons.ts` says the codes). Problems: `topic` for a name that is not known, otherwise one for each field that is refused.
 */
export function reckon(topic: string, input: unknown): Result<Record<string, unknown>> {
  const compute = topics.get(topic);
  if (!compute) return bad(problem('topic', '', { name: topic.slice(0, 60), topics: reckonTopics.join(', ') }));
  const got = compute(input);
  return got.ok ? good(finiteOnly(got.value) as Record<string, unknown>) : got;
}
