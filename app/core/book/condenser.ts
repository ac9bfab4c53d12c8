/**
 * A retort's own condenser and pipe as a place that holds mercury. What a run is short of goes there first, but never more than was ever brushed
 * out of it; what is above that is lost at the retort at once. A later run that gives more than it should draws on it. Brushing out settles it.
 * Runs are judged alone and together since the last brushing out (design: reckoning of hold-up; cases 2). A gap that may be water is not put to the
 * book, as it is not moved: it stands beside it, between nothing and the gap (cases 5).
 */
import { compareMoments, dayOf } from '../time.ts';
import type { Registers } from './registers.ts';
import { type Run, runAt } from './runs.ts';
import { waterOrMercuryUg } from './shares.ts';
import { weighedFrom } from './weights.ts';

/** One step of the condenser's book, in micrograms. */
export interface CondenserStep {
  readonly at: string;
  /** The run, or the entry of the brushing out. */
  readonly by: string;
  readonly what: 'run' | 'brushed';
  /** The run's gap as far as it is mercury, or what the brushing gave (negative: it came out). */
  readonly ug: number;
  /** Of the run's gap, what is water or mercury and nobody can tell which: not on the book. */
  readonly cannotTellUg: number;
  /** On the condenser's book after this step. */
  readonly heldUg: number;
  /** Lost at the retort by this step: above what it can hold, or missing at brushing. */
  readonly lostUg: number;
  /** More than the book held: it came from nowhere the book knows. */
  readonly unexplainedUg: number;
}

export interface Condenser {
  readonly retort: string;
  readonly steps: readonly CondenserStep[];
  /** Steps by the run or the brushing out that made them. */
  readonly stepBy: ReadonlyMap<string, CondenserStep>;
  readonly heldUg: number;
  /** The most ever brushed out at once. */
  readonly mostUg: number;
  /** Sum of the gaps of the runs since the last brushing out as far as they are mercury, and how many they were. */
  readonly togetherUg: number;
  /** Sum of what is water or mercury in those gaps: the runs together are short of between `togetherUg` and this much more. */
  readonly cannotTellUg: number;
  readonly runsSince: number;
}

/** The condenser's book of every retort that has a run or was brushed. */
export function readCondensers(runs: readonly Run[], registers: Registers): ReadonlyMap<string, Condenser> {
  const condensers = new Map<string, Condenser>();
  for (const retort of registers.retort.values()) {
    const brushings = retort.states.flatMap((state) =>
      state.body.brushed
        ? [
            {
              at: `${state.body.brushed.on}T00:00+00:00`,
              day: state.body.brushed.on,
              by: state.entry,
              ug: weighedFrom(state.body.brushed.got, { entry: state.entry, path: 'brushed.got', at: state.from }, registers).net
                .ug,
            },
          ]
        : [],
    );
    // a restated register repeats its last brushing: one day counts once
    const unique = brushings.filter((b, i) => brushings.findIndex((other) => other.day === b.day) === i);
    const mostUg = Math.max(0, ...unique.map((b) => b.ug));
    const events = [
      ...unique.map((b) => ({ at: b.at, day: b.day, by: b.by, what: 'brushed' as const, ug: b.ug, cannotTellUg: 0 })),
      ...runs
        .filter((run) => run.retort === retort.id && run.last?.gap && run.awaits.length === 0)
        .map((run) => {
          const open = waterOrMercuryUg(run);
          return {
            at: runAt(run),
            day: dayOf(runAt(run)),
            by: run.id,
            what: 'run' as const,
            ug: open === null ? (run.last?.gap?.net.ug ?? 0) : 0,
            cannotTellUg: open ?? 0,
          };
        }),
    ].sort((a, b) =>
      a.day < b.day ? -1 : a.day > b.day ? 1 : a.what === b.what ? compareMoments(a.at, b.at) : a.what === 'run' ? -1 : 1,
    );
    let heldUg = 0;
    let togetherUg = 0;
    let cannotTellUg = 0;
    let runsSince = 0;
    const steps = events.map((event): CondenserStep => {
      if (event.what === 'run') {
        togetherUg += event.ug;
        cannotTellUg += event.cannotTellUg;
        runsSince += 1;
        const next = heldUg + event.ug;
        heldUg = Math.min(Math.max(next, 0), Math.max(mostUg, 0));
        const { at, by, what, ug } = event;
        return {
          at,
          by,
          what,
          ug,
          cannotTellUg: event.cannotTellUg,
          heldUg,
          lostUg: Math.max(0, next - heldUg),
          unexplainedUg: Math.min(0, next),
        };
      }
      const rest = heldUg - event.ug;
      heldUg = 0;
      togetherUg = 0;
      cannotTellUg = 0;
      runsSince = 0;
      return {
        at: event.at,
        by: event.by,
        what: event.what,
        ug: -event.ug,
        cannotTellUg: 0,
        heldUg,
        lostUg: Math.max(0, rest),
        unexplainedUg: Math.min(0, rest),
      };
    });
    if (steps.length > 0)
      condensers.set(retort.id, {
        retort: retort.id,
        steps,
        stepBy: new Map(steps.map((step) => [step.by, step])),
        heldUg,
        mostUg,
        togetherUg,
        cannotTellUg,
        runsSince,
      });
  }
  return condensers;
}
