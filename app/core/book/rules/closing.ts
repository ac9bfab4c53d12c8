/** When a period cannot be closed as asked. A closing rests on two counts of the whole site and on end marks of this very book. */
import type { Body } from '../../kinds/index.ts';
import { compareMoments, dayOf } from '../../time.ts';
import { closingsOf, everyClosing, overlap, periodBetween } from '../closings.ts';
import { wholeCounts } from '../periods.ts';
import type { Asking } from './asking.ts';

/** The stock-take is here, stands, and counted the whole site. */
function counted(id: string | undefined, field: string, asking: Asking): void {
  if (id === undefined) return;
  const reading = asking.book.current.byId.get(id);
  if (reading?.kind !== 'stock-take') asking.refuse('unknown-id', field, { id, wanted: 'stock-take' });
  else if (!wholeCounts(asking.book).some((count) => count.id === id)) asking.refuse('closing-no-count', field);
}

/** Every end mark is one of this book, each desk has one, and they reach as far as the stock-takes. */
function marks({ ends, opening, closing }: Body<'closing'>, asking: Asking): void {
  const { entries, current } = asking.book;
  const upTo = new Map<string, number>();
  for (const [i, { desk, entries: n, endMark }] of ends.entries()) {
    const field = `body.ends[${i}].endMark`;
    if (upTo.has(desk)) asking.refuse('mark-twice', field, { desk });
    upTo.set(desk, n);
    if (!entries.some((e) => e.desk === desk && e.n === n && e.hash === endMark))
      asking.refuse('mark-unknown', field, { desk, entries: n });
  }
  for (const id of [opening, closing]) {
    const entry = id === undefined ? undefined : current.byId.get(id)?.entry;
    if (entry && entry.n > (upTo.get(entry.desk) ?? 0)) asking.refuse('mark-too-early', 'body.ends', { desk: entry.desk });
  }
}

/** The version follows the one it replaces; a first one replaces nothing. */
function version({ version: n, replaces, note }: Body<'closing'>, asking: Asking): void {
  const { book } = asking;
  if (replaces === undefined) {
    if (n !== 1) asking.refuse('closing-version', 'body.version', { version: n, wanted: 1 });
    return;
  }
  const before = everyClosing(book).find((c) => c.id === replaces);
  if (!before) asking.refuse('unknown-id', 'body.replaces', { id: replaces, wanted: 'closing' });
  else if (!closingsOf(book).some((c) => c.id === replaces)) asking.refuse('closing-replaced', 'body.replaces');
  else if (n !== before.body.version + 1)
    asking.refuse('closing-version', 'body.version', { version: n, wanted: before.body.version + 1 });
  if (note === undefined) asking.refuse('closing-why', 'body.note');
}

export function closingRules(body: Body<'closing'>, asking: Asking): void {
  const { book } = asking;
  if (asking.instead !== null) {
    asking.refuse('closing-corrected', 'body.corrects');
    return;
  }
  const before = asking.problems.length;
  counted(body.opening, 'body.opening', asking);
  counted(body.closing, 'body.closing', asking);
  const known = asking.problems.length === before;
  version(body, asking);
  marks(body, asking);
  const period = known ? periodBetween(book, body) : null;
  if (!period) return;
  if (period.from !== null && compareMoments(period.from, period.to ?? '') >= 0) {
    asking.refuse('closing-reversed', 'body.opening');
    return;
  }
  const other = closingsOf(book).find((c) => c.id !== body.replaces && overlap(c.period, period));
  if (other) asking.refuse('closing-overlaps', 'body.closing', { to: dayOf(other.to), version: other.body.version });
}
