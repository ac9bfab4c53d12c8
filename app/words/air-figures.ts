/** Concentrations and limits as they stand in sentences. */
import type { Body } from '../core/kinds/index.ts';
import { airUnitSigns, limitBasisNames, limitPeopleNames, limitStatusNames } from './daybook-names-air.ts';
import { marked } from './notation.ts';

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);

/** A reading exactly as the meter showed it: "< 0.003 mg/m³". */
export function shownText({ shows, unit }: Pick<Body<'air-reading'>, 'shows' | 'unit'>): string {
  const mark = /^[<>]/.exec(shows)?.[0];
  return `${marked(mark === undefined ? shows : `${mark}\u00a0${shows.slice(1)}`)}\u00a0${airUnitSigns[unit]}`;
}

/** "0.025 mg/m³, mean over 8 hours, people at work; recommendation of a body (2012)". */
export const limitText = (l: Body<'limit'>): string =>
  `${marked(l.mgM3)}\u00a0mg/m³, ${small(limitBasisNames[l.basis])}, ${small(limitPeopleNames[l.people])}; ${l.body}${
    l.jurisdiction === undefined ? '' : `, ${l.jurisdiction}`
  }: ${l.status === undefined ? 'how binding is not recorded' : small(limitStatusNames[l.status])}${l.edition === undefined ? '' : ` (${l.edition})`}`;
