/**
 * Oddities of the record itself: a clock set back between two lines of one desk, something said to have happened after it was written, one id on two
 * different lines, corrections whose entry is not here, kinds nobody here knows, and what the host told of the files (forks, torn and broken lines).
 */
import type { Entry } from '../../entry.ts';
import { compareMoments, dayOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { type Asked, type OutOfStep, ofEntry } from './item.ts';

function clocks(entries: readonly Entry[]): OutOfStep[] {
  const desks = new Map<string, Entry[]>();
  for (const e of entries) {
    const own = desks.get(e.desk);
    if (own) own.push(e);
    else desks.set(e.desk, [e]);
  }
  return [...desks.values()].flatMap((own) => {
    const inLine = own.toSorted((a, b) => a.n - b.n);
    return inLine.flatMap((e, i) => {
      const before = inLine[i - 1];
      return before && compareMoments(e.written, before.written) < 0
        ? [ofEntry('record', 'clock-back', e.id, e.written, { written: e.written, before: before.written, desk: e.desk, n: e.n })]
        : [];
    });
  });
}

/** Where only the day is known, only the day is held against the clock. */
const isLater = (happened: string, { written, timing }: Entry): boolean =>
  timing === 'day' ? dayOf(happened) > dayOf(written) : compareMoments(happened, written) > 0;

function sameIds(entries: readonly Entry[]): OutOfStep[] {
  const first = new Map<string, Entry>();
  const found: OutOfStep[] = [];
  for (const e of entries) {
    const before = first.get(e.id);
    if (!before) first.set(e.id, e);
    else if (before.hash !== e.hash)
      found.push(ofEntry('record', 'same-id', e.id, e.written, { desk: e.desk, n: e.n, other: before.desk, otherN: before.n }));
  }
  return found;
}

/** Of the window and not of the record: told elsewhere. */
const ofTheWindow: ReadonlySet<string> = new Set(['not-writable', 'elsewhere-open']);

export const recordOutOfStep = (book: Book, { notices = [] }: Asked): OutOfStep[] => [
  ...notices
    .filter(({ code }) => !ofTheWindow.has(code))
    .map(
      ({ code, desk = '', line = 0, detail = '' }): OutOfStep => ({
        code: 'notice',
        group: 'record',
        opens: null,
        since: '',
        data: { notice: code, desk, line, detail },
      }),
    ),
  ...sameIds(book.entries),
  ...clocks(book.entries),
  ...[...book.current.byId.values()].flatMap(({ id, happened, entry, struck }) =>
    !struck && isLater(happened, entry)
      ? [ofEntry('record', 'happened-later', id, entry.written, { happened, written: entry.written })]
      : [],
  ),
  ...book.current.adrift.map((e) => ofEntry('record', 'correction-adrift', e.id, e.written, { kind: e.kind })),
  ...book.current.notUnderstood.map((e) => ofEntry('record', 'not-understood', e.id, e.happened, { kind: e.kind })),
];
