/**
 * Movements: mercury from one place to another, each with its entry. The whole account is a sum over them, so nothing is ever booked on one side
 * only. What an entry moves is worked out as known today: a lot is worth what its run showed, whenever the run was.
 */
import type { Measured } from '../measured.ts';
import { minutesOf } from '../time.ts';
import { type Charges, firedAt } from './charges.ts';
import type { Condenser } from './condenser.ts';
import type { Current, Reading } from './current.ts';
import type { Flag } from './flags.ts';
import { mercuryIn } from './gold.ts';
import type { Lots } from './lots.ts';
import { circuitMovements } from './movements/circuit.ts';
import { countMovements } from './movements/count.ts';
import type { Bound, Gathering, Movement } from './movements/gathering.ts';
import { runMovements } from './movements/retorting.ts';
import { storeMovements } from './movements/store.ts';
import { workMovements, worksOf } from './movements/work.ts';
import { type Registers, stateAt } from './registers.ts';
import type { Run } from './runs.ts';
import { type LotMercury, lotMercuries, type RunMercury, runMercury } from './shares.ts';
import { residualAt, type Share } from './site-figures.ts';
import { type Weighed, weighedFrom } from './weights.ts';

export interface Movements {
  /** In order of happening. */
  readonly all: readonly Movement[];
  readonly bounds: readonly Bound[];
  readonly runMercuries: ReadonlyMap<string, RunMercury>;
  readonly lotMercuries: ReadonlyMap<string, LotMercury>;
  /** What is awkward about the weights read here: each once. */
  readonly flags: readonly Flag[];
}

/** All movements of the book. */
export function readMovements(book: {
  current: Current;
  registers: Registers;
  lots: Lots;
  charges: Charges;
  runs: readonly Run[];
  condensers: ReadonlyMap<string, Condenser>;
}): Movements {
  // as it was set when the run was fired last; while it is open, when it was charged
  const residualOf = (run: Run): Share =>
    residualAt(book.current, run.last ? firedAt(run.last.firing) : (run.charges[0]?.reading.happened ?? ''));
  const runMercuries = new Map(
    book.runs.flatMap((run) => {
      const mercury = runMercury(run, residualOf(run));
      return mercury ? [[run.id, mercury] as const] : [];
    }),
  );
  const flags = new Map<string, Flag>();
  const weigh = (weight: Weighed['as'], reading: Reading, path: string): Weighed => {
    const got = weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers);
    for (const f of got.flags) flags.set(`${f.entry} ${path} ${f.code}`, f);
    return got;
  };
  const inVessel = (net: Measured, vessel: string, at: string): Measured => {
    const thing = book.registers.vessel.get(vessel);
    return mercuryIn(net, thing ? stateAt(thing, at).body.mercury : undefined);
  };
  const works = worksOf(book.current, weigh, inVessel);
  const gathering: Gathering = {
    ...book,
    runMercuries,
    lotMercuries: lotMercuries(book.lots, book.runs, runMercuries, works, residualOf),
    movements: [],
    bounds: [],
    flags: [],
    weigh,
    inVessel,
  };
  storeMovements(gathering);
  circuitMovements(gathering);
  workMovements(gathering, works);
  runMovements(gathering);
  countMovements(gathering, sortByTime(gathering.movements));
  sortByTime(gathering.movements);
  return {
    all: gathering.movements.filter((m) => m.mercury.ug !== 0 || m.mercury.parts.size > 0),
    bounds: gathering.bounds,
    runMercuries,
    lotMercuries: gathering.lotMercuries,
    flags: [...flags.values(), ...gathering.flags],
  };
}

/** Sorts in place; each moment is read once, not at every comparison. Answers the moments in that order, in minutes. */
function sortByTime(movements: Movement[]): readonly number[] {
  const rows = movements.map((movement) => ({ movement, at: minutesOf(movement.at) ?? 0 }));
  rows.sort((a, b) => a.at - b.at);
  const moments: number[] = [];
  for (const { movement, at } of rows) {
    movements[moments.length] = movement;
    moments.push(at);
  }
  return moments;
}
