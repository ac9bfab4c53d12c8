/** Amalgam by plate as it is drawn, told and laid out in a table. */
import type { Book } from '../../core/book/book.ts';
import { emptySum, joined, type Sum } from '../../core/book/charges.ts';
import { type PlateAmalgam, plateAmalgam, type ScrapedPeriod, scrapedPeriods } from '../../core/book/plate-amalgam.ts';
import { latest } from '../../core/book/registers.ts';
import type { DrawnBattery } from '../../drawings/plates-layout.ts';
import { dayText } from '../../words/dates.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { percentText } from '../../words/figures.ts';
import { marked, writtenPlainly } from '../../words/notation.ts';
import { platesDrawn as words } from '../../words/plates-drawn.ts';
import { csvOf, plainNumber } from '../mercury/copied.ts';
import { platesHref } from './routes.ts';
import { exactFigure, exactGrams } from './typed.ts';

/** A period in words. */
export function periodName(book: Book, { id, is }: ScrapedPeriod): string {
  if (is === 'all') return words.all;
  if (is === 'clean-up') return entryName(book, id);
  const end = book.current.byId.get(id.replace('campaign-', ''));
  return end ? words.campaign(dayText(end.happened)) : words.running;
}

/** The period of an address; the whole where it names none. */
export const periodOf = (book: Book, id: string | undefined): ScrapedPeriod =>
  scrapedPeriods(book).find((period) => period.id === id) ?? { id: 'all', is: 'all', among: null };

const plateName = (book: Book, id: string): string => nameIn(book, 'plate', id, '9999-12-31T00:00+00:00');
const sizeText = (metres: number): string => marked(String(metres));
const share = (part: Sum, whole: number): string => (whole > 0 && part.net.ug > 0 ? percentText(part.net.ug / whole, 0) : '');

/** Amalgam that names one plate alone, micrograms, all plates together. */
const aloneUg = (found: PlateAmalgam): number =>
  found.batteries.reduce((sum, { plates }) => plates.reduce((s, plate) => s + plate.amalgam.net.ug, sum), 0);

/** The plan, and each plate in words with the page of its clean-ups. */
export function drawnPlates(book: Book, period: ScrapedPeriod) {
  const found = plateAmalgam(book, period.among);
  const whole = aloneUg(found);
  const most = Math.max(0, ...found.batteries.flatMap(({ plates }) => plates.map((plate) => plate.amalgam.net.ug)));
  const told = new Map<string, { text: string; href: string }>();
  const batteries = found.batteries.map(({ id, plates }): DrawnBattery => {
    const battery = id === null ? undefined : book.registers.battery.get(id);
    const body = battery && latest(battery).body;
    return {
      id: id ?? 'none',
      name: body ? words.battery(body.label, body.stamps) : words.noBattery,
      plates: plates.map(({ id: plate, body: own, amalgam, entries }) => {
        const { lengthM, widthM } = own;
        const sized = lengthM !== undefined && widthM !== undefined;
        const size = sized ? words.size(sizeText(lengthM), sizeText(widthM)) : words.noSize;
        const figure = entries.length === 0 ? words.none : exactGrams(amalgam);
        const part = share(amalgam, whole);
        const more = [...(own.order === undefined ? [words.noPlace] : []), ...(own.out === undefined ? [] : [words.outOfUse])];
        const parts = [
          figure,
          ...(part === '' ? [] : [words.share(part)]),
          ...(entries.length === 0 ? [] : [words.cleanUps(entries.length)]),
          size,
          ...more,
        ];
        told.set(plate, { text: words.told(own.label, parts), href: platesHref(period.id, plate) });
        return {
          id: plate,
          lines: [own.label, part === '' ? figure : `${figure} (${part})`, size, ...more],
          lengthM: lengthM ?? null,
          widthM: widthM ?? null,
          level: amalgam.net.ug <= 0 || most === 0 ? 0 : Math.max(1, Math.ceil((4 * amalgam.net.ug) / most - 1e-9)),
        };
      }),
      shared: found.together
        .filter((one) => one.plates.some((plate) => plates.some((own) => own.id === plate)))
        .map((one) => ({
          plates: one.plates,
          text: words.together(
            exactGrams(one.amalgam),
            one.plates.map((plate) => plateName(book, plate)),
          ),
        })),
    };
  });
  return { batteries, told };
}

export interface PlateRow {
  readonly id: string;
  readonly name: string;
  readonly href: string | undefined;
  readonly amalgam: string;
  readonly share: string;
  readonly entries: string;
}

/** The table: every plate, what came off several together, what names none, and the sum of it all. */
export function plateRows(book: Book, period: ScrapedPeriod): { readonly rows: readonly PlateRow[]; readonly total: string } {
  const found = plateAmalgam(book, period.among);
  const alone = found.batteries.flatMap(({ plates }) => plates);
  const rest = [
    ...found.together.map((one) => ({
      id: one.plates.join(' '),
      name: words.togetherRow(one.plates.map((plate) => plateName(book, plate))),
      ...one,
    })),
    { id: 'unsaid', name: words.unsaid, ...found.unsaid },
    { id: 'elsewhere', name: words.elsewhere, ...found.elsewhere },
  ];
  const whole = [...alone, ...rest].reduce<Sum>((sum, { amalgam }) => joined(sum, amalgam), emptySum);
  const row = (id: string, name: string, amalgam: Sum, entries: readonly string[], href?: string): PlateRow => ({
    id,
    name,
    href,
    amalgam: exactFigure(amalgam),
    share: share(amalgam, whole.net.ug),
    entries: entries.length === 0 ? '' : words.cleanUps(entries.length),
  });
  return {
    rows: [
      ...alone.map((plate) => row(plate.id, plate.body.label, plate.amalgam, plate.entries, platesHref(period.id, plate.id))),
      ...rest.filter(({ entries }) => entries.length > 0).map((one) => row(one.id, one.name, one.amalgam, one.entries)),
    ],
    total: exactFigure(whole),
  };
}

/** The clean-ups of one plate in a period, the newest first: from it alone, and from it with others. */
export function plateEntries(book: Book, period: ScrapedPeriod, plate: string) {
  const entries = period.among ?? new Set([...book.current.of('clean-up'), ...book.current.of('plate-work')].map(({ id }) => id));
  return [...entries]
    .flatMap((id) => {
      const reading = book.current.byId.get(id);
      if (!reading) return [];
      const found = plateAmalgam(book, new Set([id]));
      const alone = found.batteries.flatMap(({ plates }) => plates).find((one) => one.id === plate);
      const shared = found.together
        .filter((one) => one.plates.includes(plate))
        .reduce<Sum>((sum, { amalgam }) => joined(sum, amalgam), emptySum);
      if ((!alone || alone.entries.length === 0) && shared.net.ug === 0) return [];
      return [
        {
          id,
          at: reading.happened,
          alone: alone && alone.entries.length > 0 ? exactFigure(alone.amalgam) : '',
          shared: shared.net.ug === 0 ? '' : exactFigure(shared),
        },
      ];
    })
    .sort((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0));
}

/** The table as text to copy, with what the register knows of each plate. */
export const platesCsv = (book: Book, period: ScrapedPeriod): string =>
  writtenPlainly(() => {
    const { batteries } = plateAmalgam(book, period.among);
    const known = new Map(
      batteries.flatMap(({ id, plates }) =>
        plates.map(
          (plate) =>
            [plate.id, { battery: id === null ? '' : nameIn(book, 'battery', id, plate.body.label), body: plate.body }] as const,
        ),
      ),
    );
    return csvOf([
      words.csv,
      ...plateRows(book, period).rows.map((row) => {
        const body = known.get(row.id)?.body;
        const number = (value: number | undefined): string => (value === undefined ? '' : String(value));
        return [
          known.get(row.id)?.battery ?? '',
          row.name,
          number(body?.order),
          number(body?.lengthM),
          number(body?.widthM),
          plainNumber(row.amalgam),
          row.share,
          row.entries,
        ];
      }),
    ]);
  });
