/**
 * The mercury register: each container with its class and seal, every amount in and out with the balance after it, what a weighing found and the
 * reason noted for a difference; losses measured, estimated and unaccounted kept apart. What a register must show: safety.md 6.1.
 */
import type { Content } from 'pdfmake/interfaces';
import { accountOf, type Period } from '../core/book/account.ts';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { reservations } from '../core/book/flags.ts';
import { stocksAt } from '../core/book/movements/gathering.ts';
import { vesselPlace } from '../core/book/places.ts';
import { stateAt } from '../core/book/registers.ts';
import { total } from '../core/measured.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { commonWords } from '../words/papers-common.ts';
import { registerPaper as words } from '../words/papers-register.ts';
import { pathTexts } from '../words/places.ts';
import { ugText, uText } from './amounts.ts';
import { bookReservations, namedFlags, once, unknownU } from './doubts.ts';
import { aside, ledger, section, sentence } from './ledger.ts';
import { periodWords, unreadUpTo } from './mercury-account.ts';
import { containerPages, lastLook } from './mercury-register/container.ts';
import { thingName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { standingText } from './standing.ts';

function overview(book: Book, vessels: readonly string[], period: Period, end: string): Content[] {
  if (vessels.length === 0) return [section(words.containers), sentence(words.noContainers)];
  const stocks = stocksAt(book.movements.all, period.to);
  const held = (id: string) => stocks.get(vesselPlace(id)) ?? total([]);
  const sum = total(vessels.map(held));
  return [
    section(words.containers),
    aside(words.containersNote),
    ...ledger(
      [
        { head: words.container, share: 24 },
        { head: words.class, share: 12 },
        { head: words.seal, share: 16 },
        { head: words.byBook, share: 15, amount: true },
        { head: words.U, share: 13, amount: true },
        { head: words.lastWeighed, share: 20 },
      ],
      [
        ...vessels.map((id) => {
          const thing = book.registers.vessel.get(id);
          const body = thing ? stateAt(thing, end).body : undefined;
          const look = lastLook(book, id, period, end);
          return {
            cells: [
              thingName(book, 'vessel', id, end),
              words.classes[body?.mercury ?? 'unknown'],
              look.seal ?? words.noSeal,
              ugText(held(id).ug, 2),
              uText(held(id), true),
              look.on === null ? words.never : dayText(look.on),
            ],
          };
        }),
        ...(vessels.length > 1
          ? [{ cells: [words.total, '', '', ugText(sum.ug, 2), uText(sum, true), ''], sum: true, closing: true }]
          : []),
      ],
    ),
  ];
}

function losses(book: Book, period: Period): Content[] {
  const { paths, unaccounted } = accountOf(book, period);
  const posted = (path: string) => paths.find((p) => p.path === path)?.posted ?? total([]);
  const row = (text: string, ug: number, u: string) => ({ cells: [text, ugText(ug, 2), u] });
  const estimated = paths.filter(({ path }) => path !== 'spill' && path !== 'unaccounted');
  return [
    section(words.losses),
    aside(words.lossesNote),
    ...ledger(
      [
        { head: words.item, share: 64 },
        { head: words.grams, share: 18, amount: true },
        { head: words.U, share: 18, amount: true },
      ],
      [
        row(words.measured, posted('spill').ug, uText(posted('spill'), true)),
        ...estimated.map(({ path, posted: p }) => row(`${words.estimated} ${pathTexts[path]}`, p.ug, uText(p, true))),
        row(words.unaccounted, posted('unaccounted').ug, uText(posted('unaccounted'), true)),
        row(words.wholeAccount, unaccounted.ug, uText(unaccounted, true)),
      ],
    ),
  ];
}

/** Every reading that names one of these containers, struck ones apart. */
function naming(book: Book, vessels: readonly string[]): { standing: Reading[]; struck: Reading[] } {
  const marks = vessels.flatMap((id) => [`"${id}"`, `"${vesselPlace(id)}"`]);
  const all = [...book.current.byId.values()].filter((reading) => {
    if (reading.kind === 'correction' || reading.kind === 'strike' || reading.kind === 'note') return false;
    if (vessels.includes(reading.id)) return true;
    const text = JSON.stringify([reading.body, reading.entry.body]);
    return marks.some((mark) => text.includes(mark));
  });
  return { standing: all.filter(({ struck }) => !struck), struck: all.filter(({ struck }) => struck !== null) };
}

/**
 * The register of all containers, or of the one with this id, over a period. Problems: `paper-no-such` where no container has the id,
 * `paper-not-understood` where a newer program wrote something that may have moved mercury by then.
 */
export function mercuryRegister(book: Book, id: string | undefined, period: Period, frame: Frame): Result<Definition> {
  if (id !== undefined && !book.registers.vessel.has(id)) return bad(problem('paper-no-such', 'id', { wanted: 'vessel', id }));
  const unread = unreadUpTo(book, period);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const vessels = id === undefined ? [...book.registers.vessel.keys()] : [id];
  const { from, to, end } = periodWords(book, period);
  const { standing, struck } = naming(book, vessels);
  const flags = standing.flatMap((reading) => (book.flags.get(reading.id) ?? []).filter(({ code }) => reservations.has(code)));
  return good(
    paper(frame, {
      name: words.name,
      subject: id === undefined ? words.all(from, to) : words.one(thingName(book, 'vessel', id, end), from, to),
      number: id === undefined ? words.number : words.numberOne(id),
      standing: standingText(book, end),
      reservations: once([...bookReservations(book), ...unknownU(book, standing), ...namedFlags(book, flags)]),
      body: [
        ...overview(book, vessels, period, end),
        ...vessels.flatMap((vessel) => containerPages(book, vessel, period, end)),
        ...(id === undefined ? losses(book, period) : []),
        sentence(words.notAir),
        ...changesOf(book, standing, struck, commonWords.noChanges),
      ],
    }),
  );
}
