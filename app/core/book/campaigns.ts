/**
 * Yield by campaign: from one general clean-up to the next. What a general clean-up finds, and the gold of scale and pan, came of the whole campaign's
 * ore and belongs to no month; earlier months are restated only when asked, and the restated figure stands beside the first. Source: practice.md W10.
 */
import { total } from '../measured.ts';
import { shareOut } from '../sharing.ts';
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { addedOre, endsCampaign, gathering, type Ore, ofCampaign, oreOf, perTonneOf, type Rate, rateOf } from './ore-through.ts';
import { yieldedByMaker } from './yielded.ts';
import { type CleanUpYield, cleanUpYields } from './yields.ts';

/**
 * Why a campaign has no yield. `ore-missing`: a clean-up in it does not say what was crushed for it. `ore-contradicts`: its general clean-up, which stands for
 * the whole, states less ore than the clean-ups before it together.
 */
export type NoCampaignYield = 'nothing-crushed' | 'ore-missing' | 'ore-contradicts' | 'not-melted' | 'partly-melted';

export interface Campaign {
  /** The general or final clean-up that ends it; null while it goes on. */
  readonly endedBy: string | null;
  /** Clean-ups of the run of work, and what is late: the general clean-up and plate work. */
  readonly routine: readonly CleanUpYield[];
  readonly late: readonly string[];
  readonly oreUg: number | null;
  readonly grossUg: number;
  /** Of it, what the general clean-up, scale and pan gave. */
  readonly lateUg: number;
  readonly fineUg: number | null;
  readonly gPerTonne: number | null;
  readonly fineGPerTonne: number | null;
  /** The two yields with one standard uncertainty each, of weighings, assays and ore; null where the figure is. */
  readonly grossRate: Rate | null;
  readonly fineRate: Rate | null;
  /** What the routine clean-ups gave of the gross, as a share. */
  readonly routineShare: number | null;
  readonly why: NoCampaignYield | null;
}

/** Ore that a general clean-up says it stands for. */
const statedOre = (end: Reading | undefined): Ore | null =>
  end?.kind === 'clean-up' ? oreOf((end as Reading<'clean-up'>).body.ore, end.id) : null;

/** All campaigns in order; the last may still go on. */
export function campaigns(book: Book): readonly Campaign[] {
  const yields = new Map(cleanUpYields(book).map((y) => [y.cleanUp, y]));
  const makers: Reading[] = [...gathering(book), ...book.current.of('plate-work')].sort((a, b) =>
    compareMoments(a.happened, b.happened),
  );
  const groups: Reading[][] = [[]];
  for (const reading of makers) {
    groups.at(-1)?.push(reading);
    if (endsCampaign(reading)) groups.push([]);
  }
  const yielded = yieldedByMaker(book);
  const waiting = new Set([...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe').map((lot) => lot.madeBy));
  return groups
    .filter((group) => group.some((r) => r.kind !== 'plate-work'))
    .map((group): Campaign => {
      const last = group.at(-1);
      const end = last && endsCampaign(last) ? last : undefined;
      const isLate = (r: Reading) => r.kind === 'plate-work' || ofCampaign(r);
      const routine = group.flatMap((r) => (isLate(r) ? [] : (yields.get(r.id) ?? [])));
      const late = group.filter(isLate).map((r) => r.id);
      // what the general clean-up says stands for the whole; else the months add up, and none may be missing
      const months = routine.map((y) => y.oreUg);
      const stated = statedOre(end);
      const contradicts = stated !== null && months.reduce<number>((s, m) => s + (m ?? 0), 0) > stated.mass.ug;
      const ore = stated ?? (months.includes(null) ? null : addedOre(routine.flatMap((y) => (y.ore === null ? [] : y.ore))));
      const oreUg = ore?.mass.ug ?? null;
      const got = group.flatMap((r) => yielded.get(r.id) ?? []);
      const grossUg = got.reduce((s, y) => s + y.grossUg, 0);
      const lateUg = late.reduce((s, id) => s + (yielded.get(id)?.grossUg ?? 0), 0);
      const fineUg = got.some((y) => y.fineUg === null) ? null : got.reduce((s, y) => s + (y.fineUg ?? 0), 0);
      const why: NoCampaignYield | null =
        oreUg === null
          ? months.every((m) => m === null)
            ? 'nothing-crushed'
            : 'ore-missing'
          : oreUg === 0
            ? 'nothing-crushed'
            : contradicts
              ? 'ore-contradicts'
              : got.length === 0
                ? 'not-melted'
                : group.some((r) => waiting.has(r.id))
                  ? 'partly-melted'
                  : null;
      const fines = got.flatMap((y) => y.fine ?? []);
      const rate = (metal: 'gross' | 'fine', known: 'grossUKnown' | 'fineUKnown'): Rate | null =>
        why !== null || ore === null || (metal === 'fine' && fines.length < got.length)
          ? null
          : rateOf(
              metal === 'fine' ? total(fines) : total(got.map((y) => y.gross)),
              got.every((y) => y[known]),
              ore,
            );
      const [grossRate, fineRate] = [rate('gross', 'grossUKnown'), rate('fine', 'fineUKnown')];
      return {
        endedBy: end?.id ?? null,
        routine,
        late,
        oreUg,
        grossUg,
        lateUg,
        fineUg,
        gPerTonne: grossRate?.gPerTonne ?? null,
        fineGPerTonne: fineRate?.gPerTonne ?? null,
        grossRate,
        fineRate,
        routineShare: grossUg > 0 ? (grossUg - lateUg) / grossUg : null,
        why,
      };
    });
}

export interface RestatedMonth {
  readonly cleanUp: string;
  /** As first stated; null where there was no figure. */
  readonly first: number | null;
  /** Its share of what came late, micrograms: by ore. */
  readonly lateUg: number;
  readonly restated: number | null;
}

/** Months of a campaign restated with the late gold spread by ore; nothing unless every month states its ore. */
export function restated({ routine, lateUg }: Campaign): readonly RestatedMonth[] {
  if (routine.some((y) => y.oreUg === null)) return [];
  const parts = shareOut(
    lateUg,
    routine.map((y) => y.oreUg ?? 0),
  );
  return routine.map((y, i) => ({
    cleanUp: y.cleanUp,
    first: y.gPerTonne,
    lateUg: parts[i] ?? 0,
    restated: y.gPerTonne !== null && y.barUg !== null && y.oreUg ? perTonneOf(y.barUg + (parts[i] ?? 0), y.oreUg) : null,
  }));
}
