/** What a movement in or out of a container was, in one line: the work, with whom, and under which papers, seals and codes. */
import type { Book } from '../../core/book/book.ts';
import type { Movement } from '../../core/book/movements/gathering.ts';
import { outside } from '../../core/book/places.ts';
import type { Body } from '../../core/kinds/index.ts';
import { dayText } from '../../words/dates.ts';
import { kindName } from '../../words/daybook-naming.ts';
import { registerPaper as words } from '../../words/papers-register.ts';
import { placeText } from '../../words/places.ts';

type Said = readonly (string | undefined | false)[];

const mass = (weight: NonNullable<Body<'transfer'>['theirs']>['weight']): string =>
  weight.how === 'scale' ? weight.gross : weight.how === 'stated' ? weight.mass : weight.volume;

function receipt(body: Body<'receipt'>): Said {
  return [
    words.ways[body.way],
    body.from !== undefined && words.from(body.from),
    body.document !== undefined && words.document(body.document),
    body.seal !== undefined && words.underSeal(body.seal),
  ];
}

function transfer(body: Body<'transfer'>): Said {
  return [
    body.way === 'in' ? words.from(body.party) : words.to(body.party),
    body.purpose !== undefined && words.purpose(body.purpose),
    body.document !== undefined && words.document(body.document),
    body.seal !== undefined && words.underSeal(body.seal),
    body.carrier !== undefined && words.carrier(body.carrier),
    body.theirs !== undefined && words.theirs(mass(body.theirs.weight), dayText(body.theirs.on)),
    body.note,
  ];
}

const waste = (body: Body<'waste'>): Said => [
  body.what,
  body.code !== undefined && words.code(body.code),
  body.started !== undefined && words.started(dayText(body.started)),
  body.due !== undefined && words.due(dayText(body.due)),
  body.note,
];

function more(book: Book, movement: Movement, place: string): Said {
  const reading = book.current.byId.get(movement.entry);
  const other = placeText(book, movement.to === place ? movement.from : movement.to);
  const way = movement.to === place ? words.from(other) : words.to(other);
  switch (reading?.kind) {
    case 'receipt':
      return receipt(reading.body as Body<'receipt'>);
    case 'transfer':
      return transfer(reading.body as Body<'transfer'>);
    case 'waste':
      return waste(reading.body as Body<'waste'>);
    case 'stock-take':
      return [movement.from === outside ? words.firstCount : words.counted];
    case 'found':
      return [(reading.body as Body<'found'>).where];
    case 'spill':
      return [(reading.body as Body<'spill'>).where, movement.to === place ? words.gatheredUp : words.ranOut];
    case 'return':
      return [way, (reading.body as Body<'return'>).how];
    default:
      return [way];
  }
}

/** "Transfer: to Refiner, document D 7, seal 118". */
export function whatText(book: Book, movement: Movement, place: string): string {
  const kind = kindName(book.current.byId.get(movement.entry)?.kind ?? '');
  const said = more(book, movement, place).filter((text): text is string => typeof text === 'string' && text !== '');
  return said.length === 0 ? kind : `${kind}: ${said.join(', ')}`;
}
