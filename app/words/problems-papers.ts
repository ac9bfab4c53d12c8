/** Words for a paper that cannot be printed. */
import type { ProblemTexts } from './problems.ts';

export const paperProblems: ProblemTexts = {
  'paper-no-id': (d) => `A ${d.paper} is about one thing: say which by its id.`,
  'paper-no-such-run': (d) =>
    `No run here has a charge with the id “${d.id}”; a struck charge has no run either. Take the id from the charge’s own entry in the daybook, or look whether it was written at another desk.`,
  'paper-not-understood': (d) =>
    `A newer program wrote an entry of the kind “${d.kind}” (${d.entry}) about this run, which this one cannot read: print the paper with that program.`,
  'paper-failed': (d) =>
    `The paper could not be drawn (${d.detail}), and nothing was printed. The record is as it was: try again, and report it if it happens twice.`,
};
