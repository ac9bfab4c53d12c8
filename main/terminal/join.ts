/**
 * `join DIR OTHER`: brings what another folder of the same daybook holds into this one, and prints what came in. A record that does not verify
 * is a fault (exit code 1), and nothing is written then.
 */
import { joinTexts, verbTexts } from '../../app/words/terminal.ts';
import { openInstallation, stateFolder } from '../host/installation.ts';
import { joinDaybooks } from '../host/join-daybooks.ts';
import { done, faulty, refused, type Verb } from './verb.ts';

export const joinVerb: Verb = {
  usage: 'join DIR OTHER',
  does: verbTexts.join,
  places: ['DIR', 'OTHER'],
  options: {},
  run: async ({ places }, machine) => {
    const installation = openInstallation(stateFolder());
    if (!installation.ok) return refused(...installation.problems);
    const joined = joinDaybooks(places.DIR as string, places.OTHER as string, installation.value);
    if (!joined.ok)
      return joined.problems.some(({ code }) => code === 'join-broken')
        ? faulty(...joined.problems)
        : refused(...joined.problems);
    const { lines, evidence, closings, signatures, beside, left } = joined.value;
    for (const { desk, lines: came } of lines) machine.print(joinTexts.lines(desk, came));
    if (evidence > 0) machine.print(joinTexts.evidence(evidence));
    if (closings > 0) machine.print(joinTexts.closings(closings));
    if (signatures > 0) machine.print(joinTexts.signatures(signatures));
    for (const { name, as } of beside) machine.print(joinTexts.beside(name, as));
    for (const name of left) machine.print(joinTexts.left(name));
    if (lines.length + evidence + closings + signatures === 0) machine.print(joinTexts.nothing);
    return done;
  },
};
