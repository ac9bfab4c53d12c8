/**
 * Where everything of a flow drawing lies: nodes in columns from left to right, bands between them to one scale, and a label for every node clear of
 * all of them. Knows no domain. d3-sankey writes into what it is given and throws on circles: it is handed copies of flows that have none. A band too
 * thin to be seen is drawn at a least width and marked.
 */
import { type SankeyLink, type SankeyNode, sankey, sankeyJustify } from 'd3-sankey';
import { area, curveBumpX } from 'd3-shape';
import { type Box, endLabel, endRoom, type Label, labelText, ledLabels } from './flow-labels.ts';

/** How a band is filled, beside its colour: whole, hatched, crossed, dotted. */
export type Tone = 'plain' | 'loss' | 'gain' | 'round';

export interface FlowPlace {
  readonly id: string;
  readonly name: string;
  /** The amount in words, under the name. */
  readonly figure: string;
}

export interface FlowRun {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  /** Above nothing; of any unit, the same for all. */
  readonly amount: number;
  readonly tone: Tone;
}

export interface LaidPlace extends FlowPlace, Box {
  readonly label: Label;
  /** A line from the label to a node within; null beside an end. */
  readonly leader: string | null;
}

export interface LaidRun extends FlowRun {
  /** The outline of the band. */
  readonly path: string;
  /** As drawn. */
  readonly thickness: number;
  /** Thinner to scale than it can be drawn: it is drawn at the least width. */
  readonly thin: boolean;
}

export interface FlowLayout {
  readonly width: number;
  readonly height: number;
  /** Amount that one unit of the drawing stands for. */
  readonly amountPerUnit: number;
  readonly places: readonly LaidPlace[];
  readonly runs: readonly LaidRun[];
  /** An upright bar as high as a band of a round amount; null where nothing is drawn. */
  readonly scale: (Pick<Box, 'x' | 'y' | 'height'> & { readonly amount: number }) | null;
}

/** Least width at which a band is drawn. */
export const leastWidth = 1.5;
const nodeWidth = 10;
const edge = 8;
/** Between the labels of two ends above one another. */
const betweenLabels = 8;
/** What all bands of a column are high together, at least. */
const bandsHigh = 200;
/** Share of the width that a label may take before its name is broken. */
const labelShare = 0.2;
/** The most the bar of the scale may be high. */
const mostBar = 48;

type Node = SankeyNode<FlowPlace, { run: FlowRun }>;
type Link = SankeyLink<FlowPlace, { run: FlowRun }>;

/** Most nodes that stand one above the other: by the longest way from the left, as they will be set. */
function tallest(places: readonly FlowPlace[], runs: readonly FlowRun[]): number {
  const depth = new Map(places.map(({ id }) => [id, 0]));
  for (let step = 0; step < places.length; step += 1)
    for (const { from, to } of runs) depth.set(to, Math.max(depth.get(to) ?? 0, (depth.get(from) ?? 0) + 1));
  const leaving = new Set(runs.map(({ from }) => from));
  const counts = new Map<number, number>();
  for (const [id, d] of depth) {
    const column = leaving.has(id) ? d : -1;
    counts.set(column, (counts.get(column) ?? 0) + 1);
  }
  return Math.max(1, ...counts.values());
}

const boxOf = ({ x0 = 0, y0 = 0, y1 = 0 }: Node): Box => ({
  x: x0,
  y: y0,
  width: nodeWidth,
  height: Math.max(y1 - y0, leastWidth),
});

/** The greatest of 1, 2 and 5 times a power of ten that is not above the amount. */
function roundBelow(amount: number): number {
  const ten = 10 ** Math.floor(Math.log10(amount));
  return ([5, 2].find((n) => n * ten <= amount) ?? 1) * ten;
}

/** The outline between two upright edges. */
function outline(link: Link, thickness: number): string {
  const [from, to] = [link.source as Node, link.target as Node];
  const half = thickness / 2;
  const ends: [number, number][] = [
    [from.x1 ?? 0, link.y0 ?? 0],
    [to.x0 ?? 0, link.y1 ?? 0],
  ];
  const shape = area<[number, number]>()
    .x(([x]) => x)
    .y0(([, y]) => y - half)
    .y1(([, y]) => y + half)
    .curve(curveBumpX)
    .digits(2);
  return shape(ends) ?? '';
}

/** The flow in columns within so wide a band, from 0 downwards. */
function columnsOf(own: readonly FlowPlace[], runs: readonly FlowRun[], from: number, to: number, between: number) {
  const high = tallest(own, runs) * between + bandsHigh;
  const lay = sankey<FlowPlace, { run: FlowRun }>()
    .nodeId((n) => n.id)
    .nodeAlign(sankeyJustify)
    .nodeWidth(nodeWidth)
    .nodePadding(between)
    // as they are given, so that the same thing stands in the same place in every drawing
    .nodeSort(null as unknown as undefined)
    .extent([
      [from, 0],
      [to, high],
    ]);
  const links = runs.map((run) => ({ source: run.from, target: run.to, value: run.amount, run }));
  return lay({ nodes: own.map((n) => ({ ...n })), links });
}

/** Lays a flow out over a width. The height follows from how many nodes stand above each other. Without bands nothing is laid out. */
export function layFlow(places: readonly FlowPlace[], runs: readonly FlowRun[], width: number): FlowLayout {
  const [entered, left] = [new Set(runs.map(({ to }) => to)), new Set(runs.map(({ from }) => from))];
  const own = places.filter(({ id }) => entered.has(id) || left.has(id));
  if (own.length === 0) return { width, height: 0, amountPerUnit: 0, places: [], runs: [], scale: null };
  const worded = own.map((place) => ({ ...place, text: labelText(place, width * labelShare) }));
  const isEnd = ({ id }: FlowPlace): boolean => !entered.has(id) || !left.has(id);
  const room = (some: typeof worded): number => edge + Math.max(...some.map(({ text }) => endRoom(text)));
  const between = betweenLabels + Math.max(...worded.filter(isEnd).map(({ text }) => text.height));
  const { nodes, links } = columnsOf(
    own,
    runs,
    room(worded.filter(({ id }) => !entered.has(id))),
    // the label of the last node within begins at its line and may run over the right edge of the columns
    width - room(worded.filter(({ id }) => entered.has(id))),
    between,
  );
  /** All labels about the nodes as they stand, and how far these reach with the labels of the ends. */
  const labels = () => {
    const bare = nodes.map((n, i) => ({ ...(worded[i] as (typeof worded)[number]), node: boxOf(n) }));
    const ends = bare.filter(isEnd).map((one) => ({ ...one, label: endLabel(one.node, one.text, !entered.has(one.id)) }));
    const top = Math.min(...bare.map(({ node }) => node.y), ...ends.map(({ label }) => label.y));
    const foot = Math.max(...bare.map(({ node }) => node.y + node.height), ...ends.map(({ label }) => label.y + label.height));
    const within = bare.filter((one) => !isEnd(one));
    return { bare, ends, top, foot, ...ledLabels(within, top, foot) };
  };
  // the rows above decide how far down the flow begins
  const { top, above } = labels();
  const down = edge + above - top;
  for (const node of nodes) [node.y0, node.y1] = [(node.y0 ?? 0) + down, (node.y1 ?? 0) + down];
  for (const link of links) [link.y0, link.y1] = [(link.y0 ?? 0) + down, (link.y1 ?? 0) + down];
  const { bare, ends, led, foot, below } = labels();
  const labelOf = new Map<string, Pick<LaidPlace, 'label' | 'leader'>>();
  for (const { id, label } of ends) labelOf.set(id, { label, leader: null });
  for (const { id, label, leader } of led) labelOf.set(id, { label, leader });
  const widest = links.reduce((a, b) => ((b.width ?? 0) > (a.width ?? 0) ? b : a));
  const amountPerUnit = widest.value / (widest.width ?? 1);
  const amount = roundBelow(mostBar * amountPerUnit);
  const scale = { x: edge, y: foot + below + edge, height: amount / amountPerUnit, amount };
  return {
    width,
    height: Math.ceil(scale.y + mostBar + edge),
    amountPerUnit,
    scale,
    places: bare.flatMap(({ text: _, node, ...place }) => {
      const own = labelOf.get(place.id);
      return own ? [{ ...place, ...node, ...own }] : [];
    }),
    runs: links.map((link) => {
      const thickness = Math.max(link.width ?? 0, leastWidth);
      return { ...link.run, thickness, thin: (link.width ?? 0) < leastWidth, path: outline(link, thickness) };
    }),
  };
}
