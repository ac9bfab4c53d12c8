/** Yields as rows and as a drawing. 1 g/t is 49/75 dwt per long ton, exactly. Where there is no figure the words say why, and nothing is drawn. */
import type { Book } from '../../core/book/book.ts';
import { campaigns, restated } from '../../core/book/campaigns.ts';
import { dwtPerLongTon, type Rate } from '../../core/book/ore-through.ts';
import { parcelYields } from '../../core/book/parcel-yields.ts';
import { cleanUpYields } from '../../core/book/yields.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import type { TrendPanel } from '../../drawings/trend-layout.ts';
import { dayText } from '../../words/dates.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { decimalText, massFigure, placesFor } from '../../words/figures.ts';
import { yieldWords as words } from '../../words/screens-bullion-yields.ts';
import { csvOf, plainNumber } from '../mercury/copied.ts';
import { entryHref } from '../shared/places.ts';

export interface YieldLine {
  readonly name: string;
  readonly href: string | undefined;
  readonly ore: string;
  readonly gross: string;
  readonly grossYield: string;
  /** ± U (k = 2) of the yield before it, in its unit; empty where not known. */
  readonly grossU: string;
  readonly grossDwt: string;
  readonly fine: string;
  readonly fineYield: string;
  readonly fineU: string;
  readonly fineDwt: string;
  readonly late: string;
  readonly why: string;
  /** How its gold was come by, where that is to be said. */
  readonly how: string;
  /** Grams a tonne, unrounded, for the drawing. */
  readonly values: { readonly gross: number | null; readonly fine: number | null };
}

const text = (value: number | null, places: number): string =>
  value === null ? '' : decimalText(decimalFromNumber(value), places);

const grams = (ug: number | null): string => (ug === null ? '' : massFigure(decimalFromNumber(ug / 1e6), 2));

interface Given {
  readonly name: string;
  readonly href: string | undefined;
  readonly oreUg: number | null;
  readonly grossUg: number | null;
  readonly fineUg: number | null;
  readonly lateUg?: number;
  readonly gross: Rate | null;
  readonly fine: Rate | null;
  readonly why: keyof typeof words.whys | null;
  readonly allocated?: boolean;
  readonly outTurn?: boolean;
}

/** Places of a yield no uncertainty says better for. */
const usual = 3;

/** A yield, its ± U and the same in pennyweights: the last two to the place that the uncertainty gives. */
function rateTexts(rate: Rate | null): { readonly perTonne: string; readonly U: string; readonly dwt: string } {
  if (!rate) return { perTonne: '', U: '', dwt: '' };
  const U = rate.u === null ? 0 : 2 * rate.u;
  const places = U > 0 ? placesFor(U) : usual;
  return {
    perTonne: text(rate.gPerTonne, places),
    U: U > 0 ? text(U, places) : '',
    dwt: text(dwtPerLongTon(rate.gPerTonne), places),
  };
}

function lineOf(y: Given): YieldLine {
  const [gross, fine] = [rateTexts(y.gross), rateTexts(y.fine)];
  return {
    name: y.name,
    href: y.href,
    ore: text(y.oreUg === null ? null : y.oreUg / 1e12, 2),
    gross: grams(y.grossUg),
    grossYield: gross.perTonne,
    grossU: gross.U,
    grossDwt: gross.dwt,
    fine: grams(y.fineUg),
    fineYield: fine.perTonne,
    fineU: fine.U,
    fineDwt: fine.dwt,
    late: grams(y.lateUg ?? null),
    why: y.why !== null ? words.notComputable(words.whys[y.why]) : y.fine === null ? words.noFine : '',
    how: [...(y.allocated ? [words.allocated] : []), ...(y.outTurn ? [words.outTurn] : [])].join('; '),
    values: { gross: y.gross?.gPerTonne ?? null, fine: y.fine?.gPerTonne ?? null },
  };
}

/** Clean-ups, the newest first. */
export const cleanUpLines = (book: Book): readonly YieldLine[] =>
  cleanUpYields(book)
    .map((y) =>
      lineOf({
        name: entryName(book, y.cleanUp),
        href: entryHref(y.cleanUp),
        oreUg: y.oreUg,
        grossUg: y.barUg,
        fineUg: y.fineUg,
        gross: y.grossRate,
        fine: y.fineRate,
        why: y.why,
        allocated: y.shared,
        outTurn: y.outTurn,
      }),
    )
    .toReversed();

/** Campaigns in order. */
export const campaignLines = (book: Book): readonly YieldLine[] =>
  campaigns(book).map((c) => {
    const end = c.endedBy === null ? undefined : book.current.byId.get(c.endedBy);
    const first = book.current.byId.get(c.routine[0]?.cleanUp ?? '');
    return lineOf({
      name: end ? words.campaign(dayText(end.happened)) : words.running(first ? dayText(first.happened) : ''),
      href: c.endedBy === null ? undefined : entryHref(c.endedBy),
      oreUg: c.oreUg,
      grossUg: c.grossUg,
      fineUg: c.fineUg,
      lateUg: c.lateUg,
      gross: c.grossRate,
      fine: c.fineRate,
      why: c.why,
    });
  });

/** Parcels of the register, in its order; what scale and pan gave is in none of them. */
export const parcelLines = (book: Book): readonly YieldLine[] =>
  parcelYields(book).map((p) =>
    lineOf({
      name: p.owner === null ? p.label : words.owned(p.label, p.owner),
      href: entryHref(p.parcel),
      oreUg: p.ore?.mass.ug ?? null,
      grossUg: p.gross?.ug ?? null,
      fineUg: p.fine?.ug ?? null,
      gross: p.grossRate,
      fine: p.fineRate,
      why: p.why,
      allocated: p.allocated,
      outTurn: p.outTurn,
    }),
  );

/** Months of all campaigns restated, for a person who asks. */
export const restatedLines = (book: Book) =>
  campaigns(book)
    .flatMap(restated)
    .map((month) => ({
      name: entryName(book, month.cleanUp),
      href: entryHref(month.cleanUp),
      first: text(month.first, 3),
      late: grams(month.lateUg),
      restated: text(month.restated, 3),
    }));

/** Campaigns that have a gross yield, drawn; fine only where each of them has it. */
export function drawnCampaigns(lines: readonly YieldLine[]) {
  const drawn = lines.filter((l) => l.values.gross !== null);
  const panel = (id: 'gross' | 'fine', name: string): TrendPanel => ({
    id,
    name,
    form: 'bars',
    values: drawn.map((l) => ({ value: l.values[id] ?? 0, half: 0 })),
  });
  const fine = drawn.every((l) => l.values.fine !== null);
  return {
    panels: [panel('gross', words.panelGross), ...(fine ? [panel('fine', words.panelFine)] : [])],
    columns: drawn.map((l, i) => ({
      id: String(i),
      name: l.name.replace(/^\S+ /, ''),
      text: words.told(l.name, l.grossYield, l.fineYield),
      href: l.href ?? '#/bullion/yields',
    })),
  };
}

/** The table as text to copy. */
export const yieldsCsv = (lines: readonly YieldLine[]): string =>
  csvOf([
    [
      words.what,
      words.ore,
      words.gross,
      words.grossYield,
      words.UOf(words.grossYield),
      words.grossDwt,
      words.fine,
      words.fineYield,
      words.UOf(words.fineYield),
      words.fineDwt,
      words.late,
      words.why,
      words.how,
    ],
    ...lines.map((l) => [
      l.name,
      ...[l.ore, l.gross, l.grossYield, l.grossU, l.grossDwt, l.fine, l.fineYield, l.fineU, l.fineDwt, l.late].map(plainNumber),
      l.why,
      l.how,
    ]),
  ]);
