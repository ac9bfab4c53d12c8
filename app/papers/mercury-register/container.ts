/** One container's page of the register: what it is, every amount in and out with the balance after it, and what was found when it was weighed. */
import type { Content } from 'pdfmake/interfaces';
import type { Period } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import type { Movement } from '../../core/book/movements/gathering.ts';
import { inPeriod, isBefore, upToEnd } from '../../core/book/period.ts';
import { outside, vesselPlace } from '../../core/book/places.ts';
import { stateAt } from '../../core/book/registers.ts';
import { type Measured, total } from '../../core/measured.ts';
import { compareMoments } from '../../core/time.ts';
import { basisTexts } from '../../words/account.ts';
import { dayText } from '../../words/dates.ts';
import { marked } from '../../words/notation.ts';
import { notRecorded } from '../../words/papers.ts';
import { registerPaper as words } from '../../words/papers-register.ts';
import { ugText } from '../amounts.ts';
import { aside, facts, ledger, part, type Row, section, sentence, together } from '../ledger.ts';
import { movedIn } from '../mercury-account/movements.ts';
import { personName, thingName } from '../names.ts';
import { whatText } from './what.ts';

const places = 2;

type Line = Reading<'stock-take'>['body']['lines'][number];

/** Counts of a container inside a period, in order. */
const looksAt = (book: Book, vessel: string, period: Period): { reading: Reading<'stock-take'>; line: Line }[] =>
  book.current
    .of('stock-take')
    .filter(({ happened }) => inPeriod(happened, period))
    .flatMap((reading) =>
      reading.body.lines.filter(({ place }) => place === vesselPlace(vessel)).map((line) => ({ reading, line })),
    );

/** When a container was last weighed or its seal seen, and the seal it stands under as far as the record tells. */
export function lastLook(
  book: Book,
  vessel: string,
  period: Period,
  end: string,
): { readonly on: string | null; readonly seal: string | null } {
  const upTo: Period = { from: null, to: period.to };
  const looks = looksAt(book, vessel, upTo).filter(({ line }) => line.how === 'sealed' || line.how === 'weighed');
  const receipts = book.current.of('receipt').filter(({ happened, body }) => body.vessel === vessel && upToEnd(happened, period));
  const thing = book.registers.vessel.get(vessel);
  const stated = thing && stateAt(thing, end);
  const seals = [
    ...receipts.map(({ happened, body }) => ({ at: happened, seal: body.seal ?? null })),
    ...looks.map(({ reading, line }) => ({
      at: reading.happened,
      seal: line.how === 'sealed' ? line.seal : line.how === 'weighed' ? (line.newSeal ?? null) : null,
    })),
    ...(stated?.body.seal === undefined ? [] : [{ at: stated.from, seal: stated.body.seal as string | null }]),
    // mercury drawn off or put in breaks a seal
    ...book.movements.all
      .filter((m) => (m.from === vesselPlace(vessel) || m.to === vesselPlace(vessel)) && m.basis !== 'counted')
      .filter((m) => book.current.byId.get(m.entry)?.kind !== 'receipt')
      .filter((m) => upToEnd(m.at, period))
      .map((m) => ({ at: m.at, seal: null })),
  ].sort((a, b) => compareMoments(a.at, b.at));
  const weighed = [
    ...looks.map(({ reading }) => reading.happened),
    ...receipts.filter(({ body }) => body.weight.how === 'scale').map((r) => r.happened),
  ];
  return { on: weighed.sort(compareMoments).at(-1) ?? null, seal: seals.at(-1)?.seal ?? null };
}

function particulars(book: Book, vessel: string, period: Period, end: string): Content[] {
  const thing = book.registers.vessel.get(vessel);
  if (!thing) return [];
  const { body } = stateAt(thing, end);
  const { on, seal } = lastLook(book, vessel, period, end);
  const { tare } = body;
  const tareText =
    tare === undefined
      ? notRecorded
      : marked(tare.how === 'scale' ? tare.gross : tare.how === 'stated' ? tare.mass : tare.volume);
  return facts([
    [words.use, words.uses[body.use]],
    [words.class, words.classes[body.mercury ?? 'unknown']],
    [words.seal, seal ?? words.noSeal],
    [words.place, body.place ?? notRecorded],
    [words.tare, tareText],
    [words.lastWeighed, on === null ? words.never : dayText(on)],
    ...(body.out === undefined ? [] : [[words.out, dayText(body.out)] as const]),
    ...(body.note === undefined ? [] : [[words.note, body.note] as const]),
  ]);
}

const net = (movements: readonly Movement[], place: string): Measured =>
  total(
    movements.map(({ mercury, to, from }) =>
      to === from ? total([]) : to === place ? mercury : { ug: -mercury.ug, parts: mercury.parts },
    ),
  );

function movements(book: Book, vessel: string, period: Period): Content[] {
  const place = vesselPlace(vessel);
  const own = book.movements.all.filter((m) => m.from === place || m.to === place);
  const inside = movedIn(own, period);
  const { from } = period;
  const before = own.filter((m) => isBefore(m.at, period));
  let balance = net(before, place).ug;
  if (inside.length === 0 && before.length === 0) return [sentence(words.noMovements)];
  const rows: Row[] = [];
  if (from !== null)
    rows.push({ cells: ['', words.carried(dayText(from)), '', '', ugText(balance, places), '', ''], strong: true });
  for (const m of inside) {
    const into = m.to === place;
    balance += into ? m.mercury.ug : -m.mercury.ug;
    const reading = book.current.byId.get(m.entry);
    rows.push({
      cells: [
        dayText(m.at),
        whatText(book, m, place),
        into ? ugText(m.mercury.ug, places) : '',
        into ? '' : ugText(m.mercury.ug, places),
        ugText(balance, places),
        basisTexts[m.basis],
        personName(book, reading?.entry.by ?? null, m.at),
      ],
    });
  }
  rows.push({ cells: ['', words.atEnd, '', '', ugText(balance, places), '', ''], sum: true, closing: true });
  return ledger(
    [
      { head: words.day, share: 17.5 },
      { head: words.what, share: 28 },
      { head: words.in, share: 11.5, amount: true },
      { head: words.outG, share: 11.5, amount: true },
      { head: words.balance, share: 11.5, amount: true },
      { head: words.known, share: 11 },
      { head: words.by, share: 9 },
    ],
    rows,
  );
}

/** Why a count differs, as far as somebody said: the count's own note, and notes written about it. */
function reasonOf(book: Book, reading: Reading<'stock-take'>): string {
  const notes = book.current.of('note').filter(({ body }) => body.about === reading.id);
  return [...(reading.body.note === undefined ? [] : [reading.body.note]), ...notes.map(({ body }) => body.text)].join('; ');
}

function weighings(book: Book, vessel: string, period: Period): Content[] {
  const place = vesselPlace(vessel);
  const looks = looksAt(book, vessel, period);
  if (looks.length === 0) return [part(words.weighings), sentence(words.noWeighings)];
  const rows = looks.map(({ reading, line }): Row => {
    const by = personName(book, reading.entry.by, reading.happened);
    const day = dayText(reading.happened);
    if (line.how === 'sealed') return { cells: [day, '', '', '', words.sealStands(line.seal), by] };
    if (line.how === 'unanswered') return { cells: [day, '', '', '', words.unanswered(line.why), by], strong: true };
    if (line.how === 'not-found') return { cells: [day, '', '', '', words.notFound(line.note ?? ''), by], strong: true };
    const counted = book.movements.all.find((m) => m.entry === reading.id && m.to === place);
    const upTo = book.movements.all.filter(
      (m) => (m.from === place || m.to === place) && compareMoments(m.at, reading.happened) <= 0 && m.entry !== reading.id,
    );
    const expected = net(upTo, place).ug;
    const gain = counted?.mercury.ug ?? 0;
    const first = counted?.from === outside;
    const reason = reasonOf(book, reading);
    return {
      cells: [
        day,
        ugText(expected + gain, places),
        first ? '' : ugText(expected, places),
        first ? '' : ugText(gain, places, true),
        first ? words.firstCount : gain === 0 ? '' : reason === '' ? words.noReason : reason,
        by,
      ],
    };
  });
  return [
    part(words.weighings),
    ...ledger(
      [
        { head: words.day, share: 17.5 },
        { head: words.found, share: 12, amount: true },
        { head: words.expected, share: 18.5, amount: true },
        { head: words.difference, share: 14, amount: true },
        { head: words.reason, share: 28 },
        { head: words.by, share: 10 },
      ],
      rows,
    ),
  ];
}

/** The container's part of the register. */
export const containerPages = (book: Book, vessel: string, period: Period, end: string): Content[] => [
  ...together([section(thingName(book, 'vessel', vessel, end)), aside(vessel), ...particulars(book, vessel, period, end)]),
  ...movements(book, vessel, period),
  ...weighings(book, vessel, period),
];
