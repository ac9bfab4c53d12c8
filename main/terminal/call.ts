/** Reads the words after a verb against what the verb takes. Refuses every word it cannot place, by name, and guesses nothing. */
import { parseArgs } from 'node:util';
import { bad, good, type Problem, problem, type Result } from '../../app/core/result.ts';
import type { Call, Verb } from './verb.ts';

const dashed = (name: string): string => `--${name}`;

/** The call, or everything that is wrong with it. The field of a problem is the option or the place as the usage names it. */
export function readCall(name: string, verb: Verb, words: readonly string[]): Result<Call> {
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(
      Object.entries(verb.options).map(([option, kind]) => [option, { type: kind === 'flag' ? 'boolean' : 'string' }] as const),
    ),
    strict: false,
    allowPositionals: true,
    tokens: true,
  });
  const problems: Problem[] = [];
  const given: string[] = [];
  const options: Record<string, string> = {};
  const flags = new Set<string>();
  const { usage } = verb;

  for (const token of tokens) {
    if (token.kind === 'positional') given.push(token.value);
    if (token.kind !== 'option') continue;
    const kind = Object.hasOwn(verb.options, token.name) ? verb.options[token.name] : undefined;
    const field = dashed(token.name);
    if (kind === undefined || token.rawName !== field) {
      const known = Object.keys(verb.options).map(dashed).join(', ');
      problems.push(
        problem('option-unknown', token.rawName, {
          read: token.rawName.slice(0, 60),
          verb: name,
          known: known === '' ? 'it takes none' : `it takes ${known}`,
        }),
      );
    } else if (flags.has(token.name) || Object.hasOwn(options, token.name)) {
      problems.push(problem('option-twice', field, { name: field }));
    } else if (kind === 'flag') {
      flags.add(token.name);
      if (token.value !== undefined)
        problems.push(problem('option-no-value', field, { name: field, read: token.value.slice(0, 60) }));
    } else if (token.value === undefined || token.value === '' || (!token.inlineValue && token.value.startsWith('--'))) {
      options[token.name] = '';
      problems.push(problem('option-value-missing', field, { name: field, usage }));
    } else {
      options[token.name] = token.value;
    }
  }

  const places: Record<string, string> = {};
  verb.places.forEach((place, i) => {
    const optional = place.startsWith('[');
    const word = given[i];
    if (word !== undefined && word !== '') places[place.replace(/[[\]]/g, '')] = word;
    else if (!optional) problems.push(problem('place-missing', place, { name: place, usage }));
  });
  for (const word of given.slice(verb.places.length))
    problems.push(problem('place-extra', '', { read: word.slice(0, 60), usage }));
  for (const [option, kind] of Object.entries(verb.options))
    if (kind === 'needed' && !Object.hasOwn(options, option))
      problems.push(problem('option-missing', dashed(option), { name: dashed(option), usage }));

  return problems.length > 0 ? bad(...problems) : good({ places, options, flags });
}
