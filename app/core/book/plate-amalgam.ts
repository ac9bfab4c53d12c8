/**
 * Amalgam by plate, from what clean-ups and plate work say of the balls they made, as weighed on their labels. A ball scraped from several plates together
 * stays one amount of them together: nothing says how it would divide, and nothing here divides it. What names no plate is a sum of its own.
 */
import type { LotSource } from '../kinds/clean-up.ts';
import type { Body } from '../kinds/index.ts';
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import { campaigns } from './campaigns.ts';
import { emptySum, joined, type Sum } from './charges.ts';
import { latest } from './registers.ts';

/** An amount with the entries it was written in, in order. */
export interface Scraped {
  readonly amalgam: Sum;
  readonly entries: readonly string[];
}

export interface PlateScraped extends Scraped {
  readonly id: string;
  /** As the register has it now. */
  readonly body: Body<'plate'>;
}

export interface PlateAmalgam {
  /** Every plate of the register, battery by battery, down the flow as far as its place is registered, then as registered. */
  readonly batteries: readonly { readonly id: string | null; readonly plates: readonly PlateScraped[] }[];
  /** What came off several plates together, by which. */
  readonly together: readonly (Scraped & { readonly plates: readonly string[] })[];
  /** Of plates, or of a place that was not written; which plate is not said. */
  readonly unsaid: Scraped;
  /** From mortar, traps, pan, concentrate and floor: of no plate. */
  readonly elsewhere: Scraped;
}

const nothing: Scraped = { amalgam: emptySum, entries: [] };
const withLot = (to: Scraped, amalgam: Sum, entry: string): Scraped => ({
  amalgam: joined(to.amalgam, amalgam),
  entries: to.entries.includes(entry) ? to.entries : [...to.entries, entry],
});
const ofNoPlate: ReadonlySet<LotSource> = new Set<LotSource>(['mortar', 'trap', 'pan', 'concentrate', 'floor']);

interface Row {
  readonly entry: string;
  readonly key: string;
  readonly source: LotSource | undefined;
  readonly plates: readonly string[];
}

function rowsOf({ current }: Book): Row[] {
  return [
    ...current.of('clean-up').map((reading) => ({ reading, lots: reading.body.lots })),
    ...current.of('plate-work').map((reading) => ({
      reading,
      lots: (reading.body.made ?? []).map((lot) => ({ ...lot, plates: [reading.body.plate] })),
    })),
  ]
    .sort((a, b) => compareMoments(a.reading.happened, b.reading.happened))
    .flatMap(({ reading, lots }) =>
      lots.map(({ key, source, plates = [] }) => ({ entry: reading.id, key, source, plates: [...new Set(plates)].sort() })),
    );
}

/** Amalgam by plate. `among`: only of these entries; null: of all. */
export function plateAmalgam(book: Book, among: ReadonlySet<string> | null = null): PlateAmalgam {
  const single = new Map<string, Scraped>();
  const several = new Map<string, Scraped & { plates: readonly string[] }>();
  let [unsaid, elsewhere] = [nothing, nothing];
  for (const { entry, key, source, plates } of rowsOf(book)) {
    const lot = book.lots.all.get(`${entry}/${key}`);
    if (!lot || (among !== null && !among.has(entry))) continue;
    const [only] = plates;
    const id = plates.join(' ');
    if (only === undefined) {
      if (source !== undefined && ofNoPlate.has(source)) elsewhere = withLot(elsewhere, lot, entry);
      else unsaid = withLot(unsaid, lot, entry);
    } else if (plates.length === 1) single.set(only, withLot(single.get(only) ?? nothing, lot, entry));
    else several.set(id, { ...withLot(several.get(id) ?? nothing, lot, entry), plates });
  }
  const plates = [...book.registers.plate.values()].map((thing, i) => ({
    i,
    id: thing.id,
    body: latest(thing).body,
    ...(single.get(thing.id) ?? nothing),
  }));
  const last = Number.MAX_SAFE_INTEGER;
  plates.sort((a, b) => (a.body.order ?? last) - (b.body.order ?? last) || a.i - b.i);
  const ids: (string | null)[] = [...book.registers.battery.keys(), null];
  const home = (battery: string | undefined): string | null =>
    battery !== undefined && book.registers.battery.has(battery) ? battery : null;
  return {
    batteries: ids
      .map((id) => ({
        id,
        plates: plates.filter(({ body }) => home(body.battery) === id).map(({ i: _, ...plate }) => plate),
      }))
      .filter((battery) => battery.plates.length > 0),
    together: [...several.values()],
    unsaid,
    elsewhere,
  };
}

/** A period amalgam may be asked for: everything, a campaign, or one clean-up. */
export interface ScrapedPeriod {
  /** "all", the entry that ends the campaign, "running", or the clean-up. */
  readonly id: string;
  readonly is: 'all' | 'campaign' | 'clean-up';
  /** Its entries; null: all there are. */
  readonly among: ReadonlySet<string> | null;
}

/** Every period there is, the newest first after the whole. */
export function scrapedPeriods(book: Book): readonly ScrapedPeriod[] {
  const whole = campaigns(book).map(
    ({ endedBy, routine, late }): ScrapedPeriod => ({
      id: `campaign-${endedBy ?? 'running'}`,
      is: 'campaign',
      among: new Set([...routine.map((y) => y.cleanUp), ...late]),
    }),
  );
  const single = book.current.of('clean-up').toSorted((a, b) => compareMoments(a.happened, b.happened));
  return [
    { id: 'all', is: 'all', among: null },
    ...whole.toReversed(),
    ...single.map(({ id }): ScrapedPeriod => ({ id, is: 'clean-up', among: new Set([id]) })).toReversed(),
  ];
}
