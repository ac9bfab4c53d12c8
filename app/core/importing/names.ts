/**
 * Names in a table as the ids they stand for: people, scales, vessels and the other registers by what they were called on that day, lots and bars by their
 * label, a charge by its day and retort. A name that fits two things is told, never chosen.
 */
import { barPieces } from '../book/bar-pieces.ts';
import type { Book } from '../book/book.ts';
import { usedUp } from '../book/lots.ts';
import { nameOf, type Registered, stateAt } from '../book/registers.ts';
import { type RegisterKind, registerKinds } from '../kinds/index.ts';
import { bad, good, problem, type Result } from '../result.ts';
import { dayOf } from '../time.ts';
import type { NamedThing } from './fields.ts';

const isRegister = (to: NamedThing): to is RegisterKind => registerKinds.some((kind) => kind === to);

interface Called {
  readonly id: string;
  readonly name: string;
}

/** Charges by their day, and by their day and retort. */
function charges(book: Book, name: string): string[] {
  return book.current.of('charge').flatMap(({ id, happened, body }) => {
    const retort = book.registers.retort.get(body.retort);
    const day = dayOf(happened);
    const called = retort ? nameOf(stateAt(retort, happened).body) : '';
    return name === day || name === `${day} ${called}` ? [id] : [];
  });
}

function called(book: Book, to: NamedThing, at: string): Called[] {
  if (isRegister(to))
    return [...(book.registers[to] as ReadonlyMap<string, Registered<RegisterKind>>).values()].map((thing) => ({
      id: thing.id,
      name: nameOf(stateAt(thing, at).body).trim(),
    }));
  if (to === 'lot') return [...book.lots.all.values()].map((lot) => ({ id: lot.id, name: lot.label.trim() }));
  if (to === 'bar') return [...barPieces(book.current).values()].map((bar) => ({ id: bar.id, name: bar.label.trim() }));
  return [];
}

/** Looks as ids look: it is taken for one where no thing bears it as a name. */
const likeAnId = /^[a-z0-9][a-z0-9-]{5,63}(\/[a-z0-9]{1,8})*$/;

/** The id a name stands for at that moment. Problems: import-unknown-name, import-two-names. */
export function idNamed(book: Book, to: NamedThing, name: string, at: string): Result<string> {
  const isId =
    book.current.byId.has(name) ||
    (to === 'lot' && book.lots.all.has(name)) ||
    (to === 'bar' && barPieces(book.current).has(name));
  if (isId) return good(name);
  if (to === 'charge') return one(charges(book, name), name, to);
  const all = called(book, to, at);
  const exact = all.filter((thing) => thing.name === name);
  const alike = exact.length > 0 ? exact : all.filter((thing) => thing.name.toLowerCase() === name.toLowerCase());
  const there = alike.map(({ id }) => id);
  if (to === 'lot' && there.length > 1) {
    // a label comes again once the lot that bore it is used up
    const inSafe = there.filter((id) => !usedUp.has(book.lots.all.get(id)?.fate ?? 'left'));
    if (inSafe.length === 1) return good(inSafe[0] as string);
  }
  return one(there, name, to);
}

function one(there: readonly string[], name: string, to: NamedThing): Result<string> {
  const [first] = there;
  if (first !== undefined && there.length === 1) return good(first);
  if (there.length > 1) return bad(problem('import-two-names', '', { read: name.slice(0, 60), count: there.length, wanted: to }));
  // an id that is not here is told by the book's own rules, with the field it stands in
  return likeAnId.test(name) && to === 'entry'
    ? good(name)
    : bad(problem('import-unknown-name', '', { read: name.slice(0, 60), wanted: to }));
}
