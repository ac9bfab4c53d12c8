/** Words for a paper that cannot be printed. */
import type { ProblemTexts } from './problems.ts';

/** What a paper about one thing is about, and whose entry has its id. */
const wanted: Readonly<Record<string, string>> = {
  charge: 'a charge that was not struck or taken apart again',
  melt: 'a melt that was not struck',
  bar: 'a bar (the melt’s id, a stroke, the bar’s row)',
  transfer: 'a transfer that was not struck',
  parcel: 'a parcel of the register',
  incident: 'an incident or a spill that was not struck',
  air: 'a reading of the air at a place, or a charge of a run',
  'personal-air':
    'a person with readings of the air at mouth and nose, or one such reading (a reading at a place is on the air record)',
  'open-day': 'an open day that was not struck',
  vessel: 'a container of the register',
  label: 'a lot in the safe or a vessel of the register (or “lots”, “vessels” for all of them)',
  form: 'a kind of entry that is written by hand, as it is named on disk (clean-up, firing)',
};

export const paperProblems: ProblemTexts = {
  'paper-no-id': (d) => `A ${d.paper} is about one thing: say which by its id.`,
  'paper-takes-no-id': (d) => `A ${d.paper} is about the whole book over a period, not about one thing: leave the id out.`,
  'paper-takes-no-period': (d) => `A ${d.paper} is about one thing and not about a period: leave this day out.`,
  'paper-no-such-run': (d) =>
    `No run here has a charge with the id “${d.id}”; a struck charge has no run either. Take the id from the charge’s own entry in the daybook, or look whether it was written at another desk.`,
  'paper-no-such': (d) =>
    `This paper wants the id of ${wanted[String(d.wanted)] ?? d.wanted}, and “${d.id}” is none here. Take the id from its own entry in the daybook, or look whether it was written at another desk.`,
  'paper-personal-air': () =>
    'A reading at a person goes on no record of a place or run: it is on the personal air record, which the safety officer prints. Print the record of a place instead, or that one.',
  'paper-not-understood': (d) =>
    `A newer program wrote an entry of the kind “${d.kind}” (${d.entry}) about what this paper tells, which this one cannot read: print the paper with that program.`,
  'paper-stopped': () => 'Printing was stopped, and no file was made. The record is as it was.',
  'paper-job-taken': () => 'A paper is being printed under this name already: wait for it, or ask again under another name.',
  'paper-failed': (d) =>
    `The paper could not be drawn (${d.detail}), and nothing was printed. The record is as it was: try again, and report it if it happens twice.`,
};
