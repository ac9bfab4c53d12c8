/**
 * The bar record: one bar, what it was made of, every assay of it, the fine metal that follows with its uncertainty, its settlement and what became of
 * it. It certifies nothing and says so, and never prints where a bar is kept. Sources: practice.md 1 (19); methods.md 5.1.
 */
import type { Content } from 'pdfmake/interfaces';
import { barOrigin } from '../core/book/bar-origin.ts';
import { type Bar, barsOf } from '../core/book/bars.ts';
import type { Book } from '../core/book/book.ts';
import type { Reading } from '../core/book/current.ts';
import type { BarFineness, FineMetal } from '../core/book/fineness.ts';
import { settlementsOf } from '../core/book/settlements.ts';
import { decimalFromNumber, divided, zero } from '../core/decimal.ts';
import { uOf } from '../core/measured.ts';
import type { Ratio } from '../core/ratio.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayText } from '../words/dates.ts';
import { methodNames, samplingNames, settlementRuleNames } from '../words/daybook-names-bullion.ts';
import { entryName, nameIn } from '../words/daybook-naming.ts';
import { decimalText, massRatioFigure, massRatioWithU, massUnit, placesFor } from '../words/figures.ts';
import { marked } from '../words/notation.ts';
import { notKnown, notRecorded, runSheet } from '../words/papers.ts';
import { barPaper as words } from '../words/papers-bar.ts';
import { commonWords } from '../words/papers-common.ts';
import { uText, withGrams } from './amounts.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { aside, facts, ledger, list, section, sentence, small, together } from './ledger.ts';
import { personName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { happenedText } from './run-sheet/moments.ts';
import { witnessText } from './run-sheet/went-in.ts';
import { signatures } from './signatures.ts';
import { standingText } from './standing.ts';

/** Rounded once, on the exact value. */
const ratioText = ({ n, d }: Ratio, places: number): string =>
  decimalText(divided({ digits: n, places: 0 }, { digits: d, places: 0 }, places), places);

/** Places where no uncertainty says better. */
const usualPlaces = 2;

/** A value with its expanded uncertainty, both to the same place. */
function withUncertainty(value: Ratio, u: number | null): readonly [string, string] {
  const U = u === null ? 0 : 2 * u;
  const places = U > 0 ? placesFor(U) : usualPlaces;
  return [ratioText(value, places), u === null ? notKnown : `± ${decimalText(decimalFromNumber(U), places)}`];
}

function madeOf(book: Book, { from, melt }: Bar): string {
  return [
    ...(from.charges.length > 0
      ? [words.sponges(from.charges.map((id) => commonWords.small(entryName(book, id))).join(', '))]
      : []),
    ...(from.bars.length > 0 ? [words.bars(from.bars.map((id) => nameIn(book, 'bar', id, melt.happened)).join(', '))] : []),
    ...(from.other.length > 0 ? [words.other(from.other.join(', '))] : []),
  ].join('; ');
}

function moveText(move: Reading): string {
  if (move.kind === 'melt') return `${dayText(move.happened)}: ${words.melted}`;
  const { way, party, document } = (move as Reading<'transfer'>).body;
  return `${dayText(move.happened)}: ${words[way === 'out' ? 'out' : 'back'](party, document ?? notRecorded)}`;
}

/** Entries by name, once each. */
const behind = (book: Book, readings: readonly Reading[]): string =>
  [...new Set(readings.map((r) => commonWords.small(entryName(book, r.id))))].join('; ');

function particulars(book: Book, bar: Bar): Content[] {
  const { melt, weighed } = bar;
  const { lots, makers, crushings } = barOrigin(book, bar);
  return together([
    section(words.bar),
    ...facts([
      [words.label, bar.label],
      [words.mass, `${withGrams(weighed.grams)}, ${uText(weighed.net, weighed.uKnown)}`],
      [words.poured, happenedText(melt)],
      [words.made, madeOf(book, bar)],
      [words.lots, lots.map((lot) => lot.label).join(', ') || notRecorded],
      [words.ore, behind(book, [...makers, ...crushings]) || notRecorded],
      [words.fate, [words.fates[bar.fate], ...bar.moves.map(moveText)].join('; ')],
      [words.by, personName(book, melt.entry.by, melt.happened)],
      [words.witness, witnessText(book, melt.entry, melt.happened)],
    ]),
    aside(words.noPlace),
  ]);
}

function fineWithU({ grams, net, uKnown }: FineMetal): readonly [string, string] {
  const U = uKnown ? (2 * uOf(net)) / 1e6 : 0;
  if (!(U > 0)) return [massRatioFigure(grams, usualPlaces), uKnown ? `± ${decimalText(zero, usualPlaces)}` : notKnown];
  const shown = massRatioWithU(grams, U);
  return [shown.value, `± ${shown.U}`];
}

function metalRow(name: string, fineness: BarFineness, fine: FineMetal) {
  const [permille, permilleU] = withUncertainty(
    fineness.permille,
    fineness.uKnown ? uOf({ ug: 0, parts: fineness.parts }) : null,
  );
  const [grams, gramsU] = fineWithU(fine);
  return { cells: [name, permille, permilleU, grams, gramsU, words.classes[fineness.class]] };
}

function holds({ gold, silver, base, fineGold, fineSilver }: Bar): Content[] {
  if (!gold && !silver) return [section(words.holds), sentence(words.notAssayed)];
  const sampling = gold ? [...gold.parts].filter(([source]) => source.startsWith('sampling:')).map((part) => part) : [];
  const samplingU = uOf({ ug: 0, parts: new Map(sampling) });
  return together([
    section(words.holds),
    ...ledger(
      [
        { head: words.metal, share: 16 },
        { head: words.permille, share: 14, amount: true },
        { head: words.U, share: 13, amount: true },
        { head: words.grams, share: 15, amount: true },
        { head: words.U, share: 14, amount: true },
        { head: words.basis, share: 28 },
      ],
      [
        ...(gold && fineGold ? [metalRow(words.gold, gold, fineGold)] : []),
        ...(silver && fineSilver ? [metalRow(words.silver, silver, fineSilver)] : []),
        ...(base ? [{ cells: [words.base, ratioText(base, usualPlaces), '', '', '', ''] }] : []),
      ],
    ),
    ...(gold
      ? [small(gold.samplingKnown ? words.sampling(decimalText(decimalFromNumber(samplingU), 2)) : words.noSampling)]
      : []),
    ...(gold?.indicative ? [sentence(words.indicative)] : []),
  ]);
}

function assays({ assays: all }: Bar): Content[] {
  if (all.length === 0) return [];
  const text = (r: Ratio | null | undefined) => (r ? ratioText(r, usualPlaces) : '');
  return [
    section(words.assays),
    ...ledger(
      [
        { head: words.method, share: 30 },
        { head: words.from, share: 22 },
        { head: words.sampled, share: 24 },
        { head: words.gold, share: 12, amount: true },
        { head: words.silver, share: 12, amount: true },
      ],
      all.map(({ reading, gold, silver }) => {
        const { method, laboratory, sampling } = reading.body;
        const taken = sampling && [samplingNames[sampling.method], sampling.positions ?? ''].filter((t) => t !== '').join(', ');
        return {
          cells: [
            `${dayText(reading.happened)}: ${commonWords.small(methodNames[method])}`,
            laboratory ?? words.noLaboratory,
            taken ?? notRecorded,
            text(gold?.permille),
            text(silver?.permille),
          ],
        };
      }),
    ),
  ];
}

function settled(book: Book, bar: Bar): Content[] {
  const one = settlementsOf(book).all.find((s) => s.bar === bar.id && s.counts);
  if (!one) return [];
  const { site, other, limit, umpire, rule, contract } = one.reading.body;
  return together([
    section(words.settlement),
    aside(words.settlementNote),
    ...facts([
      [words.ours, marked(site)],
      [words.theirs, marked(other)],
      [words.difference, decimalText(one.difference, one.difference.places)],
      [words.limit, marked(limit)],
      [words.rule, settlementRuleNames[rule]],
      [words.umpire, umpire === undefined ? words.noUmpire : marked(umpire)],
      [words.contract, contract ?? notRecorded],
      [words.settled, one.settled ? ratioText(one.settled, usualPlaces) : words.waits],
      ...(one.fineGold ? [[words.settledFine, `${massRatioFigure(one.fineGold, usualPlaces)}\u00a0${massUnit()}`] as const] : []),
    ]),
  ]);
}

/** The record of a bar. Problems: `paper-no-such` where the book has no such bar, `paper-not-understood`. */
export function barRecord(book: Book, id: string, frame: Frame): Result<Definition> {
  const bar = barsOf(book).all.get(id);
  if (!bar) return bad(problem('paper-no-such', 'id', { wanted: 'bar', id }));
  const unread = notUnderstoodNaming(book, [id, bar.melt.id]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const origin = barOrigin(book, bar);
  const firings = origin.charges.flatMap(({ id: charge }) => book.charges.all.get(charge)?.firings ?? []);
  const behindIt = [...origin.crushings, ...origin.makers, ...origin.charges, ...firings.map((firing) => firing.reading)];
  const about: Reading[] = [
    bar.melt,
    ...bar.assays.map(({ reading }) => reading),
    ...settlementsOf(book).all.flatMap((s) => (s.bar === id ? [s.reading] : [])),
    ...bar.moves,
  ];
  const { remarks } = doubtsOf(book, about);
  const { reservations } = doubtsOf(book, [...about, ...behindIt]);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(bar.label, dayText(bar.melt.happened)),
      number: words.number(id),
      standing: standingText(book, bar.melt.happened),
      reservations,
      body: [
        sentence(words.isNot),
        ...particulars(book, bar),
        ...holds(bar),
        ...assays(bar),
        ...settled(book, bar),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, [...behindIt, ...about], [], commonWords.noChanges),
        ...signatures(book, about),
      ],
    }),
  );
}
