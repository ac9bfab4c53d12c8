/**
 * Gold that is known by an out-turn alone: amalgam and sponge that were refined elsewhere, and bars that went away without an assay of the site's own. Where
 * the site has its own figure, that one stands in the yields and the out-turn beside it. Source: practice.md 1 (16 to 19).
 */
import { exactly, type Measured } from '../measured.ts';
import { over, ratioFromText, timesRatio, toDouble } from '../ratio.ts';
import type { Book } from './book.ts';
import type { FineMetal } from './fineness.ts';
import { type OutTurn, outTurnsOf } from './out-turns.ts';
import { weighedFrom } from './weights.ts';
import type { Metal } from './yielded.ts';

export interface Refined {
  readonly metal: Metal;
  /** What was sent, with its weight: a lot, or a charge's sponge. */
  readonly from: readonly { readonly lot: string | null; readonly charge: string | null; readonly ug: number }[];
}

export interface OutTurnYields {
  readonly refined: readonly Refined[];
  /** Fine gold of bars sent alone, by bar. */
  readonly bars: ReadonlyMap<string, FineMetal>;
}

const thousand = ratioFromText('1000');

/** Bullion as they had it: after melting, or fine gold at its fineness; null where neither can be told. */
function grossOf({ melted, gold }: OutTurn): { net: Measured; uKnown: boolean } | null {
  if (melted) return { net: melted.net, uKnown: melted.uKnown };
  const grams = gold.theirs && gold.permille ? over(timesRatio(gold.theirs.grams, thousand), gold.permille) : null;
  return grams && { net: exactly(Math.round(toDouble(grams) * 1e6)), uKnown: false };
}

/** The last out-turn of a transfer stands; an earlier one of the same is left out. */
export function outTurnYields(book: Book): OutTurnYields {
  const { all } = outTurnsOf(book);
  const last = new Map(all.flatMap((o) => o.transfers.map((t) => [t.id, o.reading.id] as const)));
  const refined: Refined[] = [];
  const bars = new Map<string, FineMetal>();
  for (const outTurn of all) {
    const { transfers, gold, reading } = outTurn;
    if (!gold.theirs || transfers.some((t) => last.get(t.id) !== reading.id)) continue;
    const [only] = transfers;
    if (transfers.length === 1 && only?.body.bar !== undefined) bars.set(only.body.bar, gold.theirs);
    const from = transfers.map((t) => {
      const weighed = t.body.weight
        ? weighedFrom(t.body.weight, { entry: t.id, path: 'weight', at: t.happened }, book.registers).net.ug
        : undefined;
      const lot = t.body.what === 'amalgam' ? (t.body.lot ?? null) : null;
      const charge = t.body.what === 'sponge' ? (t.body.charge ?? null) : null;
      const sponge = charge === null ? undefined : book.charges.all.get(charge)?.firings.at(-1)?.sponges.get(charge)?.net.ug;
      const ug = weighed ?? (lot === null ? sponge : book.lots.all.get(lot)?.net.ug) ?? 0;
      return { lot, charge, ug };
    });
    // mixed with bars, it cannot be told how much came of which
    if (from.length === 0 || from.some(({ lot, charge, ug }) => (lot === null && charge === null) || !(ug > 0))) continue;
    const gross = grossOf(outTurn);
    if (!gross) continue;
    refined.push({
      metal: {
        gross: gross.net,
        grossUKnown: gross.uKnown,
        fine: gold.theirs.net,
        fineUKnown: gold.theirs.uKnown,
        outTurn: true,
      },
      from,
    });
  }
  return { refined, bars };
}
