/**
 * Who may see what is not for everybody: where a bar is kept, and what a person breathed. It goes by what the writer does at the site, as the register
 * of people has it, and by nothing else. It hides from view in the window and keeps out of papers and exports; it is no lock: whoever holds the folder can
 * read the journal, and the words beside a hidden thing must say so. Source: practice.md 1 (16 to 19); design.md 1.
 */
import type { Role } from '../kinds/person.ts';
import { compareMoments } from '../time.ts';
import type { Registers } from './registers.ts';

/** `bar-place`: where a bar is kept. `personal-air`: readings at a person, and days of health surveillance. */
export type Hidden = 'bar-place' | 'personal-air';

const seenBy: Readonly<Record<Hidden, ReadonlySet<Role>>> = {
  'bar-place': new Set(['keeper', 'assayer']),
  'personal-air': new Set(['safety-officer']),
};

/** Whether somebody who does these things at the site may see it. Without a role: no. */
export const maySee = (roles: readonly Role[], what: Hidden): boolean => roles.some((role) => seenBy[what].has(role));

/** What a person does at the site by their last statement up to that moment; nothing for a stranger and for one who has left by then. */
export function rolesAt(registers: Pick<Registers, 'person'>, person: string | null, moment: string): readonly Role[] {
  const states = person === null ? [] : (registers.person.get(person)?.states ?? []);
  const state = states.findLast(({ from }) => compareMoments(from, moment) <= 0);
  if (!state || (state.body.left !== undefined && state.body.left < moment.slice(0, 10))) return [];
  return state.body.roles;
}
