/** The pages of the room Mercury in the order they are wanted: the answer, what it rests on, what is done about it, what else hangs on it. */
import { kindNames } from '../../words/labels.ts';
import { outOfStepWords } from '../../words/out-of-step.ts';
import { closingPage } from '../../words/screens-closing.ts';
import { mercuryRoom } from '../../words/screens-mercury.ts';
import { sequenceWords } from '../../words/sequence.ts';
import { roomHref } from '../shared/places.ts';
import { accountHref, movementsHref, type Shown, stocksHref, yieldsHref } from './address.ts';
import { closeHref } from './closing/href.ts';
import { outOfStepHref, outOfStepKey } from './out-of-step/href.ts';
import { sequenceHref } from './sequence/href.ts';
import { stockTakeHref } from './stock-take/href.ts';

const { rooms: words } = mercuryRoom;

export type RoomPage = keyof typeof words;

export const pagesOfRoom: readonly {
  readonly key: RoomPage;
  readonly href: string;
  readonly name: string;
  /** A shorter name for the line at the head of a page. */
  readonly short?: string;
  readonly says: string;
}[] = [
  { key: 'room', href: roomHref('mercury'), ...words.room },
  { key: 'account', href: accountHref, ...words.account },
  { key: 'stocks', href: stocksHref, ...words.stocks },
  { key: 'count', href: stockTakeHref, name: kindNames['stock-take'], ...words.count },
  { key: 'close', href: closeHref(), name: closingPage.link, ...words.close },
  { key: 'step', href: outOfStepHref, name: outOfStepWords.title, ...words.step },
  { key: 'periods', href: sequenceHref, name: sequenceWords.link, short: sequenceWords.title, ...words.periods },
  { key: 'movements', href: movementsHref(), name: mercuryRoom.movementsAll, short: mercuryRoom.movements, ...words.movements },
  { key: 'yields', href: yieldsHref, name: mercuryRoom.yields, short: mercuryRoom.yieldsShort, ...words.yields },
];

const byPart: ReadonlyMap<string, RoomPage> = new Map([
  ['stock-take', 'count'],
  ['close', 'close'],
  [outOfStepKey, 'step'],
  ['periods', 'periods'],
]);

/** Which page the parts of an address after the room show. */
export const pageOf = (rest: readonly string[], shown: Shown): RoomPage => byPart.get(rest[0] ?? '') ?? shown.page;
