/** The addresses within the room Air: `#/air` for the overview, `#/air/day/2025-06-14` for a day, `#/air/plan/opening` for a planning page. */
import { roomHref } from '../shared/places.ts';

const room = roomHref('air');

/** The planning pages, in their order. */
export const planKeys = ['vapour', 'room', 'opening', 'hood', 'mixture'] as const;
export type PlanKey = (typeof planKeys)[number];

/** A planning page, or all of them. */
export const planHref = (key?: PlanKey): string => (key === undefined ? `${room}/plan` : `${room}/plan/${key}`);

/** What to do at a spill. */
export const spillHref = `${room}/spill`;
/** Visitors and open days. */
export const visitorsHref = `${room}/visitors`;

/** The form of a reading. */
export const readingHref = `${room}/reading`;
/** A meter's own table. */
export const meterHref = `${room}/meter`;

/** The page of a working day, by its key. */
export const dayHref = (key: string): string => `${room}/day/${encodeURIComponent(key)}`;
