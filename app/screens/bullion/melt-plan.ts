/** The form of a melt: what was ticked of the stock, other metal, and what came out. Rows in which nothing stands make nothing. */
import { anyKey } from '../../daybook/draft-shape.ts';
import { type FormPlan, textOr } from '../../daybook/form.svelte.ts';
import { workChecks } from '../../words/work-checks.ts';
import { type CheckAnswers, checksOf, noAnswer } from '../retort/checks-entry.ts';
import { noRowWeight, type RowWeight, rowWeighing } from '../retort/typed.ts';
import { isBlank, noWeighing, type WeighingEntry, weightOf } from '../shared/weighing-entry.ts';
import { draftName } from './hrefs.ts';

export const stockKinds = ['sponge', 'prills', 'slag', 'bar'] as const;
export type StockKind = (typeof stockKinds)[number];

/** Something ticked: a charge, a melt that left prills or slag, a bar. */
export interface TakenRow extends RowWeight {
  what: StockKind;
  of: string;
  label: string;
  /** As it was weighed before: stands where it is not weighed again. */
  before: WeighingEntry;
}

export interface PieceRow extends RowWeight {
  key: string;
  label: string;
  /** The number it was offered: alone, it makes no piece. */
  offered: string;
}

export interface MeltValues {
  scale: string;
  taken: TakenRow[];
  metal: PieceRow[];
  flux: string;
  bars: PieceRow[];
  samples: PieceRow[];
  prills: WeighingEntry;
  slag: WeighingEntry;
  checks: CheckAnswers;
  note: string;
}

export const noPiece = (key: string, offered = ''): PieceRow => ({ ...noRowWeight(), key, label: offered, offered });

/** The rows that make pieces, in their order. */
export const piecesOf = (rows: readonly PieceRow[]): readonly PieceRow[] =>
  rows.filter((row) => !isBlank(row.weight) || (row.label.trim() !== '' && row.label !== row.offered));

export const takenOf = (rows: readonly TakenRow[], what: StockKind): readonly TakenRow[] =>
  rows.filter((row) => row.what === what);

/** The reading of a ticked row: at the pot, or where there is none as it was weighed before. */
export const readingOf = (row: TakenRow, scale: string): WeighingEntry =>
  isBlank(row.weight) ? row.before : rowWeighing(row, scale);

/** What is added as metal, in the order of the entry: prills, earlier bars, then other metal. */
export const addedRows = ({ taken, metal }: MeltValues): readonly (TakenRow | PieceRow)[] => [
  ...takenOf(taken, 'prills'),
  ...takenOf(taken, 'bar'),
  ...piecesOf(metal),
];

/** Where the problems of a ticked row stand in the entry. */
export function fieldOf(values: MeltValues, row: TakenRow): { readonly field: string; readonly name: string } {
  const { taken } = values;
  if (row.what === 'sponge') return { field: `body.sponges[${takenOf(taken, 'sponge').indexOf(row)}]`, name: 'charge' };
  if (row.what === 'slag') return { field: `body.slags[${takenOf(taken, 'slag').indexOf(row)}]`, name: 'melt' };
  return { field: `body.added[${addedRows(values).indexOf(row)}]`, name: row.what };
}

const isTaken = (row: TakenRow | PieceRow): row is TakenRow => 'what' in row;
const some = <T>(list: readonly T[]): readonly T[] | undefined => (list.length > 0 ? list : undefined);

function bodyOf(v: MeltValues): Record<string, unknown> {
  const again = (row: TakenRow) => weightOf(rowWeighing(row, v.scale));
  const pieces = (rows: readonly PieceRow[]) =>
    piecesOf(rows).map((row) => ({ key: row.key, label: textOr(row.label), weight: weightOf(rowWeighing(row, v.scale)) }));
  return {
    sponges: takenOf(v.taken, 'sponge').map((row) => ({ charge: row.of, weight: again(row) })),
    added: some(
      addedRows(v).map((row, i) =>
        isTaken(row)
          ? { key: `i${i + 1}`, label: row.label, weight: weightOf(readingOf(row, v.scale)), [row.what]: row.of }
          : { key: row.key, label: textOr(row.label), weight: weightOf(rowWeighing(row, v.scale)) },
      ),
    ),
    slags: some(takenOf(v.taken, 'slag').map((row) => ({ melt: row.of, weight: again(row) }))),
    flux: textOr(v.flux),
    bars: pieces(v.bars),
    samples: some(pieces(v.samples)),
    prills: weightOf(v.prills),
    slag: weightOf(v.slag),
    checks: checksOf(
      v.checks,
      workChecks.melting.map((c) => c.check),
    ),
    note: textOr(v.note),
  };
}

export interface MeltStart {
  readonly charge: string;
  readonly scale: string;
  /** What stands ticked at first. */
  readonly taken: readonly TakenRow[];
  /** The number after the last bar's. */
  readonly nextBar: string;
  /** What the last melt was fluxed with. */
  readonly flux: string;
}

const anyTaken: TakenRow = { ...noRowWeight(), what: 'sponge', of: '', label: '', before: noWeighing() };

export function meltPlan({ charge, scale, taken, nextBar, flux }: MeltStart): FormPlan<MeltValues> {
  const start = (): MeltValues => ({
    scale,
    taken: structuredClone([...taken]),
    metal: [noPiece('m1')],
    flux,
    bars: [noPiece('b1', nextBar)],
    samples: [noPiece('s1')],
    prills: noWeighing(scale),
    slag: noWeighing(scale),
    checks: {},
    note: '',
  });
  return {
    name: draftName('melt', charge),
    kind: 'melt',
    start,
    full: () => ({ ...start(), taken: [structuredClone(anyTaken)], checks: { [anyKey]: noAnswer() } }),
    body: bodyOf,
  };
}
