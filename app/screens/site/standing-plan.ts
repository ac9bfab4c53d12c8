/** The sheet of the site's standing: two lists of answers as typed, and the body they make. */

import type { Body } from '../../core/kinds/index.ts';
import { doings, holdings } from '../../core/kinds/standing.ts';
import { textOr } from '../../daybook/form.svelte.ts';

export interface HeldValues {
  what: string;
  place: string;
  since: string;
  until: string;
}

export interface DoneValues extends HeldValues {
  name: string;
  number: string;
  expiry: string;
  noExpiry: string;
  covers: string;
}

export interface StandingValues {
  held: HeldValues[];
  done: DoneValues[];
  note: string;
}

export const heldChoices = holdings;
export const doneChoices = doings;

export const noHeld = (): HeldValues => ({ what: '', place: '', since: '', until: '' });
export const noDone = (): DoneValues => ({ ...noHeld(), name: '', number: '', expiry: '', noExpiry: '', covers: '' });
export const noStanding = (): StandingValues => ({ held: [noHeld()], done: [noDone()], note: '' });

export const standingValues = (body: Body<'standing'>): StandingValues => ({
  held: body.held.map((h) => ({ what: h.what, place: h.place ?? '', since: h.since ?? '', until: h.until ?? '' })),
  done: body.done.map((d) => ({
    what: d.what,
    place: d.place ?? '',
    since: d.since ?? '',
    until: d.until ?? '',
    name: d.authority?.name ?? '',
    number: d.authority?.number ?? '',
    expiry: d.authority === undefined || d.authority.expiry === 'none stated' ? '' : d.authority.expiry,
    noExpiry: d.authority === undefined ? '' : d.authority.expiry === 'none stated' ? 'none' : 'day',
    covers: d.authority?.covers ?? '',
  })),
  note: body.note ?? '',
});

const where = (v: HeldValues) => ({ place: textOr(v.place), since: textOr(v.since), until: textOr(v.until) });

export const standingBody = (v: StandingValues): Record<string, unknown> => ({
  held: v.held.map((h) => ({ what: textOr(h.what), ...where(h) })),
  done: v.done.map((d) => ({
    what: textOr(d.what),
    ...where(d),
    authority:
      d.what === 'authority'
        ? {
            name: textOr(d.name),
            number: textOr(d.number),
            expiry: d.noExpiry === 'none' ? 'none stated' : textOr(d.expiry),
            covers: textOr(d.covers),
          }
        : undefined,
  })),
  note: textOr(v.note),
});
