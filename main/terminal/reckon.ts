/** `reckon TOPIC`: one calculation, a JSON object in and a JSON object out, by the core that the window uses. Touches no daybook. */
import { isUtf8 } from 'node:buffer';
import { reckon, reckonTopics } from '../../app/core/reckon/index.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { spoken } from '../../app/words/reasons.ts';
import { jsonKinds, verbTexts } from '../../app/words/terminal.ts';
import { keyTwice } from './json-keys.ts';
import { done, type Machine, refused, type Verb } from './verb.ts';

/** More than the longest series a person could enter. */
const mostBytes = 16_000_000;

/** Standard input as one JSON object. */
async function readObject(machine: Machine): Promise<Result<object>> {
  const bytes = await machine.input(mostBytes);
  if (bytes === null) return bad(problem('input-too-long', '', { most: mostBytes }));
  if (!isUtf8(bytes)) return bad(problem('input-not-text', ''));
  // a mark some programs put before UTF-8 text means nothing
  const text = new TextDecoder('utf-8').decode(bytes);
  if (text.trim() === '') return bad(problem('input-empty', ''));
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch (error) {
    return bad(problem('input-not-json', '', { detail: error instanceof Error ? error.message : String(error) }));
  }
  const kind = value === null ? 'null' : Array.isArray(value) ? 'array' : typeof value;
  if (kind !== 'object') return bad(problem('input-not-object', '', { read: jsonKinds[kind] ?? kind }));
  const twice = keyTwice(text);
  return twice === null ? good(value as object) : bad(problem('input-key-twice', twice, { name: twice }));
}

export const reckonVerb: Verb = {
  usage: 'reckon TOPIC < INPUT.json',
  does: verbTexts.reckon,
  places: ['TOPIC'],
  options: {},
  run: async ({ places }, machine) => {
    const topic = places.TOPIC as string;
    if (!reckonTopics.includes(topic))
      return refused(problem('topic', 'TOPIC', { name: topic.slice(0, 60), topics: reckonTopics.join(', ') }));
    const input = await readObject(machine);
    if (!input.ok) return refused(...input.problems);
    const got = reckon(topic, input.value);
    if (!got.ok) return refused(...got.problems);
    machine.print(JSON.stringify(spoken(got.value)));
    return done;
  },
};
