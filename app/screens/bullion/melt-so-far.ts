/** What stands in the form of a melt, worked out while it is typed, by the book's own reckoning: what went in, what came out, the shrinkage and its bounds. */
import type { Book } from '../../core/book/book.ts';
import { emptySum, joined, lessSum, type Sum } from '../../core/book/charges.ts';
import type { Weighed } from '../../core/book/weights.ts';
import { type MeltBounds, type MeltFigures, meltBounds, meltFigures } from '../../core/melt.ts';
import { rowWeighing, typedWeight } from '../retort/typed.ts';
import type { WeighingEntry } from '../shared/weighing-entry.ts';
import { addedRows, type MeltValues, piecesOf, readingOf, takenOf } from './melt-plan.ts';

export interface MeltSoFar {
  readonly into: Sum;
  readonly out: Sum;
  readonly shrinkage: Sum;
  readonly prills: Weighed | null;
  /** Null while nothing that went in, or nothing that came out, is weighed, or a ticked sponge was weighed nowhere. */
  readonly figures: MeltFigures | null;
  readonly bounds: MeltBounds | null;
  /** More came out than went in. */
  readonly over: boolean;
  /** A ticked sponge was weighed nowhere. */
  readonly unweighed: boolean;
}

const together = (all: readonly Weighed[]): Sum => all.reduce<Sum>(joined, emptySum);

/** `at`: when it was poured, as a moment. */
export function meltSoFar(book: Book, v: MeltValues, at: string): MeltSoFar {
  const { registers } = book;
  const typed = (entry: WeighingEntry, path: string) => typedWeight(entry, path, at, registers);
  const sponges = takenOf(v.taken, 'sponge').map((row, i) => {
    const now = typed(rowWeighing(row, v.scale), `sponges[${i}].weight`);
    return (
      now ??
      book.charges.all
        .get(row.of)
        ?.firings.findLast((f) => f.sponges.has(row.of))
        ?.sponges.get(row.of) ??
      null
    );
  });
  const added = addedRows(v).flatMap(
    (row, i) => typed('what' in row ? readingOf(row, v.scale) : rowWeighing(row, v.scale), `added[${i}].weight`) ?? [],
  );
  const pieces = (list: 'bars' | 'samples') =>
    piecesOf(v[list]).flatMap((row, i) => typed(rowWeighing(row, v.scale), `${list}[${i}].weight`) ?? []);
  const [bars, samples] = [pieces('bars'), pieces('samples')];
  const known = sponges.filter((w) => w !== null);
  const unweighed = known.length < sponges.length;
  const prills = typed(v.prills, 'prills');
  const into = together([...known, ...added]);
  const out = together([...bars, ...samples]);
  const told = !unweighed && known.length + added.length > 0 && bars.length + samples.length > 0;
  const grams = (list: readonly Weighed[]) => list.map((w) => w.grams);
  const figures = told
    ? meltFigures({
        sponge: grams(known),
        added: grams(added),
        bars: grams(bars),
        samples: grams(samples),
        prills: prills?.grams,
      })
    : null;
  return {
    into,
    out,
    shrinkage: lessSum(into, out),
    prills,
    figures,
    bounds: figures && meltBounds(figures, prills?.grams),
    over: figures?.findings.includes('bars-over-charge') ?? false,
    unweighed,
  };
}
