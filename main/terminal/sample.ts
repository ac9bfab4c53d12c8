/** `sample DIR [--entries N] [--seed S]`: writes the invented sample site, or with `--entries` a large generated one, the same for the same seed. */
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import { madeTexts, verbTexts } from '../../app/words/terminal.ts';
import { printPaper } from '../host/print.ts';
import { writeSample } from '../host/sample/write.ts';
import { version } from '../host/version.ts';
import { done, refused, type Verb } from './verb.ts';

/** More entries than this no site writes in a lifetime. */
const most = 1_000_000;

/** A whole number from `least`, or why it is none. */
function whole(text: string | undefined, option: string, least: number, otherwise: number): Result<number> {
  if (text === undefined) return good(otherwise);
  const number = /^\d{1,7}$/.test(text) ? Number(text) : -1;
  return number >= least && number <= most
    ? good(number)
    : bad(problem('option-number', option, { name: option, read: text.slice(0, 60), least, most }));
}

export const sampleVerb: Verb = {
  usage: 'sample DIR [--entries N] [--seed S]',
  does: verbTexts.sample,
  places: ['DIR'],
  options: { entries: 'optional', seed: 'optional' },
  run: async ({ places, options }, machine) => {
    const entries = whole(options.entries, '--entries', 1, 0);
    const seed = whole(options.seed, '--seed', 0, 1);
    const wrong = [entries, seed].flatMap((got) => (got.ok ? [] : got.problems));
    if (wrong.length > 0 || !entries.ok || !seed.ok) return refused(...wrong);
    const dir = places.DIR as string;
    const large = entries.value > 0 ? { entries: entries.value, seed: seed.value } : null;
    const made = await writeSample(dir, large, { print: printPaper, version });
    if (!made.ok) return refused(...made.problems.map((p) => ({ ...p, field: 'DIR' })));
    machine.print(madeTexts.sample(made.value.name, made.value.entries, dir));
    return done;
  },
};
