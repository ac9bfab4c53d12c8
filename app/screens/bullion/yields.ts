/** Yields as rows and as a drawing. 1 g/t is 49/75 dwt per long ton, exactly. Where there is no figure the words say why, and nothing is drawn. */
import type { Book } from '../../core/book/book.ts';
import { campaigns, restated } from '../../core/book/campaigns.ts';
import { dwtPerLongTon } from '../../core/book/ore-through.ts';
import { cleanUpYields } from '../../core/book/yields.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import type { TrendPanel } from '../../drawings/trend-layout.ts';
import { dayText } from '../../words/dates.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { decimalText } from '../../words/figures.ts';
import { yieldWords as words } from '../../words/screens-bullion-yields.ts';
import { csvOf, plainNumber } from '../mercury/copied.ts';
import { entryHref } from '../shared/places.ts';

export interface YieldLine {
  readonly name: string;
  readonly href: string | undefined;
  readonly ore: string;
  readonly gross: string;
  readonly grossYield: string;
  readonly grossDwt: string;
  readonly fine: string;
  readonly fineYield: string;
  readonly fineDwt: string;
  readonly late: string;
  readonly why: string;
  /** Grams a tonne, unrounded, for the drawing. */
  readonly values: { readonly gross: number | null; readonly fine: number | null };
}

const text = (value: number | null, places: number): string =>
  value === null ? '' : decimalText(decimalFromNumber(value), places);

interface Given {
  readonly name: string;
  readonly href: string | undefined;
  readonly oreUg: number | null;
  readonly grossUg: number | null;
  readonly fineUg: number | null;
  readonly lateUg?: number;
  readonly gross: number | null;
  readonly fine: number | null;
  readonly why: keyof typeof words.whys | null;
}

const lineOf = (y: Given): YieldLine => ({
  name: y.name,
  href: y.href,
  ore: text(y.oreUg === null ? null : y.oreUg / 1e12, 2),
  gross: text(y.grossUg === null ? null : y.grossUg / 1e6, 2),
  grossYield: text(y.gross, 3),
  grossDwt: text(y.gross === null ? null : dwtPerLongTon(y.gross), 3),
  fine: text(y.fineUg === null ? null : y.fineUg / 1e6, 2),
  fineYield: text(y.fine, 3),
  fineDwt: text(y.fine === null ? null : dwtPerLongTon(y.fine), 3),
  late: text(y.lateUg === undefined ? null : y.lateUg / 1e6, 2),
  why: y.why !== null ? words.notComputable(words.whys[y.why]) : y.fine === null ? words.noFine : '',
  values: { gross: y.gross, fine: y.fine },
});

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
        gross: y.gPerTonne,
        fine: y.fineGPerTonne,
        why: y.why,
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
      gross: c.gPerTonne,
      fine: c.fineGPerTonne,
      why: c.why,
    });
  });

/** Months of all campaigns restated, for a person who asks. */
export const restatedLines = (book: Book) =>
  campaigns(book)
    .flatMap(restated)
    .map((month) => ({
      name: entryName(book, month.cleanUp),
      href: entryHref(month.cleanUp),
      first: text(month.first, 3),
      late: text(month.lateUg / 1e6, 2),
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
      words.grossDwt,
      words.fine,
      words.fineYield,
      words.fineDwt,
      words.late,
      words.why,
    ],
    ...lines.map((l) => [
      l.name,
      ...[l.ore, l.gross, l.grossYield, l.grossDwt, l.fine, l.fineYield, l.fineDwt, l.late].map(plainNumber),
      l.why,
    ]),
  ]);
