/**
 * Labels of a flow drawing: a name in as many lines as it needs and its figure below. The ends have theirs beside them, outside; every node within has
 * its own in the rows above or below the drawing, with a line that leads to it, so that no label lies on a band, on a node or on another label, and no
 * line runs through a label. Knows no domain.
 */
import { widthOf } from './letters.ts';

export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Size of the letters, and how far lines of text stand apart. */
export const letterSize = 15;
export const lineHeight = 17;
/** The first line's foot below the label's upper edge. */
const firstFoot = 13;
/** Between a label and what it belongs to; between two labels of a row. */
const beside = 6;
const apart = 12;
/** Between the rows, and between them and the drawing. */
const betweenRows = 6;
/** Between lines that lead to nodes of one column. */
const betweenLines = 6;

/** What a label says, and the room it takes. */
export interface LabelText {
  /** The name's lines. */
  readonly name: readonly string[];
  readonly figure: string;
  readonly width: number;
  readonly height: number;
}

export interface Label extends Box {
  readonly name: readonly string[];
  readonly figure: string;
  readonly anchor: 'start' | 'end';
  readonly textX: number;
}

/** Foot of each line of a label: its name's, then its figure's. */
export const feetOf = ({ y, name }: Pick<Label, 'y' | 'name'>): readonly number[] =>
  [...name, ''].map((_, i) => y + firstFoot + i * lineHeight);

function filled(words: readonly string[], width: number): readonly string[] {
  const lines: string[] = [];
  for (const word of words) {
    const longer = lines.length === 0 ? word : `${lines.at(-1)} ${word}`;
    if (lines.length > 0 && widthOf(longer, letterSize) <= width) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

/** A name of two lines or more is broken so that they are about as long. */
function broken(name: string, most: number): readonly string[] {
  const words = name.split(' ');
  const { length } = filled(words, most);
  if (length <= 1) return [name];
  const whole = widthOf(name, letterSize);
  for (let width = whole / length; width < most; width += letterSize / 2) {
    const lines = filled(words, width);
    if (lines.length <= length) return lines;
  }
  return filled(words, most);
}

/** The label of a node, no wider than so much unless a word or its figure is. */
export function labelText({ name, figure }: { readonly name: string; readonly figure: string }, most: number): LabelText {
  const lines = broken(name, most);
  const width = Math.max(...[...lines, figure].map((text) => widthOf(text, letterSize)));
  return { name: lines, figure, width, height: (lines.length + 1) * lineHeight };
}

/** Beside an end, outside, in the middle of it. */
export function endLabel(node: Box, text: LabelText, left: boolean): Label {
  const textX = left ? node.x - beside : node.x + node.width + beside;
  return {
    ...text,
    x: left ? textX - text.width : textX,
    y: node.y + node.height / 2 - text.height / 2,
    anchor: left ? 'end' : 'start',
    textX,
  };
}

/** Room an end's label takes beside it. */
export const endRoom = ({ width }: LabelText): number => width + beside;

interface Within {
  readonly id: string;
  readonly node: Box;
  readonly text: LabelText;
}

interface Standing extends Within {
  readonly above: boolean;
  /** Where its line runs. */
  readonly lineX: number;
}

/**
 * Each node's side and line: the nearer side, but the uppermost of a column above and the lowest below. Lines of one column to one side run beside each
 * other.
 */
function sides(within: readonly Within[], top: number, foot: number): Standing[] {
  const columns = new Map<number, Within[]>();
  for (const one of within) columns.set(one.node.x, [...(columns.get(one.node.x) ?? []), one]);
  return [...columns.values()].flatMap((column) => {
    const down = column.toSorted((a, b) => a.node.y - b.node.y);
    const nearAbove = down.filter(({ node }) => node.y - top <= foot - node.y - node.height).length;
    const above = down.length === 1 ? nearAbove : Math.min(Math.max(nearAbove, 1), down.length - 1);
    return down.map((one, i) => {
      const passed = i < above ? i : down.length - 1 - i;
      return {
        ...one,
        above: i < above,
        lineX: passed === 0 ? one.node.x + one.node.width / 2 : one.node.x - passed * betweenLines,
      };
    });
  });
}

/**
 * Rows from the drawing outwards: each label begins at its line and runs to the right, further out than every label that begins within its width. So
 * a line passes only labels that begin to its right.
 */
function rowsOf(standing: readonly Standing[]): ReadonlyMap<Standing, number> {
  const rows = new Map<Standing, number>();
  for (const one of standing.toSorted((a, b) => b.lineX - a.lineX)) {
    const end = one.lineX + beside + one.text.width + apart;
    rows.set(one, Math.max(-1, ...[...rows].filter(([other]) => other.lineX < end).map(([, row]) => row)) + 1);
  }
  return rows;
}

export interface Led {
  readonly id: string;
  readonly label: Label;
  /** The line from the label to its node. */
  readonly leader: string;
}

/** Labels of the nodes within, between the upper and lower edge of the drawing; they stand outside both. Room they take above and below. */
export function ledLabels(
  within: readonly Within[],
  top: number,
  foot: number,
): { readonly led: readonly Led[]; readonly above: number; readonly below: number } {
  const standing = sides(within, top, foot);
  const sideOf = (above: boolean) => {
    const rows = rowsOf(standing.filter((one) => one.above === above));
    // a row is as high as its highest label
    const highest: number[] = [];
    for (const [{ text }, row] of rows) highest[row] = Math.max(highest[row] ?? 0, text.height);
    const from = (row: number) => highest.slice(0, row).reduce((sum, height) => sum + height + betweenRows, betweenRows);
    const led = [...rows].map(([{ id, node, text, lineX }, row]): Led => {
      const y = above ? top - from(row) - text.height : foot + from(row);
      // a line that runs beside its column turns to its node just within it
      const turned = lineX < node.x;
      const inside = Math.min(4, node.height / 2);
      const at = above ? node.y + (turned ? inside : 0) : node.y + node.height - (turned ? inside : 0);
      return {
        id,
        label: { ...text, x: lineX, y, width: text.width + beside, anchor: 'start', textX: lineX + beside },
        leader: `M${tidy(lineX)},${tidy(above ? y : y + text.height)}V${tidy(at)}${turned ? `H${tidy(node.x)}` : ''}`,
      };
    });
    return { led, room: rows.size === 0 ? 0 : from(highest.length) };
  };
  const [above, below] = [sideOf(true), sideOf(false)];
  return { led: [...above.led, ...below.led], above: above.room, below: below.room };
}

const tidy = (value: number): string => String(Math.round(value * 100) / 100);
