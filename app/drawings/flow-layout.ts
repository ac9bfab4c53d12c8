/**
 * Where everything of a flow drawing lies: nodes in columns from left to right, bands between them to one scale, and a label of two lines for every
 * node that lies on no other label. Knows no domain. d3-sankey writes into what it is given and throws on circles: it is handed copies of flows that
 * have none. A band too thin to be seen is drawn at a least width and marked.
 */
import { type SankeyLink, type SankeyNode, sankey, sankeyJustify } from 'd3-sankey';
import { area, curveBumpX } from 'd3-shape';

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

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface LaidPlace extends FlowPlace, Box {
  readonly label: Box & { readonly anchor: 'start' | 'end'; readonly textX: number };
  /** A line from the node to a label that had to stand away from it. */
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

/** Size of the letters, and where the two lines of a label stand below its upper edge. */
export const letterSize = 15;
export const labelLines = [13, 30] as const;

/** Least width at which a band is drawn. */
export const leastWidth = 1.5;
const lineHeight = 17;
const labelHeight = 2 * lineHeight;
/** Room a letter takes, on the wide side. */
const letter = 7.4;
const nodeWidth = 10;
const between = labelHeight + 8;
const edge = 8;
/** The most the bar of the scale may be high. */
const mostBar = 48;
/** How often a drawing may grow for its labels. */
const mostGrowth = 20;

type Node = SankeyNode<FlowPlace, { run: FlowRun }>;
type Link = SankeyLink<FlowPlace, { run: FlowRun }>;

const widthOf = ({ name, figure }: FlowPlace): number => Math.max(name.length, figure.length) * letter;
const overlap = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

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

/** Lays a flow out over a width. The height follows from how many nodes stand above each other. Without bands nothing is laid out. */
export function layFlow(places: readonly FlowPlace[], runs: readonly FlowRun[], width: number): FlowLayout {
  let laid = laidAt(places, runs, width, 0);
  // where labels find no room of their own, the drawing grows
  for (let more = 1; laid.crowded && more <= mostGrowth; more += 1) laid = laidAt(places, runs, width, more * 80);
  return laid.layout;
}

function laidAt(
  places: readonly FlowPlace[],
  runs: readonly FlowRun[],
  width: number,
  more: number,
): { readonly layout: FlowLayout; readonly crowded: boolean } {
  const used = new Set(runs.flatMap(({ from, to }) => [from, to]));
  const own = places.filter(({ id }) => used.has(id));
  if (own.length === 0)
    return { layout: { width, height: 0, amountPerUnit: 0, places: [], runs: [], scale: null }, crowded: false };
  const sources = own.filter(({ id }) => !runs.some((r) => r.to === id));
  const sinks = own.filter(({ id }) => !runs.some((r) => r.from === id));
  const room = (some: readonly FlowPlace[]): number => Math.max(...some.map(widthOf)) + edge + 6;
  const count = tallest(own, runs);
  const height = Math.round(count * between + 200 + more);
  const lay = sankey<FlowPlace, { run: FlowRun }>()
    .nodeId((n) => n.id)
    .nodeAlign(sankeyJustify)
    .nodeWidth(nodeWidth)
    .nodePadding(between)
    // as they are given, so that the same thing stands in the same place in every drawing
    .nodeSort(null as unknown as undefined)
    .extent([
      [room(sources), labelHeight + 8],
      [width - room(sinks), height - labelHeight],
    ]);
  const laid = lay({
    nodes: own.map((n) => ({ ...n })),
    links: runs.map((run) => ({ source: run.from, target: run.to, value: run.amount, run })),
  });
  const widest = laid.links.reduce((a, b) => ((b.width ?? 0) > (a.width ?? 0) ? b : a));
  const { places: labels, crowded } = labelled(laid.nodes, height);
  const amountPerUnit = widest.value / (widest.width ?? 1);
  const amount = roundBelow(mostBar * amountPerUnit);
  const scale = { x: edge, y: height + edge, height: amount / amountPerUnit, amount };
  const layout = {
    width,
    height: height + mostBar + 2 * edge,
    amountPerUnit,
    scale,
    places: labels,
    runs: laid.links.map((link) => {
      const thickness = Math.max(link.width ?? 0, leastWidth);
      return { ...link.run, thickness, thin: (link.width ?? 0) < leastWidth, path: outline(link, thickness) };
    }),
  };
  return { layout, crowded };
}

/** Labels of the ends beside them, outside; those within above or below, and where all is taken, away from the node with a line to it. */
function labelled(nodes: readonly Node[], height: number): { readonly places: LaidPlace[]; readonly crowded: boolean } {
  const bare = nodes.map((n) => ({
    id: n.id,
    name: n.name,
    figure: n.figure,
    x: n.x0 ?? 0,
    y: n.y0 ?? 0,
    width: nodeWidth,
    height: Math.max((n.y1 ?? 0) - (n.y0 ?? 0), leastWidth),
    within: (n.sourceLinks ?? []).length > 0 && (n.targetLinks ?? []).length > 0,
    left: (n.targetLinks ?? []).length === 0,
  }));
  const nodeBoxes: Box[] = bare.map(({ x, y, width, height: own }) => ({ x, y, width, height: own }));
  const taken: Box[] = [];
  let crowded = false;
  const ends = bare
    .filter((n) => !n.within)
    .map((n): LaidPlace => {
      const width = widthOf(n);
      const textX = n.left ? n.x - 6 : n.x + nodeWidth + 6;
      const x = n.left ? textX - width : textX;
      const label = {
        x,
        y: n.y + n.height / 2 - labelHeight / 2,
        width,
        height: labelHeight,
        textX,
        anchor: n.left ? 'end' : 'start',
      } as const;
      taken.push(label);
      return { ...n, label, leader: null };
    });
  const inside = bare
    .filter((n) => n.within)
    .map((n): LaidPlace => {
      const width = widthOf(n);
      const near = [n.y - labelHeight - 2, n.y + n.height + 2];
      const far = Array.from({ length: Math.floor((height - labelHeight) / 4) }, (_, i) => 4 * i).sort(
        (a, b) => Math.abs(a - n.y) - Math.abs(b - n.y),
      );
      // to the right of the node's left edge, else to the left of its right one; off other labels, and where it can be off nodes
      const spots = [...near, ...far]
        .filter((y) => y >= 0 && y + labelHeight <= height)
        .flatMap((y) => [n.x, n.x + nodeWidth - width].map((x): Box => ({ x, y, width, height: labelHeight })));
      const clear = (of: readonly Box[]) => spots.find((spot) => !of.some((other) => overlap(other, spot)));
      const found = clear([...taken, ...nodeBoxes]) ?? clear(taken);
      if (!found) crowded = true;
      const box = found ?? { x: n.x, y: n.y, width, height: labelHeight };
      const { y } = box;
      taken.push(box);
      const edgeY = y < n.y ? y + labelHeight : y;
      const nodeY = y < n.y ? n.y : n.y + n.height;
      return {
        ...n,
        label: box.x === n.x ? { ...box, anchor: 'start', textX: n.x } : { ...box, anchor: 'end', textX: n.x + nodeWidth },
        leader: near.includes(y) ? null : `M${n.x + 1},${nodeY}V${edgeY}`,
      };
    });
  const all = new Map([...ends, ...inside].map((n) => [n.id, n]));
  return { places: bare.flatMap(({ id }) => all.get(id) ?? []), crowded };
}
