/**
 * Bars settled with the other party: the figure that follows from both parties', the contract's limit and rule, and the umpire's where one was needed.
 * It stands beside the bar's own assays and never in their place. Source: methods.md 5.6, WE-29.
 */
import { compare, type Decimal, decimalFromText, divided, zero } from '../decimal.ts';
import { asRatio, type Ratio, ratioFromText, timesRatio } from '../ratio.ts';
import { type Settlement, settle } from '../umpire.ts';
import { type Bar, type Bars, barsOf } from './bars.ts';
import type { Current, Reading } from './current.ts';
import { type Flag, flag } from './flags.ts';
import type { Registers } from './registers.ts';

export interface BarSettlement extends Settlement {
  readonly reading: Reading<'settlement'>;
  readonly bar: string;
  /** Fine gold by the settled figure, exact grams; null while an umpire is awaited or the bar is not here. */
  readonly fineGold: Ratio | null;
  /** Silver by the same rule and its own limit; null where the parties exchanged no figure for it. */
  readonly silver: Settlement | null;
  /** Fine silver by its settled figure, exact grams. */
  readonly fineSilver: Ratio | null;
  /** The last one of its bar is the one that counts. */
  readonly counts: boolean;
}

export interface Settlements {
  /** In order of happening. */
  readonly all: readonly BarSettlement[];
  readonly flags: readonly Flag[];
}

const figure = (text: string): Decimal => decimalFromText(text) ?? zero;
const thousandth = ratioFromText('0.001');

const parties = [
  ['site', 'siteAssay'],
  ['other', 'otherAssay'],
  ['umpire', 'umpireAssay'],
] as const;

/** Figures that are not what their assay comes to, rounded once to the places they were written with. */
function differing(reading: Reading<'settlement'>, bars: Bars): Flag[] {
  return parties.flatMap(([party, assay]): Flag[] => {
    const [stated, id] = [reading.body[party], reading.body[assay]];
    const gold = id === undefined ? null : (bars.assays.get(id)?.gold ?? null);
    if (stated === undefined || !gold) return [];
    const written = figure(stated);
    const { n, d } = gold.permille;
    const once = divided({ digits: n, places: 0 }, { digits: d, places: 0 }, written.places);
    return compare(once, written) === 0 ? [] : [flag('settlement-differs', reading.id, { party, stated })];
  });
}

const fineBy = (bar: Bar | undefined, settled: Settlement['settled']): Ratio | null =>
  settled && bar ? timesRatio(timesRatio(asRatio(bar.weighed.grams), settled), thousandth) : null;

const known = new WeakMap<Current, Settlements>();

/** Every settlement that stands. */
export function settlementsOf(book: { readonly current: Current; readonly registers: Registers }): Settlements {
  const before = known.get(book.current);
  if (before) return before;
  const bars = barsOf(book);
  const readings = book.current.of('settlement');
  const last = new Map(readings.map((r) => [r.body.bar, r.id]));
  const first = new Set<string>();
  const flags: Flag[] = [];
  const all = readings.map((reading): BarSettlement => {
    const { bar, site, other, limit, umpire, rule, siteSilver, otherSilver, silverLimit, umpireSilver } = reading.body;
    const settled = settle({
      site: figure(site),
      other: figure(other),
      limit: figure(limit),
      umpire: umpire === undefined ? undefined : figure(umpire),
      rule,
    });
    const silver =
      siteSilver === undefined || otherSilver === undefined || silverLimit === undefined
        ? null
        : settle({
            site: figure(siteSilver),
            other: figure(otherSilver),
            limit: figure(silverLimit),
            umpire: umpireSilver === undefined ? undefined : figure(umpireSilver),
            rule,
          });
    const poured = bars.all.get(bar);
    const label = poured?.label ?? '';
    if (settled.settled === null) flags.push(flag('umpire-needed', reading.id, { label }));
    if (silver && silver.settled === null) flags.push(flag('silver-umpire-needed', reading.id, { label }));
    if (first.has(bar)) flags.push(flag('settled-twice', reading.id, { label }));
    first.add(bar);
    flags.push(...differing(reading, bars));
    return {
      ...settled,
      reading,
      bar,
      fineGold: fineBy(poured, settled.settled),
      silver,
      fineSilver: fineBy(poured, silver?.settled ?? null),
      counts: last.get(bar) === reading.id,
    };
  });
  const made: Settlements = { all, flags };
  known.set(book.current, made);
  return made;
}
