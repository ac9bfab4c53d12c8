/**
 * A movement traced down to what was read: the weights it rests on (gross, tare, scale, the scale's state and certificate then, what makes each weight's
 * uncertainty) and every error source of its amount with its share. It reckons nothing anew that the book has: what it shows adds up to it.
 */
import { toNumber, zero } from '../decimal.ts';
import { massFromText } from '../mass.ts';
import { type Measured, uOf } from '../measured.ts';
import type { Weight } from '../shapes.ts';
import { netOf, repeatability, spanG } from '../weighing.ts';
import type { Book } from './book.ts';
import type { Reading } from './current.ts';
import { type DoubtKind, doubtsOf } from './doubts.ts';
import type { Movement } from './movements/gathering.ts';
import { entryOfSource } from './sources.ts';
import { scaleData, type Weighed, weighedFrom } from './weights.ts';
import { weightsIn } from './weights-in.ts';

/** Which part of a weight's uncertainty: its method is named by it. */
export type ComponentKind =
  | 'repeatability'
  | 'division'
  | 'linearity'
  | 'certificate'
  | 'class'
  | 'volume'
  | 'temperature'
  | 'density'
  | 'stated';

export interface Component {
  readonly kind: ComponentKind;
  /** Standard, micrograms, without its sign. */
  readonly uUg: number;
}

/** A weight that a movement rests on. */
export interface TracedWeight {
  readonly entry: string;
  /** Where it stands in the entry: `lots[0].weight`. */
  readonly path: string;
  /** When it was read. */
  readonly at: string;
  readonly weight: Weight;
  readonly weighed: Weighed;
  /** The squares of these add up to the square of the weight's uncertainty. Empty where none is known. */
  readonly components: readonly Component[];
}

/** One source of the movement's uncertainty. */
export interface TracedSource {
  readonly name: string;
  readonly kind: DoubtKind;
  /** Signed, standard, micrograms. */
  readonly uUg: number;
  /** Of the movement's variance, 0 to 1. */
  readonly share: number;
  /** The entry it comes from, and for a reading its path there. */
  readonly entry: string | null;
  readonly path: string;
}

export interface Trace {
  readonly movement: Movement;
  /** The entry it stands in, as it reads now. */
  readonly reading: Reading | null;
  readonly weights: readonly TracedWeight[];
  /** The largest first. */
  readonly sources: readonly TracedSource[];
}

const grams = (text: string | undefined) => {
  const got = text === undefined ? null : massFromText(text, '');
  return got?.ok ? got.value.grams : undefined;
};

/** What makes the uncertainty of a weight, one by one (methods.md 3.1): the scale's or, for the others, as the value holds them. */
export function componentsOf({ as, net, scale }: Weighed): readonly Component[] {
  if (as.how !== 'scale')
    return [...net.parts].map(([source, u]) => ({
      kind:
        as.how === 'stated'
          ? 'stated'
          : source === 'density of mercury'
            ? 'density'
            : source.endsWith(':temperature')
              ? 'temperature'
              : 'volume',
      uUg: Math.abs(u),
    }));
  if (!scale) return [];
  const data = scaleData(scale.body);
  const readings = as.tare === undefined ? 1 : 2;
  const scatter = (kind: ComponentKind, g: number): Component[] => (g > 0 ? [{ kind, uUg: Math.sqrt(readings) * g * 1e6 }] : []);
  const weighing = { gross: grams(as.gross) ?? zero, tare: grams(as.tare), scale: data };
  const span = scale.body.certificate ? spanG(weighing) : null;
  const shared = net.parts.get(`scale:${scale.entry}`);
  return [
    ...scatter('repeatability', toNumber(repeatability(data))),
    ...scatter('division', toNumber(data.d) / Math.sqrt(12)),
    ...scatter('linearity', toNumber(data.linearity ?? zero) / Math.sqrt(3)),
    ...(shared === undefined || netOf(weighing).digits === 0n
      ? []
      : [{ kind: span === null ? ('class' as const) : ('certificate' as const), uUg: Math.abs(shared) }]),
  ];
}

/** A weight of an entry as it reads now, by its path. */
function weightAt(book: Book, entry: string, path: string): TracedWeight | null {
  const reading = book.current.byId.get(entry);
  const found = reading && weightsIn(reading.body).find((w) => w.path === path);
  return reading && found ? traced(book, reading, found.path, found.weight) : null;
}

function traced(book: Book, reading: Reading, path: string, weight: Weight): TracedWeight {
  const weighed = weighedFrom(weight, { entry: reading.id, path, at: reading.happened }, book.registers);
  return { entry: reading.id, path, at: reading.happened, weight, weighed, components: componentsOf(weighed) };
}

function sourcesOf(book: Book, value: Measured): TracedSource[] {
  const variance = uOf(value) ** 2;
  return [...value.parts]
    .map(([name, uUg]): TracedSource => {
      const from = entryOfSource(book, name);
      const kind = doubtsOf(book, { ug: 0, parts: new Map([[name, uUg]]) })[0]?.kind ?? 'other';
      return {
        name,
        kind,
        uUg,
        share: variance > 0 ? uUg ** 2 / variance : 0,
        entry: from?.entry ?? null,
        path: from?.path ?? '',
      };
    })
    .sort((a, b) => b.share - a.share || (a.name < b.name ? -1 : 1));
}

/** The trace of one movement. */
export function traceOf(book: Book, movement: Movement): Trace {
  const reading = book.current.byId.get(movement.entry) ?? null;
  const sources = sourcesOf(book, movement.mercury);
  const weights = new Map<string, TracedWeight>();
  const add = (weight: TracedWeight | null) => weight && weights.set(`${weight.entry}:${weight.path}`, weight);
  for (const { entry, path } of sources) {
    // the temperature of a volume is named behind the volume's own path
    if (entry !== null && path !== '') add(weightAt(book, entry, path.replace(/:temperature$/, '')));
  }
  // a weight nobody gave an uncertainty leaves no source behind: those of the entry itself are told all the same
  if (reading && ![...weights.values()].some((w) => w.entry === reading.id))
    for (const { path, weight } of weightsIn(reading.body)) add(traced(book, reading, path, weight));
  const own = (w: TracedWeight): number => (w.entry === movement.entry ? 0 : 1);
  return { movement, reading, weights: [...weights.values()].sort((a, b) => own(a) - own(b)), sources };
}

/** The traces of everything an entry moved, in order. */
export const tracesOf = (book: Book, entry: string): readonly Trace[] =>
  book.movements.all.filter((m) => m.entry === entry).map((m) => traceOf(book, m));
