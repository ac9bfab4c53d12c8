/**
 * Places that mercury is in, or is lost by. A place is text, `kind:what`, so that every list, drawing and export names it the same way; what a
 * person reads is in app/words/places.ts.
 */
import type { CircuitPart } from '../kinds/mercury.ts';

/** Outside the site's book: suppliers, receivers, and what was there before the book began. */
export const outside = 'outside';
/** Mercury that turned up and was on no book. */
export const foundPlace = 'found';

/** Ways mercury is lost. `spill` is a loss that was weighed; the others come out of differences. */
export const lossPaths = ['tailings', 'retort', 'melt', 'spill', 'handling', 'sent-away', 'unaccounted'] as const;
export type LossPath = (typeof lossPaths)[number];

export const vesselPlace = (id: string): string => `vessel:${id}`;
export const circuitPlace = (part: CircuitPart): string => `circuit:${part}`;
export const lotPlace = (id: string): string => `lot:${id}`;
export const chargePlace = (id: string): string => `charge:${id}`;
export const spongePlace = (id: string): string => `sponge:${id}`;
export const residuePlace = (id: string): string => `residue:${id}`;
export const workPlace = (id: string): string => `work:${id}`;
export const condenserPlace = (retort: string): string => `condenser:${retort}`;
export const lossPlace = (path: LossPath): string => `loss:${path}`;

export const placeKinds = ['vessel', 'circuit', 'lot', 'charge', 'sponge', 'residue', 'work', 'condenser', 'loss'] as const;
export type PlaceKind = (typeof placeKinds)[number] | 'outside' | 'found';

/** The kind of a place, and what it is of. */
export function placeParts(place: string): { readonly kind: PlaceKind; readonly of: string } {
  const at = place.indexOf(':');
  return at < 0 ? { kind: place as PlaceKind, of: '' } : { kind: place.slice(0, at) as PlaceKind, of: place.slice(at + 1) };
}

/** Whether the place holds stock: neither outside, nor a way of losing it. */
export const isStock = (place: string): boolean =>
  place !== outside && place !== foundPlace && !place.startsWith('loss:') && place !== 'loss';
