/** What the things that an entry names are called: by their register as it stood on that day, a lot by its label, an entry by its kind and day. */

import { barPieces } from '../core/book/bar-pieces.ts';
import type { Book } from '../core/book/book.ts';
import { nameOf, type Registered, stateAt } from '../core/book/registers.ts';
import { type Body, isKind, type RegisterKind, registerKinds } from '../core/kinds/index.ts';
import { dayText } from './dates.ts';
import type { Named } from './daybook-shapes.ts';
import { kindNames } from './labels.ts';
import { notHere, placeText } from './places.ts';

export { notHere };

const isRegister = (to: Named): to is RegisterKind => registerKinds.some((k) => k === to);

/** The name of a thing at that moment. */
export function nameIn(book: Book, to: Named, id: string, at: string): string {
  if (isRegister(to)) {
    const thing = book.registers[to].get(id) as Registered<RegisterKind> | undefined;
    return thing ? nameOf(stateAt(thing, at).body) : notHere;
  }
  if (to === 'lot') return book.lots.all.get(id)?.label ?? notHere;
  if (to === 'bar') return barPieces(book.current).get(id)?.label ?? notHere;
  if (to === 'place') return placeText(book, id);
  return entryName(book, id);
}

/** The kind of an entry in words; the bare name of a kind nobody here knows. */
export const kindName = (kind: string): string => (isKind(kind) ? kindNames[kind] : kind);

/** "Charge of 14 March 2026, Pot retort": short enough to stand in another sentence. */
export function entryName(book: Book, id: string): string {
  const reading = book.current.byId.get(id);
  if (!reading) {
    const other = book.current.notUnderstood.find((e) => e.id === id);
    return other ? `${kindName(other.kind)} of ${dayText(other.happened)}` : notHere;
  }
  const of = `${kindNames[reading.kind]} of ${dayText(reading.happened)}`;
  const at = reading.happened;
  if (isRegister(reading.kind as Named)) return `${of}, ${nameOf(reading.body as Body<RegisterKind>)}`;
  switch (reading.kind) {
    case 'charge':
      return `${of}, ${nameIn(book, 'retort', (reading.body as Body<'charge'>).retort, at)}`;
    case 'clean-up': {
      const { where } = reading.body as Body<'clean-up'>;
      return where === undefined ? of : `${of}, ${where}`;
    }
    case 'assay': {
      const { bar, laboratory } = reading.body as Body<'assay'>;
      const what = bar === undefined ? '' : `, ${nameIn(book, 'bar', bar, at)}`;
      return `${of}${what}${laboratory === undefined ? '' : `, ${laboratory}`}`;
    }
    case 'settlement':
    case 'bar-kept':
      return `${of}, ${nameIn(book, 'bar', (reading.body as Body<'settlement' | 'bar-kept'>).bar, at)}`;
    case 'transfer':
      return `${of}, ${(reading.body as Body<'transfer'>).party}`;
    case 'crushing':
      return `${of}, ${nameIn(book, 'battery', (reading.body as Body<'crushing'>).battery, at)}`;
    case 'plate-work':
      return `${of}, ${nameIn(book, 'plate', (reading.body as Body<'plate-work'>).plate, at)}`;
    default:
      return of;
  }
}

/** Who wrote an entry down, or null where nobody was named. */
export const writerOf = (book: Book, by: string | null, at: string): string | null =>
  by === null ? null : nameIn(book, 'person', by, at);
