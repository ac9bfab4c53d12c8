/** Texts of the guided stock-take. They ask for what is seen; what the book says comes after the answer, and judges nobody. */

import type { CountGroup } from '../core/book/count-list.ts';
import type { CountWay } from '../core/kinds/stock-take.ts';
import { massHead } from './figures.ts';

type Of<T extends string, V = string> = Readonly<Record<T, V>>;

export const countGroupNames: Of<CountGroup> = {
  sealed: 'Sealed flasks',
  working: 'Working vessels',
  lots: 'Lots in the safe',
  'in-hand': 'In retorts and in hand',
  residues: 'Residues',
  drums: 'Waste drums',
  circuit: 'In circuit',
};

export const stockTake = {
  title: 'Stock-take',
  /** On Today, beside the list of all that can be written up. */
  link: 'Count the stock',
  note: 'Walk round with it: one place after the other, each answered before the book’s figure is shown.',
  back: 'Back to the account',
  print: 'Print the count sheet',
  scope: 'What is counted',
  scopes: { whole: 'The whole: every place', part: 'A part: only what is answered' },
  scopeHint: 'A whole count can begin or end a period of the account. It leaves no place out.',
  groupHints: {
    sealed: 'Read the number off the seal itself. An unbroken seal is not opened and not weighed.',
    working: 'Close it, weigh it, write what the scale shows.',
    lots: 'Find it by its label. Weigh it, or say that it is there and not touched.',
    'in-hand': 'A retort is not opened for a count: look that it stands as it was left.',
    residues: 'No scale shows the mercury in it: look that it is there, or estimate.',
    drums: 'A scale shows the whole drum, not its mercury: its seal, or an estimate with its method.',
    circuit: 'No scale reaches it: an estimate, with the method and how sure that method is.',
  } satisfies Of<CountGroup>,
  ways: {
    sealed: 'Seal whole, number read',
    weighed: 'Weighed',
    estimated: 'Estimated',
    seen: 'There, not touched',
    empty: 'Empty: looked into, nothing there',
    unanswered: 'Cannot be counted',
    'not-found': 'Not found',
  } satisfies Of<CountWay>,
  brokenWays: { weighed: 'Seal broken or opened: weighed', unanswered: 'Cannot be counted' },
  answer: 'Answer',
  progress: (done: number, of: number) => `${done} of ${of} answered`,
  placesList: 'Places',
  marks: { done: 'answered', begun: 'not complete', open: 'open' },
  seal: 'Seal number, as read',
  newSeal: 'New seal put on, if any',
  sealBroken: 'The seal was broken, changed or gone',
  weight: 'Mercury weighed',
  lotWeight: 'Ball or lot weighed',
  mass: 'Mercury, estimated',
  method: 'Method of estimating',
  methodHint:
    'By area, by thickness, drained and measured: name it the same way every time, so that its error is seen to be the same.',
  lastMethod: (method: string) => `Last time: ${method}`,
  takeMethod: 'Same method again',
  sharedU: 'Uncertainty of the method',
  sharedHint: 'The same for every estimate by it.',
  ownU: 'Uncertainty of this estimate alone',
  why: 'Because',
  whyHint: 'No scale large enough, under water, locked: it then stands as a reservation on the account.',
  notFoundNote: 'Where it was looked for',
  notFoundSays: 'All that is booked there will not be accounted for. Search first; tell the safety officer.',
  seenSays: 'The book’s amount is carried forward as it stands.',
  emptySays:
    'Counted as nothing, on sight. What clings to walls and joints is not seen: weigh or estimate it where that may matter.',
  previous: 'Back',
  next: 'Next place',
  toKeep: 'Every place is answered: read it through below, then keep it.',
  wrong: 'Places that cannot be kept as they stand',
  incomplete: 'This place is not completely answered yet.',
  comparedTitle: 'Book against count',
  comparedNote: 'Shown only for what is answered. U is for k = 2; z counts standard uncertainties.',
  place: 'Place',
  get bookG(): string {
    return massHead('By the book');
  },
  get countedG(): string {
    return massHead('Counted');
  },
  get differenceG(): string {
    return massHead('Difference');
  },
  get U(): string {
    return massHead('± U');
  },
  z: 'z',
  carried: 'carried forward',
  noneYet: 'No place is answered yet.',
  other: 'Something stands there that is not on this list?',
  found: 'Write up mercury or residues found',
  remark: 'Remark on the whole count',
  since: 'Places that came on the book since this count was begun',
  take: 'Ask about them too',
  spoken: (place: string, book: string, counted: string, difference: string, z: string) =>
    `${place}: ${book} by the book, ${counted} counted, difference ${difference}${z === '' ? '' : `, z ${z}`}.`,
  spokenNothing: (place: string, how: string, book: string) =>
    `${place}: ${how.charAt(0).toLowerCase()}${how.slice(1)}; ${book} by the book, carried forward.`,
  readBack: (whole: boolean, n: number, said: string) =>
    `${whole ? 'Whole count' : 'Count of a part'}, ${n} ${n === 1 ? 'place' : 'places'}: ${said}`,
} as const;
