/**
 * Authorities to possess, melt or sell gold, as the site entered them. Where the site says that an act needs one, an act on a day when none of them ran is
 * kept and flagged. The program reads no law: where the site entered none, nothing is said. Source: design.md 2, 3.
 */
import type { Body } from '../kinds/index.ts';
import { dayOf } from '../time.ts';
import type { Current } from './current.ts';
import { type Flag, flag } from './flags.ts';
import { type Registers, stateAt } from './registers.ts';

export type GoldAct = NonNullable<Body<'authority'>['gold']>[number];

export interface GoldAuthority {
  readonly id: string;
  readonly body: Body<'authority'>;
  readonly runs: boolean;
}

/** Authorities for an act as they stood at that moment, with whether each ran then; none where the site entered none. */
export function goldAuthorities(registers: Registers, act: GoldAct, moment: string): readonly GoldAuthority[] {
  const day = dayOf(moment);
  return [...registers.authority.values()].flatMap((thing) => {
    const { body } = stateAt(thing, moment);
    const { gold = [] } = body;
    if (!gold.includes(act)) return [];
    const begun = body.from === undefined || body.from <= day;
    const ended = (body.expiry !== 'none stated' && body.expiry < day) || (body.out !== undefined && body.out < day);
    return [{ id: thing.id, body, runs: begun && !ended }];
  });
}

/** Bars sent away, and metal melted, on a day when no authority for it ran. */
export function authorityFlags({ current, registers }: { readonly current: Current; readonly registers: Registers }): Flag[] {
  const lapsed = (act: GoldAct, moment: string, entry: string): Flag[] => {
    const all = goldAuthorities(registers, act, moment);
    const last = all.at(-1);
    if (!last || all.some(({ runs }) => runs)) return [];
    return [
      flag('authority-not-running', entry, { act, name: last.body.name, number: last.body.number, expiry: last.body.expiry }),
    ];
  };
  return [
    ...current.of('melt').flatMap((r) => lapsed('melt', r.happened, r.id)),
    ...current
      .of('transfer')
      .flatMap((r) => (r.body.way === 'out' && r.body.what === 'bar' ? lapsed('sell', r.happened, r.id) : [])),
  ];
}
