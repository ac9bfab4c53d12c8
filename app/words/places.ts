/**
 * Places of the account in words: where mercury is, and the ways it was lost. What is not accounted for is called that and nothing else: no account
 * can tell what became of it.
 */
import type { Book } from '../core/book/book.ts';
import { stocksAt } from '../core/book/movements/gathering.ts';
import { circuitPlace, isStock, type LossPath, placeParts, vesselPlace } from '../core/book/places.ts';
import { latest, nameOf, type Registered, stateAt } from '../core/book/registers.ts';
import type { Run } from '../core/book/runs.ts';
import { type CircuitPart, circuitParts } from '../core/kinds/mercury.ts';
import { dayText } from './dates.ts';

/** Said where an id leads nowhere in this book: it may be on another desk. */
export const notHere = 'something that is not in the book here';

type NameOf<T extends string> = Readonly<Record<T, string>>;

const circuitTexts: NameOf<CircuitPart> = {
  plates: 'plates (in circuit)',
  mortar: 'mortar box (in circuit)',
  pan: 'pan (in circuit)',
  trap: 'traps (in circuit)',
};

/** Ways of losing mercury, as the account names them. */
export const pathTexts: NameOf<LossPath> = {
  tailings: 'lost in tailings',
  retort: 'lost at the retort',
  melt: 'lost at the melt',
  spill: 'spilled and not gathered up',
  handling: 'lost in handling',
  'sent-away': 'sent away and counted as a loss',
  unaccounted: 'difference found by a count',
};

const residueTexts: Readonly<Record<string, string>> = { skimmings: 'skimmings', iron: 'magnet iron' };

const dayOfEntry = (book: Book, id: string): string | null => {
  const reading = book.current.byId.get(id);
  return reading ? dayText(reading.happened) : null;
};

/** What a thing of a register was called at that moment; without one, what it is called by its last statement. */
function called(book: Book, kind: 'vessel' | 'retort', id: string, at?: string): string {
  const thing = book.registers[kind].get(id) as Registered<'vessel' | 'retort'> | undefined;
  return thing ? nameOf((at === undefined ? latest(thing) : stateAt(thing, at)).body) : notHere;
}

const indexes = new WeakMap<Book, ReadonlyMap<string, Run>>();

/** The run of every charge, worked out once for a book. */
function runsByCharge(book: Book): ReadonlyMap<string, Run> {
  const known = indexes.get(book);
  if (known) return known;
  const index = new Map(book.runs.flatMap((run) => run.charges.map((charge) => [charge.id, run] as const)));
  indexes.set(book, index);
  return index;
}

/** "charge in Pot retort of 14 March 2026"; charges caught together are said to be. */
function chargeText(book: Book, id: string): string {
  const charge = book.charges.all.get(id);
  if (!charge) return 'charge that is not in the book here';
  const { happened } = charge.reading;
  const run = runsByCharge(book).get(id);
  const text = `charge in ${called(book, 'retort', charge.retort, happened)} of ${dayText(happened)}`;
  return run?.together ? `${text} and those caught with it` : text;
}

/** What a person reads for a place. A name that is no place of this book is shown as it stands. */
export function placeText(book: Book, place: string): string {
  const { kind, of } = placeParts(place);
  const [entry = '', key = ''] = of.split('/');
  switch (kind) {
    case 'outside':
      return 'outside this book';
    case 'found':
      return 'found, on no book before';
    case 'vessel':
      return called(book, 'vessel', of);
    case 'circuit':
      return Object.hasOwn(circuitTexts, of) ? circuitTexts[of as CircuitPart] : place;
    case 'lot':
      return book.lots.all.get(of)?.label ?? notHere;
    case 'charge':
      return chargeText(book, of);
    case 'sponge':
      return `sponge of the ${chargeText(book, of)}`;
    case 'residue':
      return `${residueTexts[key] ?? 'residue'} of the cleaning of ${dayOfEntry(book, entry) ?? notHere}`;
    case 'work':
      return `in the ${book.current.byId.get(of)?.kind === 'squeeze' ? 'squeezing' : 'cleaning'} of ${dayOfEntry(book, of) ?? notHere}`;
    case 'condenser':
      return `condenser and pipe of ${called(book, 'retort', of)}`;
    case 'loss':
      return Object.hasOwn(pathTexts, of) ? pathTexts[of as LossPath] : place;
    default:
      return place;
  }
}

/** Places that a stock-take can be asked about: every vessel, the circuit, and whatever else holds something by the book. In that order. */
export function placesToCount(book: Book): readonly { readonly place: string; readonly text: string }[] {
  const held = [...stocksAt(book.movements.all, null)].filter(([place, { ug }]) => isStock(place) && Math.round(ug) !== 0);
  const vessels = [...book.registers.vessel.keys()].map(vesselPlace);
  const places = new Set([...vessels, ...circuitParts.map(circuitPlace), ...held.map(([place]) => place)]);
  return [...places].map((place) => ({ place, text: placeText(book, place) }));
}

/** Names of places for lists and files, each its own: where two places read alike, the place itself is added. */
export function placeNames(book: Book, places: Iterable<string>): ReadonlyMap<string, string> {
  const texts = new Map([...new Set(places)].map((place) => [place, placeText(book, place)]));
  const uses = new Map<string, number>();
  for (const text of texts.values()) uses.set(text, (uses.get(text) ?? 0) + 1);
  return new Map([...texts].map(([place, text]) => [place, uses.get(text) === 1 ? text : `${text} [${place}]`]));
}
