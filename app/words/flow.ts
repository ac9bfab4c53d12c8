/** The flow of mercury in words: its ends, its places, its bands, and the drawing's parts as window and paper hand them to the layout. */
import type { Flow, FlowBand, FlowKind, FlowNode, FlowStill } from '../core/book/flow.ts';
import type { LossPath } from '../core/book/places.ts';
import { type Measured, total, uOf } from '../core/measured.ts';
import { gramsOf, massHead, massText, massUnit, percentText, withU } from './figures.ts';
import { pathTexts } from './places.ts';

const kindTexts: Readonly<Record<FlowKind, string>> = {
  unnamed: 'no place named',
  flasks: 'flasks',
  vessels: 'working vessels',
  circuit: 'circuit',
  amalgam: 'amalgam and charges',
  sponge: 'sponge',
  condenser: 'condensers and pipes',
  waste: 'residues and waste',
};

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a node is called. A way of losing that gave more than it took is told as a gain. */
export function flowNodeText({ side, end, of, below }: Pick<FlowNode, 'side' | 'end' | 'of' | 'below'>): string {
  const kind = kindTexts[of as FlowKind] ?? of;
  if (side === 'through') return capital(kind);
  if (side === 'back') return `${capital(kind)}, in the end`;
  const less = below ? ', below nothing' : '';
  switch (end) {
    case 'opening':
      return `At first: ${kind}${less}`;
    case 'closing':
      return `Now there: ${kind}${less}`;
    case 'receipts':
      return `Receipts${less}`;
    case 'found':
      return `Found, on no book${less}`;
    case 'removals':
      return `Handed over${less}`;
    case 'round':
      return side === 'left' ? `Come back: ${kind}` : `Out again: ${kind}`;
    default:
      return below ? `More than the book: ${pathTexts[of as LossPath]}` : capital(pathTexts[of as LossPath]);
  }
}

/** "12.60 ± 0.64 g": k = 2. */
export const flowFigure = (mercury: Measured): string => {
  const u = uOf(mercury);
  return withU(gramsOf(Math.round(mercury.ug)), u < 0.1 ? null : u / 1e6);
};

export type FlowTone = 'plain' | 'loss' | 'gain' | 'round';

function toneOf(a: FlowNode | undefined, b: FlowNode | undefined): FlowTone {
  const end = a?.end ? a : b;
  if (end?.below) return 'gain';
  return end?.end === 'loss' ? 'loss' : end?.end === 'round' ? 'round' : 'plain';
}

export interface DrawnFlow {
  readonly places: readonly { readonly id: string; readonly name: string; readonly figure: string }[];
  readonly runs: readonly {
    readonly id: string;
    readonly from: string;
    readonly to: string;
    readonly amount: number;
    readonly tone: FlowTone;
    /** The two names and the amount in words. */
    readonly text: string;
  }[];
}

/**
 * The flow as a drawing takes it: amounts in micrograms, without what stayed where it was. Where something is left off, the drawn figure stands before
 * the whole one; a band of which nothing is left is not drawn.
 */
export function drawnFlow({ nodes, bands, stayed }: Pick<Flow, 'nodes' | 'bands' | 'stayed'>): DrawnFlow {
  const byId = new Map(nodes.map((node) => [node.id, node]));
  const offUg = (id: string): number => stayed.find((one) => one.bands.includes(id))?.mercury.ug ?? 0;
  const figure = (mercury: Measured, off: number): string => {
    if (off === 0) return flowFigure(mercury);
    // to the same place as the whole
    const [left = ''] = flowFigure({ ug: mercury.ug - off, parts: mercury.parts }).split(/ ± |\u00a0(?:g|ozt)/);
    return flowWords.drawnOf(left, flowFigure(mercury));
  };
  const drawn = bands.map((band) => ({ ...band, off: offUg(band.id) })).filter(({ mercury, off }) => mercury.ug > off);
  const used = new Set(drawn.flatMap(({ from, to }) => [from, to]));
  return {
    places: nodes
      .filter(({ id }) => used.has(id))
      .map((node) => {
        const off = bands.filter((b) => (node.side === 'left' ? b.from : b.to) === node.id).reduce((s, b) => s + offUg(b.id), 0);
        return { id: node.id, name: flowNodeText(node), figure: figure(node.mercury, off) };
      }),
    runs: drawn.map((band) => ({
      id: band.id,
      from: band.from,
      to: band.to,
      amount: band.mercury.ug - band.off,
      tone: toneOf(byId.get(band.from), byId.get(band.to)),
      text: flowWords.band(...flowEnds({ nodes }, band), figure(band.mercury, band.off)),
    })),
  };
}

/** What is not drawn because it stayed, by kind of place; empty where nothing did. */
export const stayedSentence = ({ stayed }: Pick<Flow, 'stayed'>): string =>
  stayed.length === 0
    ? ''
    : flowWords.stayed(stayed.map(({ kind, mercury }) => flowWords.stayedIn(flowFigure(mercury), kindTexts[kind])).join('; '));

/** The names of a band's two nodes. */
export function flowEnds({ nodes }: Pick<Flow, 'nodes'>, { from, to }: Pick<FlowBand, 'from' | 'to'>): [string, string] {
  const name = (id: string): string => {
    const node = nodes.find((n) => n.id === id);
    return node ? flowNodeText(node) : id;
  };
  return [name(from), name(to)];
}

/** Of the account's stock at first: what is drawn and what stood still, so that the two are never taken for different mercury. */
export function stillSentence({ nodes, still }: Pick<Flow, 'nodes' | 'still'>): string {
  if (still.length === 0) return '';
  const sum = total(still.map(({ mercury }) => mercury));
  const count = still.reduce((n, { places }) => n + places.length, 0);
  const moving = nodes.filter(({ end }) => end === 'opening').map(({ mercury, below }) => (below ? -mercury.ug : mercury.ug));
  const all = moving.reduce((s, ug) => s + ug, sum.ug);
  return flowWords.stoodStill(
    flowFigure(sum),
    count,
    still.map(({ kind }) => kindTexts[kind]).join(', '),
    percentText(sum.ug / all, 1),
  );
}

/** A row of what stood still: where, and how many places. */
export const stillName = ({ kind }: Pick<FlowStill, 'kind'>): string => capital(kindTexts[kind]);

/** The share of all that enters on the left. */
export const flowShare = (ug: number, throughUg: number): string => (throughUg > 0 ? percentText(ug / throughUg, 2) : '');

export const flowWords = {
  title: 'Where it went',
  drawing: 'Mercury from opening stock to closing stock and losses, to scale',
  none: 'No mercury stood or moved in this period.',
  band: (from: string, to: string, figure: string) => `${from} → ${to}: ${figure}`,
  entries: (n: number) => `${n} ${n === 1 ? 'entry' : 'entries'}`,
  balanceOf: (entries: string) => `remainder of ${entries}`,
  stoodStill: (figure: string, places: number, kinds: string, share: string) =>
    `Left off the drawing, because it did not move: ${figure} in ${places === 1 ? 'one place' : `${places} places`} (${kinds}), ${share} of what was there at first. It was there from the first day to the last, and stands in the account and at the foot of the table.`,
  drawnOf: (drawn: string, whole: string) => `${drawn} of ${whole}`,
  stayedIn: (figure: string, kind: string) => `${figure} that stayed in ${kind}`,
  stayed: (list: string) =>
    `Not drawn: ${list}. It is the least that stood there at any moment of the period. Where it is left off, the first figure is drawn and the second is the whole; the table has the whole.`,
  scale: (amount: number) =>
    `As high as this: ${massText(gramsOf(Math.round(amount)), Math.max(0, 6 - Math.floor(Math.log10(amount) + 1e-9)))}`,
  nothingMoved: 'Nothing moved in this period.',
  still: 'stood still',
  stillPlaces: (n: number) => `${n} ${n === 1 ? 'place' : 'places'}, untouched`,
  whatStill: (kind: string) => `${kind}: stood still`,
  stillSum: 'In these places, untouched in the period, by what they came by',
  say: 'Point at a band, or go through them with Tab or the arrow keys, to read it; open it for its movements.',
  thin: (n: number) =>
    `${n === 1 ? 'One band is' : `${n} bands are`} too thin to be drawn to scale: drawn a hair wide, with a broken edge.`,
  net: 'Between two kinds of place the balance is drawn: what went there less what came back. What came back and went out again leaves on the right and enters on the left, the same amount. A band of loss shows what the entries post, not what became of it.',
  legend: {
    plain: 'moved, or stayed',
    loss: 'lost (hatched)',
    gain: 'more than the book says, or below nothing (crossed)',
    round: 'came back and went out again (dotted)',
  } satisfies Readonly<Record<FlowTone, string>>,
  fillings: 'What the fillings mean',
  legendPrinted: {
    plain: 'grey, moved or stayed',
    loss: 'hatched, lost',
    gain: 'crossed, more than the book says or below nothing',
    round: 'dotted, came back and went out again',
  } satisfies Readonly<Record<FlowTone, string>>,
  table: 'Where it went, as a table',
  from: 'From',
  to: 'To',
  get grams(): string {
    return massUnit();
  },
  get U(): string {
    return massHead('± U (k = 2)');
  },
  shareOf: 'Of what enters',
  count: 'Sum of',
  copySvg: 'Copy the drawing (SVG)',
  copyCsv: 'Copy the table (CSV)',
  copied: 'Copied.',
  notCopied: 'Could not be copied: the clipboard is closed to this page.',
  csvHead: ['from', 'to', 'grams', 'U grams (k = 2)', 'of what enters', 'sum of'],
  whatBand: (from: string, to: string) => `${from} → ${to}`,
  sum: 'The sum of these, what came back taken off',
  remainder: 'What these leave over, between the other bands of the place',
  noBand: 'No band of this period has this name',
} as const;
