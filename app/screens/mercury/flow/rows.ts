/** The flow of a period as a table, as text to copy, and the address of each band: the movements it is the sum of. */
import type { Flow } from '../../../core/book/flow.ts';
import type { Measured } from '../../../core/measured.ts';
import { flowEnds, flowShare, stillName, flowWords as words } from '../../../words/flow.ts';
import { bandHref, type Days } from '../address.ts';
import { csvOf, plainNumber } from '../copied.ts';
import { figureOf } from '../figures.ts';

export interface FlowRow {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly mercury: Measured;
  readonly grams: string;
  readonly U: string;
  /** Of all that enters on the left; empty of what stood still. */
  readonly share: string;
  /** How many movements and entries it is the sum of, or the remainder of. */
  readonly count: string;
  readonly href: string;
}

/** A row for every band, in the order of the drawing, then what stood still. */
export const flowRows = (flow: Flow, days: Days): readonly FlowRow[] => [
  ...flow.bands.map((band): FlowRow => {
    const [from, to] = flowEnds(flow, band);
    const { value, U } = figureOf(band.mercury);
    const moved = words.entries(new Set(band.movements.map((m) => m.entry)).size);
    return {
      id: band.id,
      from,
      to,
      mercury: band.mercury,
      grams: value,
      U,
      share: flowShare(band.mercury.ug, flow.throughUg),
      count: band.balance ? words.balanceOf(moved) : moved,
      href: bandHref(band.id, days),
    };
  }),
  ...flow.still.map((still): FlowRow => {
    const { value, U } = figureOf(still.mercury);
    return {
      id: still.id,
      from: stillName(still),
      to: words.still,
      mercury: still.mercury,
      grams: value,
      U,
      share: '',
      count: words.stillPlaces(still.places.length),
      href: bandHref(still.id, days),
    };
  }),
];

/** Comma-separated text of the rows: figures with a plain minus and no spaces, so that a spreadsheet reads numbers; no cell begins a formula. */
export const flowCsv = (rows: readonly FlowRow[]): string =>
  csvOf([
    words.csvHead,
    ...rows.map((r) => [r.from, r.to, plainNumber(r.grams), plainNumber(r.U), plainNumber(r.share), r.count]),
  ]);
