/**
 * Bars: each poured by a melt out of sponges, earlier bars and other metal; what it holds by its assays or by its parts; and what became of it.
 * Joined and re-melted bars weigh in by mass, never by the plain mean. A bar says nothing of where it is kept. Sources: methods.md 5.1; practice.md W12.
 */
import { type Decimal, sum } from '../decimal.ts';
import { exactly, type Measured, scaled, total } from '../measured.ts';
import { asRatio, minusRatio, nought, over, plusRatio, type Ratio, ratioFromText, timesRatio, toDouble } from '../ratio.ts';
import { compareMoments } from '../time.ts';
import { type AssayRead, overWhole, readAssays } from './assays.ts';
import { barPieces } from './bar-pieces.ts';
import type { Current, Reading } from './current.ts';
import { type BarFineness, type FineMetal, fineMetal, finenessFrom } from './fineness.ts';
import { type Flag, flag } from './flags.ts';
import type { Registers } from './registers.ts';
import { type Weighed, weighedFrom } from './weights.ts';

export type BarFate = 'here' | 'left' | 'melted';

export interface Bar {
  /** The melt's entry, a stroke, its key there. */
  readonly id: string;
  /** Its stamped number. */
  readonly label: string;
  readonly melt: Reading<'melt'>;
  readonly weighed: Weighed;
  /** What its melt was made of. */
  readonly from: {
    readonly charges: readonly string[];
    readonly bars: readonly string[];
    readonly other: readonly string[];
  };
  readonly assays: readonly AssayRead[];
  readonly gold: BarFineness | null;
  readonly silver: BarFineness | null;
  /** What is neither; negative where the two are over the whole. Null while one is not known. */
  readonly base: Ratio | null;
  readonly fineGold: FineMetal | null;
  readonly fineSilver: FineMetal | null;
  readonly fate: BarFate;
  /** Entries that took it away or brought it back, in order. */
  readonly moves: readonly Reading[];
}

export interface Bars {
  readonly all: ReadonlyMap<string, Bar>;
  readonly assays: ReadonlyMap<string, AssayRead>;
  readonly flags: readonly Flag[];
}

interface Known {
  readonly current: Current;
  readonly registers: Registers;
}

const thousand = ratioFromText('1000');
const onlyErrors = (value: Measured, factor: number): Measured => ({ ug: 0, parts: scaled(value, factor).parts });

class BarReader {
  readonly flags: Flag[] = [];
  readonly assays: ReadonlyMap<string, AssayRead>;
  readonly #book: Known;
  readonly #found = new Map<string, Bar>();
  readonly #assaysOf = new Map<string, AssayRead[]>();
  readonly #movesOf = new Map<string, Reading[]>();
  readonly #asked = new Set<string>();

  constructor(book: Known) {
    this.#book = book;
    this.assays = readAssays(book.current);
    for (const assay of this.assays.values()) gather(this.#assaysOf, assay.reading.body.bar, assay);
    for (const reading of book.current.of('transfer')) gather(this.#movesOf, reading.body.bar, reading);
    for (const reading of book.current.of('melt'))
      for (const piece of reading.body.added ?? []) gather(this.#movesOf, piece.bar, reading);
  }

  weigh(weight: Weighed['as'], reading: Reading, path: string): Weighed {
    return weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, this.#book.registers);
  }

  /** A bar by its id. Null where it is not here, and where a ring of melts asks for itself. */
  bar(id: string): Bar | null {
    const known = this.#found.get(id);
    if (known) return known;
    const poured = barPieces(this.#book.current).get(id);
    if (!poured || this.#asked.has(id)) return null;
    this.#asked.add(id);
    const { melt, label, index, piece } = poured;
    const weighed = this.weigh(piece.weight, melt, `bars[${index}].weight`);
    const assays = this.#assaysOf.get(id) ?? [];
    const parts = (metal: 'gold' | 'silver') => this.#byParts(metal, melt, weighed);
    const [goldParts, silverParts] = [parts('gold'), parts('silver')];
    const gold = finenessFrom('gold', assays, goldParts?.fineness ?? null);
    const silver = finenessFrom('silver', assays, silverParts?.fineness ?? null);
    const fineOf = (f: BarFineness | null, byParts: Pooled | null): FineMetal | null =>
      f === null
        ? null
        : f.class === 'by-parts' && byParts
          ? byParts.fine
          : fineMetal(weighed.grams, weighed.net, weighed.uKnown, f);
    const moves = (this.#movesOf.get(id) ?? []).toSorted((a, b) => compareMoments(a.happened, b.happened));
    const added = melt.body.added ?? [];
    const bar: Bar = {
      id,
      label,
      melt,
      weighed,
      from: {
        charges: melt.body.sponges.map(({ charge }) => charge),
        bars: added.flatMap((piece) => piece.bar ?? []),
        other: added.flatMap((piece) => (piece.bar === undefined ? [piece.label] : [])),
      },
      assays,
      gold,
      silver,
      base: gold && silver ? minusRatio(minusRatio(thousand, gold.permille), silver.permille) : null,
      fineGold: fineOf(gold, goldParts),
      fineSilver: fineOf(silver, silverParts),
      fate: this.#fate(label, moves),
      moves,
    };
    this.#found.set(id, bar);
    const own = gold && silver && gold.assays.join() !== silver.assays.join() && overWhole(gold, silver);
    const last = silver?.assays.at(-1) ?? gold?.assays.at(-1);
    if (own && last !== undefined) this.flags.push(flag('bar-over-1000', last, { label }));
    return bar;
  }

  #fate(label: string, moves: readonly Reading[]): BarFate {
    let fate: BarFate = 'here';
    for (const move of moves) {
      const into = move.kind === 'melt';
      const out = !into && (move as Reading<'transfer'>).body.way === 'out';
      if (into && fate === 'left') this.flags.push(flag('bar-left-melted', move.id, { label }));
      if (out && fate !== 'here') this.flags.push(flag('bar-left-twice', move.id, { label }));
      fate = into ? 'melted' : out ? 'left' : fate === 'melted' ? 'melted' : 'here';
    }
    return fate;
  }

  /** Fine metal that this bar has of bars melted together and nothing else; null where anything unassayed went in. */
  #byParts(metal: 'gold' | 'silver', melt: Reading<'melt'>, weighed: Weighed): Pooled | null {
    const { sponges, added = [], bars, samples = [], prills } = melt.body;
    if (sponges.length > 0 || added.length === 0) return null;
    const inside = added.map((piece, i) => {
      const earlier = piece.bar === undefined ? null : this.bar(piece.bar);
      const fineness = earlier?.[metal] ?? null;
      if (!fineness) return null;
      const w = this.weigh(piece.weight, melt, `added[${i}].weight`);
      return { fineness, w, fine: fineMetal(w.grams, w.net, w.uKnown, fineness) };
    });
    const known = inside.filter((x) => x !== null);
    if (known.length < inside.length) return null;
    const out = [
      ...bars.map(({ weight }, i) => this.weigh(weight, melt, `bars[${i}].weight`)),
      ...samples.map(({ weight }, i) => this.weigh(weight, melt, `samples[${i}].weight`)),
      ...(prills ? [this.weigh(prills, melt, 'prills')] : []),
    ];
    return pooled(known, out, weighed);
  }
}

interface Pooled {
  readonly fineness: BarFineness;
  readonly fine: FineMetal;
}

/** Shares what went in among what came out by mass: the shares make the whole again, and so do their errors. */
function pooled(
  inside: readonly { readonly fineness: BarFineness; readonly w: Weighed; readonly fine: FineMetal }[],
  out: readonly Weighed[],
  bar: Weighed,
): Pooled | null {
  const mass: Decimal = sum(out.map((w) => w.grams));
  const whole = inside.reduce<Ratio>((s, { fine }) => plusRatio(s, fine.grams), nought);
  const perGram = over(whole, asRatio(mass));
  if (!perGram) return null;
  const net = total(inside.map(({ fine }) => fine.net));
  const outNet = total(out.map((w) => w.net));
  const share = bar.net.ug / outNet.ug;
  const uKnown = inside.every(({ fine }) => fine.uKnown) && out.every((w) => w.uKnown);
  const fine = total([
    scaled(net, share),
    onlyErrors(bar.net, toDouble(perGram)),
    onlyErrors(outNet, -share * toDouble(perGram)),
  ]);
  return {
    fineness: {
      permille: timesRatio(perGram, thousand),
      parts: scaled({ ug: 0, parts: net.parts }, bar.net.ug === 0 ? 0 : 1000 / outNet.ug).parts,
      uKnown,
      samplingKnown: inside.every(({ fineness }) => fineness.samplingKnown),
      class: 'by-parts',
      assays: [...new Set(inside.flatMap(({ fineness }) => fineness.assays))],
      indicative: inside.some(({ fineness }) => fineness.indicative),
    },
    fine: { grams: timesRatio(asRatio(bar.grams), perGram), net: fine, uKnown },
  };
}

function gather<T>(lists: Map<string, T[]>, key: string | undefined, item: T): void {
  if (key === undefined) return;
  const list = lists.get(key);
  if (list) list.push(item);
  else lists.set(key, [item]);
}

const read = new WeakMap<Current, Bars>();

/** All bars of the book in the order they were poured, with its assays. Worked out once for a reading of the book. */
export function barsOf(book: Known): Bars {
  const before = read.get(book.current);
  if (before) return before;
  const reader = new BarReader(book);
  const all = new Map<string, Bar>();
  for (const id of barPieces(book.current).keys()) {
    const bar = reader.bar(id);
    if (bar) all.set(id, bar);
  }
  const ofAssays = [...reader.assays.values()].flatMap((assay): Flag[] => [
    ...(assay.over1000 ? [flag('assay-over-1000', assay.id)] : []),
    ...(assay.apart === true ? [flag('replicates-apart', assay.id, { limit: assay.reading.body.limit ?? '' })] : []),
    ...(assay.fire?.findings.includes('no-silver-loss') ? [flag('silver-uncorrected', assay.id)] : []),
    ...(assay.class === 'unproofed' ? [flag('assay-no-proofs', assay.id)] : []),
    ...(assay.density?.findings ?? []).map((finding) => flag('density-outside', assay.id, { finding })),
  ]);
  const bars: Bars = { all, assays: reader.assays, flags: [...reader.flags, ...ofAssays] };
  read.set(book.current, bars);
  return bars;
}

/** Fine metal of several bars together, or null where one of them has none. */
export function fineOf(bars: readonly Bar[], metal: 'fineGold' | 'fineSilver'): FineMetal | null {
  const all = bars.map((bar) => bar[metal]);
  const known = all.filter((f) => f !== null);
  if (known.length < all.length || all.length === 0) return null;
  return {
    grams: known.reduce<Ratio>((s, f) => plusRatio(s, f.grams), nought),
    net: known.length === 0 ? exactly(0) : total(known.map((f) => f.net)),
    uKnown: known.every((f) => f.uKnown),
  };
}
