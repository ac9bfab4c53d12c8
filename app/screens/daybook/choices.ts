/** What can be named in a correction, with names; what is named already stays in the list, whatever has become of it. */

import { barPieces } from '../../core/book/bar-pieces.ts';
import type { Book } from '../../core/book/book.ts';
import { latest, nameOf, type Registered } from '../../core/book/registers.ts';
import { type RegisterKind, registerKinds } from '../../core/kinds/index.ts';
import { nameIn } from '../../words/daybook-naming.ts';
import type { Named } from '../../words/daybook-shapes.ts';
import { placesToCount } from '../../words/places.ts';

interface NamedChoice {
  readonly value: string;
  readonly label: string;
}

/** The longest list of entries offered: the newest, enough to find the one that was meant. */
const most = 200;

function candidates(book: Book, to: Named): readonly NamedChoice[] {
  const register = registerKinds.find((kind) => kind === to);
  if (register)
    return [...(book.registers[register].values() as Iterable<Registered<RegisterKind>>)].map((thing) => ({
      value: thing.id,
      label: nameOf(latest(thing).body),
    }));
  if (to === 'lot')
    return [...book.lots.all.values()]
      .filter((lot) => lot.fate === 'in-safe')
      .map((lot) => ({ value: lot.id, label: lot.label }));
  if (to === 'bar')
    return [...barPieces(book.current).values()]
      .slice(-most)
      .toReversed()
      .map(({ id, label }) => ({ value: id, label }));
  if (to === 'place') return placesToCount(book).map(({ place, text }) => ({ value: place, label: text }));
  const ids =
    to === 'charge'
      ? [...book.charges.all.keys()]
      : to === 'assay' || to === 'transfer' || to === 'melt'
        ? book.current.of(to).map((r) => r.id)
        : [...book.current.byId.keys()];
  return ids
    .slice(-most)
    .toReversed()
    .map((id) => ({ value: id, label: nameIn(book, to, id, '') }));
}

/** The choices for a field that names such a thing. */
export function choicesOf(book: Book, to: Named, present: readonly string[]): NamedChoice[] {
  const offered = candidates(book, to);
  const kept = present.filter((id) => id !== '' && !offered.some((c) => c.value === id));
  return [...kept.map((id) => ({ value: id, label: nameIn(book, to, id, '') })), ...offered];
}
