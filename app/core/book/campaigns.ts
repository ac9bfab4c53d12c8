/**
 * Yield by campaign: from one general clean-up to the next. What a general clean-up finds, and the gold of scale and pan, came of the whole campaign's
 * ore and belongs to no month; earlier months are restated only when asked, and the restated figure stands beside the first. Source: practice.md W10.
 */
import { shareOut } from '../sharing.ts';
import { compareMoments } from '../time.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { gathering, oreOf, perTonneOf } from './ore-through.ts';
import { yieldedByMaker } from './yielded.ts';
import { type CleanUpYield, cleanUpYields } from './yields.ts';

/** Why a campaign has no yield. `ore-missing`: a clean-up in it does not say what was crushed for it. */
export type NoCampaignYield = 'nothing-crushed' | 'ore-missing' | 'not-melted' | 'partly-melted';

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
  /** What the routine clean-ups gave of the gross, as a share. */
  readonly routineShare: number | null;
  readonly why: NoCampaignYield | null;
}

const ends = (r: Reading): boolean =>
  r.kind === 'clean-up' && ['general', 'final'].includes((r as Reading<'clean-up'>).body.type);

/** Scale and pan gold alone is of the whole campaign too, and of no month. */
const afterwards = (r: Reading): boolean =>
  r.kind === 'clean-up' && (r as Reading<'clean-up'>).body.lots.every(({ source }) => source === 'scale' || source === 'pan');

/** Ore that a general clean-up says it stands for, micrograms. */
const statedOre = (end: Reading | undefined): number | null =>
  end?.kind === 'clean-up' ? (oreOf((end as Reading<'clean-up'>).body.ore, end.id)?.mass.ug ?? null) : null;

/** All campaigns in order; the last may still go on. */
export function campaigns(book: Book): readonly Campaign[] {
  const yields = new Map(cleanUpYields(book).map((y) => [y.cleanUp, y]));
  const makers: Reading[] = [...gathering(book), ...book.current.of('plate-work')].sort((a, b) =>
    compareMoments(a.happened, b.happened),
  );
  const groups: Reading[][] = [[]];
  for (const reading of makers) {
    groups.at(-1)?.push(reading);
    if (ends(reading)) groups.push([]);
  }
  const yielded = yieldedByMaker(book);
  const waiting = new Set([...book.lots.all.values()].filter((lot) => lot.fate === 'in-safe').map((lot) => lot.madeBy));
  return groups
    .filter((group) => group.some((r) => r.kind !== 'plate-work'))
    .map((group): Campaign => {
      const last = group.at(-1);
      const end = last && ends(last) ? last : undefined;
      const isLate = (r: Reading) => r.kind === 'plate-work' || r === end || afterwards(r);
      const routine = group.flatMap((r) => (isLate(r) ? [] : (yields.get(r.id) ?? [])));
      const late = group.filter(isLate).map((r) => r.id);
      // what the general clean-up says stands for the whole; else the months add up, and none may be missing
      const months = routine.map((y) => y.oreUg);
      const oreUg =
        statedOre(end) ??
        (months.includes(null) || months.length === 0 ? null : months.reduce<number>((s, m) => s + (m ?? 0), 0));
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
            : got.length === 0
              ? 'not-melted'
              : group.some((r) => waiting.has(r.id))
                ? 'partly-melted'
                : null;
      const figure = (ug: number | null) => (why === null && ug !== null && oreUg !== null ? perTonneOf(ug, oreUg) : null);
      return {
        endedBy: end?.id ?? null,
        routine,
        late,
        oreUg,
        grossUg,
        lateUg,
        fineUg,
        gPerTonne: figure(grossUg),
        fineGPerTonne: figure(fineUg),
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
