/**
 * Where the mercury went in a period, unrolled so that nothing runs in a circle: what was there and came on the left, the kinds of place it passed
 * through in the order of the work, what is there, went and was lost on the right. Every band is a sum over movements; nothing is clipped.
 *
 * How the work's circle (flask, plates, amalgam, retort, flask) is opened: between two kinds of place only the balance is drawn. Kinds stand in one
 * order; a balance that runs with it joins two places, one that runs against it (mercury caught and poured back) ends in the same kind's second
 * standing, "come back". Where more was taken out of a place than stood and came there before, mercury that had come back went out again: it leaves
 * on the right and enters on the left, the same amount on both sides, named as such. Arrows therefore only run from left to right.
 *
 * Places that stood still are no flow: they are told beside it, and flow and what stood still together are the account. What stayed in places where
 * other mercury moved is in the bands, and named beside them, so that a drawing can leave it off.
 */
import { exactly, type Measured, RunningTotal, total } from '../measured.ts';
import { type Period, wasThere } from './account.ts';
import type { Book } from './book.ts';
import type { Movement } from './movements/gathering.ts';
import { inPeriod, isBefore, upToEnd } from './period.ts';
import { isStock, placeParts } from './places.ts';
import { latest } from './registers.ts';
import { stayedIn } from './stayed.ts';
import { allOf, type StoodStill, stoodStill } from './stood-still.ts';

/** Kinds of place in the order of the work. `unnamed`: between two ends of the book with no place named between them. */
export const flowKinds = ['unnamed', 'flasks', 'vessels', 'circuit', 'amalgam', 'sponge', 'condenser', 'waste'] as const;
export type FlowKind = (typeof flowKinds)[number];

/** What stands at the ends. `loss` is of a way of losing, `opening`, `closing` and `round` of a kind of place. */
export type FlowEnd = 'opening' | 'receipts' | 'found' | 'closing' | 'removals' | 'loss' | 'round';

export interface FlowNode {
  readonly id: string;
  readonly side: 'left' | 'through' | 'back' | 'right';
  /** What an end is; null within. */
  readonly end: FlowEnd | null;
  /** The kind of place, or the way of losing; empty for ends that are of neither. */
  readonly of: string;
  /** It came to less than nothing and stands on the other side: a gain by a way of losing, a stock below nothing. */
  readonly below: boolean;
  readonly mercury: Measured;
}

export interface FlowBand {
  /** "from>to". */
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Never below nothing: what is, runs from the other side. */
  readonly mercury: Measured;
  /** The movements it is the sum of; of `balance` bands those it is the remainder of. */
  readonly movements: readonly Movement[];
  /** It is what is left between the other bands of a place, and no movement of its own. */
  readonly balance: boolean;
}

/** What stood still in places of one kind: on no band. */
export interface FlowStill {
  /** "still.flasks". */
  readonly id: string;
  readonly kind: FlowKind;
  readonly places: readonly string[];
  readonly mercury: Measured;
  /** What it came by, whenever that was. */
  readonly movements: readonly Movement[];
}

/** What stayed all through the period in places of one kind where other mercury moved: in every band it is named with. */
export interface FlowStayed {
  readonly kind: FlowKind;
  readonly mercury: Measured;
  /** The bands it runs through, from what was there at first to what is there now. */
  readonly bands: readonly string[];
}

export interface Flow {
  /** From left to right. */
  readonly nodes: readonly FlowNode[];
  readonly bands: readonly FlowBand[];
  /** What enters on the left, and leaves on the right: micrograms. */
  readonly throughUg: number;
  /** What is left off because it did not move, by kind of place. */
  readonly still: readonly FlowStill[];
  /** What is in the bands and did not move, by kind of place. */
  readonly stayed: readonly FlowStayed[];
}

/** The kind a place belongs to; null for what holds no stock. */
export function flowKindOf(book: Book, place: string): FlowKind | null {
  if (!isStock(place)) return null;
  const { kind, of } = placeParts(place);
  if (kind === 'circuit' || kind === 'sponge' || kind === 'condenser') return kind;
  if (kind === 'residue') return 'waste';
  if (kind !== 'vessel') return 'amalgam';
  const thing = book.registers.vessel.get(of);
  const use = thing && latest(thing).body.use;
  return use === 'drum' ? 'waste' : use === 'flask' ? 'flasks' : 'vessels';
}

/** A sum that is added to without copying, and the movements in it. */
class Sum extends RunningTotal {
  readonly movements: Movement[] = [];

  /** A movement with its sign; one that is counted twice over is named once. */
  book(m: Movement, sign: 1 | -1): void {
    this.add(m.mercury, sign);
    this.movements.push(m);
  }
}

/** Sums by key, made as they are asked for. */
class Sums extends Map<string, Sum> {
  at(key: string): Sum {
    const known = this.get(key);
    if (known) return known;
    const made = new Sum();
    this.set(key, made);
    return made;
  }
}

const endKey = (end: FlowEnd, kind: FlowKind, of: string = kind): string => `${end} ${of} ${kind}`;

/** Every movement sorted into what it is at the ends and between which kinds; places that stood still are passed over. */
function sorted(
  book: Book,
  period: Period,
  still: ReadonlyMap<string, unknown>,
): { readonly ends: Sums; readonly between: Sums; readonly crossing: Sums } {
  const [ends, between, crossing] = [new Sums(), new Sums(), new Sums()];
  const here = wasThere(book);
  const kinds = new Map<string, FlowKind | null>();
  const kindOf = (place: string): FlowKind | null => {
    if (!kinds.has(place)) kinds.set(place, still.has(place) ? null : flowKindOf(book, place));
    return kinds.get(place) ?? null;
  };
  for (const m of book.movements.all) {
    if (m.from === m.to) continue;
    const [a, b] = [kindOf(m.from), kindOf(m.to)];
    if (a === b && a !== null) continue;
    if (upToEnd(m.at, period)) {
      if (a) ends.at(endKey('closing', a)).book(m, -1);
      if (b) ends.at(endKey('closing', b)).book(m, 1);
    }
    if (isBefore(m.at, period)) {
      if (a) ends.at(endKey('opening', a)).book(m, -1);
      if (b) ends.at(endKey('opening', b)).book(m, 1);
    }
    if (!inPeriod(m.at, period) || still.has(m.from) || still.has(m.to)) continue;
    if (a) crossing.at(a).movements.push(m);
    if (b) crossing.at(b).movements.push(m);
    if (a && b) {
      const ahead = flowKinds.indexOf(a) < flowKinds.indexOf(b);
      between.at(ahead ? `${a} ${b}` : `${b} ${a}`).book(m, ahead ? 1 : -1);
      continue;
    }
    const kind = a ?? b ?? 'unnamed';
    if (a === null) entered(m, kind);
    if (b === null) left(m, kind);
  }
  return { ends, between, crossing };

  function entered(m: Movement, kind: FlowKind): void {
    const { kind: where, of } = placeParts(m.from);
    if (where === 'loss') ends.at(endKey('loss', kind, of)).book(m, -1);
    else if (where === 'found') ends.at(endKey('found', kind, '')).book(m, 1);
    else if (here.has(m.entry) && m.basis !== 'invoice-against-weighed') ends.at(endKey('opening', kind)).book(m, 1);
    else ends.at(endKey('receipts', kind, '')).book(m, 1);
  }

  function left(m: Movement, kind: FlowKind): void {
    const { kind: where, of } = placeParts(m.to);
    if (where === 'loss') ends.at(endKey('loss', kind, of)).book(m, 1);
    else if (where === 'found') ends.at(endKey('found', kind, '')).book(m, -1);
    else ends.at(endKey('removals', kind, '')).book(m, 1);
  }
}

const entering: ReadonlySet<string> = new Set<FlowEnd>(['opening', 'receipts', 'found']);

interface Draft {
  readonly node: Omit<FlowNode, 'mercury' | 'id'>;
  readonly kind: FlowKind;
  readonly sum: Sum;
}

const flipped = (sum: Sum): Sum => {
  const other = new Sum();
  other.add(sum, -1);
  other.movements.push(...sum.movements);
  return other;
};

const idOf = ({ side, end, of, below }: Omit<FlowNode, 'mercury' | 'id'>): string =>
  [side, end ?? '', of, below ? 'below' : ''].filter((part) => part !== '').join('.');

/** Ends of each kind with an amount, each on its side: what comes to less than nothing stands on the other one. */
function endsOf(ends: Sums): Draft[] {
  return [...ends].flatMap(([key, sum]) => {
    if (sum.ug === 0) return [];
    const [end = '', of = '', kind = ''] = key.split(' ');
    const below = sum.ug < 0;
    const side = entering.has(end) !== below ? 'left' : 'right';
    const node = { side, end: end as FlowEnd, of, below } as const;
    return [{ node, kind: kind as FlowKind, sum: below ? flipped(sum) : sum }];
  });
}

/** The flow of a period. */
export function flowOf(book: Book, period: Period): Flow {
  const still = stoodStill(book, period);
  const { ends, between, crossing } = sorted(book, period, still);
  const drafts = endsOf(ends);
  const nodes = new Map<string, Omit<FlowNode, 'mercury' | 'id'>>();
  const bands: FlowBand[] = [];
  const named = (node: Omit<FlowNode, 'mercury' | 'id'>): string => {
    const id = idOf(node);
    nodes.set(id, node);
    return id;
  };
  const through = (kind: FlowKind) => named({ side: 'through', end: null, of: kind, below: false });
  const back = (kind: FlowKind) => named({ side: 'back', end: null, of: kind, below: false });
  const band = (from: string, to: string, sum: Sum, balance = false) =>
    bands.push({
      id: `${from}>${to}`,
      from,
      to,
      mercury: { ug: sum.ug, parts: sum.parts },
      movements: [...new Set(sum.movements)],
      balance,
    });

  const net = [...between].flatMap(([key, sum]) => {
    const [a = '', b = ''] = key.split(' ') as FlowKind[];
    return sum.ug === 0
      ? []
      : [{ from: a as FlowKind, to: b as FlowKind, backward: sum.ug < 0, sum: sum.ug < 0 ? flipped(sum) : sum }];
  });
  const cameBack = new Set(net.filter((n) => n.backward).map((n) => n.from));
  for (const { node, kind, sum } of drafts) if (node.side === 'left') band(named(node), through(kind), sum);
  for (const { from, to, backward, sum } of net) {
    if (backward) band(through(to), back(from), sum);
    else band(through(from), through(to), sum);
  }
  for (const kind of flowKinds) {
    if (!cameBack.has(kind)) continue;
    // what stood and came there first, less what went out of it
    const rest = new Sum();
    for (const b of bands) {
      if (b.to === `through.${kind}`) rest.add(b.mercury, 1);
      if (b.from === `through.${kind}`) rest.add(b.mercury, -1);
    }
    rest.movements.push(...crossing.at(kind).movements);
    if (rest.ug > 0) band(through(kind), back(kind), rest, true);
    if (rest.ug < 0) {
      const again = flipped(rest);
      band(named({ side: 'left', end: 'round', of: kind, below: false }), through(kind), again, true);
      band(back(kind), named({ side: 'right', end: 'round', of: kind, below: false }), again, true);
    }
  }
  for (const { node, kind, sum } of drafts)
    if (node.side === 'right') band(cameBack.has(kind) ? back(kind) : through(kind), named(node), sum);
  return { ...finished(nodes, bands), still: byKind(book, still), stayed: stayedOf(book, period, still, bands) };
}

/** By kind of place: the least of what stayed in its places and of every band from its stock at first to its stock now. */
function stayedOf(
  book: Book,
  period: Period,
  still: ReadonlyMap<string, unknown>,
  bands: readonly FlowBand[],
): readonly FlowStayed[] {
  const least = [...stayedIn(book, period)].filter(([place]) => !still.has(place));
  return flowKinds.flatMap((kind) => {
    const own = least.filter(([place]) => flowKindOf(book, place) === kind).map(([, mercury]) => mercury);
    const to = (a: string, b: string) => bands.find(({ id }) => id === `${a}.${kind}>${b}.${kind}`);
    const straight = to('through', 'right.closing');
    const within = straight ? [straight] : [to('through', 'back'), to('back', 'right.closing')];
    const way = [to('left.opening', 'through'), ...within].filter((band) => band !== undefined);
    if (own.length === 0 || way.length !== within.length + 1) return [];
    const mercury = [total(own), ...way.map((band) => band.mercury)].reduce((a, b) => (b.ug < a.ug ? b : a));
    return [{ kind, mercury, bands: way.map(({ id }) => id) }];
  });
}

function byKind(book: Book, still: ReadonlyMap<string, StoodStill>): FlowStill[] {
  return flowKinds.flatMap((kind) => {
    const own = [...still.values()].filter(({ place }) => flowKindOf(book, place) === kind);
    if (own.length === 0) return [];
    const movements = [...new Set(own.flatMap((one) => one.movements))];
    return [{ id: `still.${kind}`, kind, places: own.map(({ place }) => place), mercury: allOf(own), movements }];
  });
}

const sides: readonly FlowNode['side'][] = ['left', 'through', 'back', 'right'];
const ends: readonly FlowEnd[] = ['opening', 'receipts', 'found', 'closing', 'removals', 'round', 'loss'];

function finished(
  found: ReadonlyMap<string, Omit<FlowNode, 'mercury' | 'id'>>,
  bands: readonly FlowBand[],
): Omit<Flow, 'still' | 'stayed'> {
  const rank = (n: Omit<FlowNode, 'mercury' | 'id'>): number =>
    sides.indexOf(n.side) * 1000 + (n.end === null ? 0 : ends.indexOf(n.end)) * 20 + flowKinds.indexOf(n.of as FlowKind);
  const nodes = [...found]
    .map(([id, node]): FlowNode => {
      const sum = new Sum();
      for (const b of bands) if (node.side === 'left' ? b.from === id : b.to === id) sum.add(b.mercury, 1);
      return { ...node, id, mercury: sum.ug === 0 ? exactly(0) : { ug: sum.ug, parts: sum.parts } };
    })
    .sort((a, b) => rank(a) - rank(b));
  const order = new Map(nodes.map(({ id }, i) => [id, i]));
  return {
    nodes,
    bands: [...bands].sort(
      (a, b) => (order.get(a.from) ?? 0) - (order.get(b.from) ?? 0) || (order.get(a.to) ?? 0) - (order.get(b.to) ?? 0),
    ),
    throughUg: nodes.filter((n) => n.side === 'left').reduce((s, n) => s + n.mercury.ug, 0),
  };
}
