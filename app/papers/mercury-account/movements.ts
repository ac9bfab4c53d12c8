/** The movements of the period, summed by the kind of entry that wrote them and the kinds of place between which they ran. */
import type { Content } from 'pdfmake/interfaces';
import type { Period } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import type { Movement } from '../../core/book/movements/gathering.ts';
import { inPeriod } from '../../core/book/period.ts';
import { type LossPath, placeParts } from '../../core/book/places.ts';
import { total } from '../../core/measured.ts';
import { kindName } from '../../words/daybook-naming.ts';
import { placeKindTexts, accountPaper as words } from '../../words/papers-account.ts';
import { pathTexts } from '../../words/places.ts';
import { ugText, uText } from '../amounts.ts';
import { aside, ledger, section, sentence } from '../ledger.ts';

function kindText(place: string): string {
  const { kind, of } = placeParts(place);
  return kind === 'loss' ? pathTexts[of as LossPath] : placeKindTexts[kind];
}

/** Movements inside the period. */
export const movedIn = (movements: readonly Movement[], period: Period): Movement[] =>
  movements.filter(({ at }) => inPeriod(at, period));

export function movementsOf(book: Book, period: Period): Content[] {
  const groups = new Map<string, { readonly cells: readonly string[]; readonly moved: Movement[] }>();
  for (const movement of movedIn(book.movements.all, period)) {
    const kind = book.current.byId.get(movement.entry)?.kind ?? '';
    const cells = [kindName(kind), kindText(movement.from), kindText(movement.to)];
    const key = cells.join('\n');
    const group = groups.get(key) ?? { cells, moved: [] };
    group.moved.push(movement);
    groups.set(key, group);
  }
  if (groups.size === 0) return [section(words.movements), sentence(words.noMovements)];
  const ordered = [...groups].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, group]) => group);
  return [
    section(words.movements),
    aside(words.movementsNote),
    ...ledger(
      [
        { head: words.written, share: 18 },
        { head: words.from, share: 22 },
        { head: words.to, share: 22 },
        { head: words.times, share: 8, amount: true },
        { head: words.grams, share: 15, amount: true },
        { head: words.U, share: 15, amount: true },
      ],
      ordered.map(({ cells, moved }) => {
        const sum = total(moved.map(({ mercury }) => mercury));
        return { cells: [...cells, String(moved.length), ugText(sum.ug, 2), uText(sum, true)] };
      }),
    ),
  ];
}
