/** Every weight of a melt, worked out: sponges as weighed at the pot, or failing that at their firing; metal added, bars, samples, prills, slag. */
import type { Book } from '../../core/book/book.ts';
import type { Reading } from '../../core/book/current.ts';
import { type Weighed, weighedFrom } from '../../core/book/weights.ts';
import { type MeltFigures, meltFigures } from '../../core/melt.ts';
import { entryName } from '../../words/daybook-naming.ts';
import { commonWords } from '../../words/papers-common.ts';
import { meltPaper as words } from '../../words/papers-melt.ts';

export interface MeltSponge {
  readonly what: string;
  /** Null where it was weighed nowhere. */
  readonly weighed: Weighed | null;
  /** The firing whose weight stands in for it, and when that was; null where it was weighed at the melt. */
  readonly firing: Reading | null;
  readonly old: string | null;
}

export interface Piece {
  readonly label: string;
  readonly weighed: Weighed;
}

export interface MeltWeighed {
  readonly sponges: readonly MeltSponge[];
  readonly added: readonly Piece[];
  readonly bars: readonly Piece[];
  readonly samples: readonly Piece[];
  readonly prills: Weighed | null;
  readonly slag: Weighed | null;
  /** Names of charges whose sponge was weighed nowhere. */
  readonly missing: readonly string[];
  /** Shrinkage and net as the core reckons them; null while a sponge is missing. */
  readonly figures: MeltFigures | null;
}

export function meltWeighed(book: Book, reading: Reading<'melt'>): MeltWeighed {
  const { body, id, happened } = reading;
  const weigh = (weight: Weighed['as'], path: string) => weighedFrom(weight, { entry: id, path, at: happened }, book.registers);
  const pieces = (list: 'added' | 'bars' | 'samples'): Piece[] =>
    (body[list] ?? []).map(({ label, weight }, i) => ({ label, weighed: weigh(weight, `${list}[${i}].weight`) }));
  const sponges = body.sponges.map(({ charge, weight }, i): MeltSponge => {
    const of = commonWords.small(entryName(book, charge));
    if (weight) return { what: words.sponge(of), weighed: weigh(weight, `sponges[${i}].weight`), firing: null, old: null };
    const last = book.charges.all.get(charge)?.firings.findLast((f) => f.sponges.has(charge));
    return {
      what: words.spongeOld(of),
      weighed: last?.sponges.get(charge) ?? null,
      firing: last?.reading ?? null,
      old: last?.reading.happened ?? null,
    };
  });
  const missing = sponges.flatMap(({ weighed }, i) => (weighed ? [] : [entryName(book, body.sponges[i]?.charge ?? '')]));
  const [added, bars, samples] = [pieces('added'), pieces('bars'), pieces('samples')];
  const prills = body.prills ? weigh(body.prills, 'prills') : null;
  const grams = (list: readonly { readonly weighed: Weighed | null }[]) =>
    list.flatMap(({ weighed }) => (weighed ? [weighed.grams] : []));
  return {
    sponges,
    added,
    bars,
    samples,
    prills,
    slag: body.slag ? weigh(body.slag, 'slag') : null,
    missing,
    figures:
      missing.length > 0
        ? null
        : meltFigures({
            sponge: grams(sponges),
            added: grams(added),
            bars: grams(bars),
            samples: grams(samples),
            prills: prills?.grams,
          }),
  };
}
