/**
 * What a stock-take may not say: a place that is none, a place twice, an answer that cannot be given there, a seal number that another vessel bears
 * or bore, a seal that is not the one on the book; and, where it says that it counts the whole, a place left out. A place that could not be counted
 * or was not found is an answer, and is kept.
 */
import type { Body } from '../../kinds/index.ts';
import { circuitParts } from '../../kinds/mercury.ts';
import type { CountLine } from '../../kinds/stock-take.ts';
import { countListOf, countWays, labelOfPlace } from '../count-list.ts';
import { placeParts, vesselPlace } from '../places.ts';
import { bearerOf, sameSeal, sealAt } from '../seals.ts';
import type { Asking } from './asking.ts';

/** The place is one that can be counted, and is known. */
function placeKnown(place: string, field: string, asking: Asking): boolean {
  const { kind, of } = placeParts(place);
  const before = asking.problems.length;
  const { book } = asking;
  switch (kind) {
    case 'vessel':
      asking.known(of, 'vessel', field);
      break;
    case 'condenser':
      asking.known(of, 'retort', field);
      break;
    case 'lot':
      if (!book.lots.all.has(of)) asking.refuse('unknown-id', field, { id: of, wanted: 'lot' });
      break;
    case 'circuit':
      if (!circuitParts.some((part) => part === of)) asking.refuse('count-no-place', field, { place });
      break;
    case 'charge':
    case 'sponge':
      asking.known(of, 'charge', field);
      break;
    case 'residue':
    case 'work':
      if (!book.current.byId.has(of.split('/')[0] ?? '')) asking.refuse('unknown-id', field, { id: of, wanted: 'entry' });
      break;
    default:
      asking.refuse('count-no-place', field, { place });
  }
  return asking.problems.length === before;
}

const sealOf = (line: CountLine): string | undefined =>
  line.how === 'sealed' ? line.seal : line.how === 'weighed' ? line.newSeal : undefined;

/** The seal read is the one on the book, and no other vessel bears it. */
function sealRead(line: CountLine, field: string, asking: Asking, happened: string): void {
  const seal = sealOf(line);
  const { kind, of } = placeParts(line.place);
  if (seal === undefined) return;
  const vessel = kind === 'vessel' ? of : null;
  const booked = vessel === null ? null : sealAt(asking.book, vessel, happened, asking.instead);
  const stands = line.how === 'sealed' && booked !== null && sameSeal(booked, seal);
  // a new seal may bear no number that was used before, on this vessel either
  const other = stands
    ? bearerOf(asking.book, seal, { vessel, entry: asking.instead })
    : bearerOf(asking.book, seal, { vessel: line.how === 'sealed' ? vessel : null, entry: asking.instead });
  if (other !== undefined)
    asking.refuse('seal-reused', field, { seal, other: labelOfPlace(asking.book, vesselPlace(other), happened) });
  else if (line.how === 'sealed' && booked === null)
    asking.refuse('seal-not-booked', field, { seal, name: labelOfPlace(asking.book, line.place, happened) });
  else if (line.how === 'sealed' && !stands)
    asking.refuse('seal-differs', field, {
      read: seal,
      booked: booked ?? '',
      name: labelOfPlace(asking.book, line.place, happened),
    });
}

export function stockTakeRules(body: Body<'stock-take'>, asking: Asking, happened: string): void {
  const places = new Set<string>();
  const seals: { seal: string; place: string }[] = [];
  for (const [i, line] of body.lines.entries()) {
    const at = `body.lines[${i}]`;
    const name = labelOfPlace(asking.book, line.place, happened);
    if (places.has(line.place)) asking.refuse('place-twice', `${at}.place`, { place: line.place });
    places.add(line.place);
    if (line.how === 'weighed') asking.weight(line.weight, `${at}.weight`);
    if (!placeKnown(line.place, `${at}.place`, asking)) continue;
    // an open vessel answered by a seal is told of its seal, not of its ways
    const bySeal = line.how === 'sealed' && placeParts(line.place).kind === 'vessel';
    if (!bySeal && !countWays(asking.book, line.place, happened, asking.instead).includes(line.how))
      asking.refuse('count-way', `${at}.how`, { how: line.how, name });
    const seal = sealOf(line);
    if (seal === undefined) continue;
    const field = `${at}.${line.how === 'sealed' ? 'seal' : 'newSeal'}`;
    const twin = seals.find((s) => sameSeal(s.seal, seal));
    if (twin) asking.refuse('seal-reused', field, { seal, other: labelOfPlace(asking.book, twin.place, happened) });
    else sealRead(line, field, asking, happened);
    seals.push({ seal, place: line.place });
  }
  if (body.scope !== 'whole') return;
  for (const { place } of countListOf(asking.book, happened, asking.instead)) {
    if (places.has(place)) continue;
    const { kind } = placeParts(place);
    asking.refuse('count-left-out', 'body.lines', { place, kind, name: labelOfPlace(asking.book, place, happened) });
  }
}
