/**
 * One call of the `daybook` command from its words to its exit code: 0 done, 1 the record itself is at fault, 2 the call or its input is wrong.
 * A new verb is a file beside this one and a row in the table. Every problem becomes one line of JSON on standard error.
 */
import { problem } from '../../app/core/result.ts';
import { problemText } from '../../app/words/problems.ts';
import { verbTexts } from '../../app/words/terminal.ts';
import { accountVerb } from './account.ts';
import { readCall } from './call.ts';
import { checkVerb } from './check.ts';
import { exportVerb } from './export.ts';
import { helpPage } from './help.ts';
import { importVerb } from './import.ts';
import { joinVerb } from './join.ts';
import { movementsVerb } from './movements.ts';
import { newVerb } from './new.ts';
import { paperVerb } from './paper.ts';
import { reckonVerb } from './reckon.ts';
import { sampleVerb } from './sample.ts';
import { serveVerb, windowVerb } from './serve.ts';
import { done, type Machine, type Outcome, refused, type Verb } from './verb.ts';

const helpVerb: Verb = {
  usage: 'help',
  does: verbTexts.help,
  places: [],
  options: {},
  run: async (_, machine) => {
    machine.print(helpPage(verbs));
    return done;
  },
};

/** Every verb by its name. */
export const verbs: Readonly<Record<string, Verb>> = {
  new: newVerb,
  sample: sampleVerb,
  check: checkVerb,
  join: joinVerb,
  account: accountVerb,
  movements: movementsVerb,
  export: exportVerb,
  import: importVerb,
  paper: paperVerb,
  reckon: reckonVerb,
  serve: serveVerb,
  window: windowVerb,
  help: helpVerb,
};

async function outcomeOf(words: readonly string[], machine: Machine): Promise<Outcome> {
  const [name, ...rest] = words;
  const known = Object.keys(verbs).join(', ');
  if (name === undefined || name === '') {
    machine.print(helpPage(verbs));
    return refused(problem('verb-missing', '', { verbs: known }));
  }
  if (name === '--help' || name === '-h' || (rest.length === 1 && rest[0] === '--help')) return helpVerb.run(noCall, machine);
  const verb = Object.hasOwn(verbs, name) ? verbs[name] : undefined;
  if (verb === undefined) return refused(problem('verb-unknown', '', { read: name.slice(0, 60), verbs: known }));
  const call = readCall(name, verb, rest);
  return call.ok ? verb.run(call.value, machine) : refused(...call.problems);
}

const noCall = { places: {}, options: {}, flags: new Set<string>() };

/** Runs one call and answers its exit code. Never throws. */
export async function runTerminal(words: readonly string[], machine: Machine): Promise<0 | 1 | 2> {
  let outcome: Outcome;
  try {
    outcome = await outcomeOf(words, machine);
  } catch (error) {
    outcome = refused(
      problem('program-fault', '', { detail: error instanceof Error ? `${error.name}: ${error.message}` : String(error) }),
    );
  }
  if (outcome.code !== 0)
    for (const p of outcome.problems) machine.complain(JSON.stringify({ problem: problemText(p), field: p.field }));
  return outcome.code;
}
