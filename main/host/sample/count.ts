/**
 * Stock-takes of the invented site: every place the book asks about at that moment is answered as a person would answer it. Vessels are weighed, seals
 * read, the circuit is estimated by named methods whose errors are drawn once for all (shared) and once for every count (own); the book's own amounts
 * are never written into an answer.
 */
import { readBook } from '../../../app/core/book/book.ts';
import { type CountPlace, countListOf } from '../../../app/core/book/count-list.ts';
import { placeParts } from '../../../app/core/book/places.ts';
import { type Entry, formatNumber } from '../../../app/core/entry.ts';
import type { CircuitPart } from '../../../app/core/kinds/mercury.ts';
import type { CountLine } from '../../../app/core/kinds/stock-take.ts';
import { beakerG, dishG } from './site.ts';
import { swappedFigures, type Told } from './story.ts';
import type { Work } from './work.ts';

/** How each part is estimated, and by how much that method errs every time: nobody on the site knows it. */
const methods: Readonly<Record<Exclude<CircuitPart, 'pan'>, { readonly method: string; readonly bias: number }>> = {
  plates: { method: 'scraped square, by area', bias: 1.06 },
  mortar: { method: 'panned sand of the mortar box', bias: 0.95 },
  trap: { method: 'drawn off and measured back', bias: 1.03 },
};

/** Standard uncertainties as shares of an estimate: of the method, and of one use of it. */
const sharedU = 0.1;
const ownU = 0.07;

/** The entries told so far, for asking the book what is to be counted: their chain is made only when they are written. */
function entriesOf(told: readonly Told[]): Entry[] {
  return told.map(
    ({ draft, written }, i) =>
      ({ ...draft, format: formatNumber, desk: 'telling', n: i + 1, prev: '', written, hash: '' }) as Entry,
  );
}

/** The estimate of a part of the circuit: what is truly there, seen through the method. */
function estimate(work: Work, part: CircuitPart): Extract<CountLine, { how: 'estimated' }>['estimate'] {
  if (part === 'pan') return { mass: '0 g', method: 'no pan is set up' };
  const { method, bias } = methods[part];
  const seen = work.truth[part] * bias * work.story.scatter.between(0.9, 1.1);
  return { mass: `${Math.max(0, Math.round(seen))} g`, method, sharedU, ownU };
}

export interface CountMore {
  /** Flask 2 is shut under this seal after it was weighed. */
  readonly seal?: string;
  /** The vessel whose display is copied with two figures swapped. */
  readonly misread?: string;
}

/** The answer for one place. */
function answered(work: Work, { place, expected, seal }: CountPlace, more: CountMore): CountLine {
  const { story, site, truth } = work;
  const { kind, of } = placeParts(place);
  if (expected === 'sealed') return { how: 'sealed', place, seal: seal ?? '' };
  if (kind === 'circuit') return { how: 'estimated', place, estimate: estimate(work, of as CircuitPart) };
  if (of === site.flaskTwo)
    return {
      how: 'weighed',
      place,
      weight: story.weigh(site.platform, Math.round(truth.flaskTwo / 5) * 5, 3920, 0),
      ...(more.seal === undefined ? {} : { newSeal: more.seal }),
    };
  if (of === site.bottle) {
    const weight = work.read(truth.bottle, beakerG);
    return { how: 'weighed', place, weight: more.misread === of ? swappedFigures(weight) : weight };
  }
  if (of === site.strained) return { how: 'weighed', place, weight: work.read(truth.strained, dishG) };
  if (of === site.drum)
    return truth.drum > 0
      ? {
          how: 'estimated',
          place,
          estimate: { mass: `${truth.drum.toFixed(1)} g`, method: 'grab samples of the drum', sharedU: 0.5, ownU: 0.1 },
        }
      : { how: 'estimated', place, estimate: { mass: '0 g', method: 'looked into, empty' } };
  return { how: 'seen', place };
}

/** A count of the whole site. Answers its id. */
export function wholeCount(work: Work, day: string, clock: string, more: CountMore = {}): string {
  const { story } = work;
  const list = countListOf(readBook(entriesOf(story.inOrder())), `${day}T${clock}${story.offset}`);
  return story.tell('stock-take', day, clock, { scope: 'whole', lines: list.map((row) => answered(work, row, more)) });
}
