/**
 * The parcel return: what the ore of one owner gave, gross and fine, per tonne and in pennyweights per long ton, from which clean-ups, alone or allocated; its
 * recoveries, each named. It settles nothing and states no value. Sources: practice.md 1 (19), 2.10; methods.md 6.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import { dwtPerLongTon, type Rate } from '../core/book/ore-through.ts';
import { type ParcelYield, parcelYields } from '../core/book/parcel-yields.ts';
import { latest } from '../core/book/registers.ts';
import { decimalFromNumber, divided } from '../core/decimal.ts';
import { uOf } from '../core/measured.ts';
import type { Ratio } from '../core/ratio.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { entryName } from '../words/daybook-naming.ts';
import { decimalText, massFigure, massRatioFigure, massUnit, placesFor } from '../words/figures.ts';
import { notKnown, notRecorded, runSheet } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { parcelPaper as words } from '../words/papers-parcel.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { aside, facts, ledger, list, section, sentence, small, together } from './ledger.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

const number = (value: number, places: number): string => decimalText(decimalFromNumber(value), places);
const grams = (ug: number): string => massFigure(decimalFromNumber(ug / 1e6), 2);
const ratioText = ({ n, d }: Ratio, places: number): string =>
  decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, places), places);
const percent = (r: Ratio): string => words.percent(ratioText({ n: r.n * 100n, d: r.d }, 1));

function particulars({ label, owner, ore, oreFrom }: ParcelYield): Content[] {
  const said =
    ore && oreFrom
      ? words.oreText(
          number(ore.mass.ug / 1e12, 3),
          ore.uKnown ? words.oreU(number(uOf(ore.mass) / 1e12, 3)) : words.noOreU,
          words.oreFrom[oreFrom],
        )
      : notRecorded;
  return together([
    section(words.parcel),
    ...facts([
      [words.label, label],
      [words.owner, owner ?? notRecorded],
      [words.ore, said],
    ]),
  ]);
}

function sources(book: Book, one: ParcelYield): Content[] {
  if (one.sources.length === 0) return [section(words.sources), sentence(words.none)];
  const row = (name: string, gross: number, fine: number | null, how: string) => ({
    cells: [name, grams(gross), fine === null ? notKnown : grams(fine), how],
  });
  return [
    section(words.sources),
    ...ledger(
      [
        { head: words.cleanUp, share: 44 },
        { head: words.bullion, share: 16, amount: true },
        { head: words.fine, share: 16, amount: true },
        { head: words.how, share: 24 },
      ],
      [
        ...one.sources.map((s) =>
          row(entryName(book, s.cleanUp), s.gross.ug, s.fine?.ug ?? null, s.allocated ? words.allocated : words.alone),
        ),
        row(words.total, one.gross?.ug ?? 0, one.fine?.ug ?? null, ''),
      ],
    ),
    ...(one.allocated ? [small(words.rule)] : []),
    small(words.noLate),
    ...(one.outTurn ? [small(words.outTurn)] : []),
  ];
}

function rateRow(name: string, { gPerTonne, u }: Rate) {
  const U = u === null ? 0 : 2 * u;
  const places = U > 0 ? placesFor(U) : 2;
  return {
    cells: [
      name,
      number(gPerTonne, places),
      u === null ? notKnown : `± ${number(U, places)}`,
      number(dwtPerLongTon(gPerTonne), places),
    ],
  };
}

function yields({ why, grossRate, fineRate }: ParcelYield): Content[] {
  if (why !== null || !grossRate) return [section(words.yield), sentence(words.why[why ?? 'nothing-crushed'])];
  return together([
    section(words.yield),
    ...ledger(
      [
        { head: words.of, share: 46 },
        { head: words.grams, share: 16, amount: true },
        { head: words.U, share: 20, amount: true },
        { head: words.dwt, share: 18, amount: true },
      ],
      [rateRow(words.gross, grossRate), ...(fineRate ? [rateRow(words.fineGold, fineRate)] : [])],
    ),
    ...(fineRate ? [] : [sentence(words.notAssayed)]),
  ]);
}

function recovery({ head, tails, recoveries }: ParcelYield): Content[] {
  const any = recoveries && (recoveries.byHead || recoveries.byHeadAndTail || recoveries.byCalculatedHead);
  if (!recoveries || !any) return [section(words.recovery), sentence(words.noRecovery)];
  const line = (name: string, value: Ratio | null, as: (r: Ratio) => string): [string, string] => [
    name,
    value ? as(value) : notKnown,
  ];
  const perTonne = (r: Ratio): string => words.gPerTonne(ratioText(r, 2));
  return together([
    section(words.recovery),
    aside(words.recoveryNote),
    ...facts([
      line(words.head, head, perTonne),
      line(words.tails, tails, perTonne),
      line(words.byHead, recoveries.byHead, percent),
      line(words.byHeadAndTail, recoveries.byHeadAndTail, percent),
      line(words.byCalculatedHead, recoveries.byCalculatedHead, percent),
      line(words.calculatedHead, recoveries.calculatedHead, perTonne),
      line(words.unaccounted, recoveries.unaccounted, (r) => `${massRatioFigure(r, 2)}\u00a0${massUnit()}`),
    ]),
  ]);
}

/** The return of a parcel. Problems: `paper-no-such` where the book has no such parcel, `paper-not-understood`. */
export function parcelReturn(book: Book, id: string, frame: Frame): Result<Definition> {
  const thing = book.registers.parcel.get(id);
  const one = parcelYields(book).find((p) => p.parcel === id);
  if (!thing || !one) return bad(problem('paper-no-such', 'id', { wanted: 'parcel', id }));
  const named = [id, ...one.sources.map((s) => s.cleanUp)];
  const unread = notUnderstoodNaming(book, named);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const about: Reading[] = [
    ...thing.states.flatMap((s) => book.current.byId.get(s.entry) ?? []),
    ...book.current.of('crushing').filter((r) => r.body.parcel === id),
    ...one.sources.flatMap((s) => book.current.byId.get(s.cleanUp) ?? []),
    ...book.current.of('assay').filter((r) => r.body.parcel === id),
  ];
  const { reservations, remarks } = doubtsOf(book, about);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(one.label, one.owner),
      number: words.number(id),
      standing: standingText(book, about.at(-1)?.happened ?? latest(thing).from),
      reservations,
      body: [
        sentence(words.isNot),
        ...particulars(one),
        ...sources(book, one),
        ...yields(one),
        ...recovery(one),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, about, [], commonWords.noChanges),
        ...signatures(book, about),
      ],
    }),
  );
}
