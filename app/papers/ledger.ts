/**
 * The building blocks of every paper: ruled tables in the manner of an account book. Columns have fixed widths, so that a long word is broken
 * inside its cell and nothing runs off the page; no cell spans another (row and column spans break badly over page ends).
 */
import type { Content, CustomTableLayout, TableCell } from 'pdfmake/interfaces';

/** Page measures in points. The left margin is the wider one: the sheet is bound there. */
export const page = { width: 595.28, height: 841.89, left: 64, right: 40 } as const;
export const textWidth = page.width - page.left - page.right;

export const ink = '#1c1c1a';
const softInk = '#55524a';
const hair = '#bdb8aa';

export interface Column {
  readonly head: string;
  /** Part of the width, against the other columns. */
  readonly share: number;
  /** A column of amounts: set to the right, its points one below the other. */
  readonly amount?: boolean;
}

export interface Row {
  readonly cells: readonly string[];
  /** A sum: a line above it, and heavier type. */
  readonly sum?: boolean;
  /** Heavier type alone. */
  readonly strong?: boolean;
  /** Room to write by hand. */
  readonly tall?: boolean;
  /** The last result of a table: two lines below it. */
  readonly closing?: boolean;
}

export interface Ruling {
  /** Rows that may be longer than a page are let break over its end. */
  readonly breaking?: boolean;
}

const padding = 4;
/** Points to sign in. */
const handRoom = 24;
const rule = 0.4;

/** Widths in points that fill the text width exactly, paddings and the rules between columns counted. */
export function widthsOf(shares: readonly number[], between = rule): number[] {
  const all = shares.reduce((a, b) => a + b, 0);
  const room = textWidth - shares.length * 2 * padding - (shares.length - 1) * between;
  return shares.map((share) => Math.floor((room * share * 100) / all) / 100);
}

/** Amounts of one column with their points below each other: short ones get figure spaces at the end. Words stay as they are. */
export function alignedAmounts(cells: readonly string[]): string[] {
  const tail = (cell: string) => /^[−+±]?\s?[\d\u202f]+(?:[.,](\d+))?$/.exec(cell);
  const most = Math.max(0, ...cells.map((cell) => tail(cell)?.[1]?.length ?? 0));
  return cells.map((cell) => {
    const found = tail(cell);
    if (!found || most === 0) return cell;
    const own = found[1]?.length ?? 0;
    return own === 0 ? `${cell}\u00a0${'\u2007'.repeat(most)}` : `${cell}${'\u2007'.repeat(most - own)}`;
  });
}

const ruled = (rows: readonly Row[]): CustomTableLayout => ({
  hLineWidth: (i, node) => {
    if (i <= 1 || i === node.table.body.length) return 0.9;
    return rows[i - 2]?.closing || rows[i - 1]?.sum ? 0.9 : rule;
  },
  hLineColor: (i, node) => (i <= 1 || i === node.table.body.length || rows[i - 2]?.closing || rows[i - 1]?.sum ? ink : hair),
  vLineWidth: (i, node) => (i === 0 || i === node.table.widths?.length ? 0 : rule),
  vLineColor: () => hair,
  paddingLeft: () => padding,
  paddingRight: () => padding,
  paddingTop: () => 2.2,
  paddingBottom: () => 2.2,
});

/** Two lines below a result, as accounts are closed. */
const doubleLine: Content = {
  canvas: [{ type: 'line', x1: 0, y1: 1.6, x2: textWidth, y2: 1.6, lineWidth: 0.9, lineColor: ink }],
  margin: [0, 0, 0, 8],
};

/** A ruled table: its head repeats on every page it reaches. */
export function ledger(columns: readonly Column[], rows: readonly Row[], { breaking = false }: Ruling = {}): Content[] {
  const aligned = columns.map((column, c) => {
    const cells = rows.map((row) => row.cells[c] ?? '');
    return column.amount ? alignedAmounts(cells) : cells;
  });
  const head = columns.map(
    (column): TableCell => ({
      text: column.head,
      fontSize: 7.5,
      bold: true,
      color: softInk,
      alignment: column.amount ? 'right' : 'left',
    }),
  );
  const body = rows.map((row, r) =>
    columns.map(
      (column, c): TableCell => ({
        text: aligned[c]?.[r] ?? '',
        bold: row.sum === true || row.closing === true || row.strong === true,
        ...(column.amount ? { alignment: 'right' as const, preserveTrailingSpaces: true } : {}),
      }),
    ),
  );
  const closed = rows.at(-1)?.closing === true;
  return [
    {
      table: {
        headerRows: 1,
        keepWithHeaderRows: rows.length > 0 ? 1 : 0,
        dontBreakRows: !breaking,
        widths: widthsOf(columns.map((column) => column.share)),
        heights: [0, ...rows.map((row) => (row.tall ? handRoom : 0))],
        body: [head, ...body],
      },
      layout: ruled(rows),
      margin: [0, 2, 0, closed ? 0 : 8],
    },
    ...(closed ? [doubleLine] : []),
  ];
}

const open: CustomTableLayout = {
  hLineWidth: (i, node) => (i === 0 || i === node.table.body.length ? 0.9 : rule),
  hLineColor: (i, node) => (i === 0 || i === node.table.body.length ? ink : hair),
  vLineWidth: () => 0,
  paddingLeft: () => padding,
  paddingRight: () => padding,
  paddingTop: () => 2.2,
  paddingBottom: () => 2.2,
};

/** Facts with their names, two to a line. */
export function facts(pairs: readonly (readonly [name: string, value: string])[]): Content[] {
  const name = (text: string): TableCell => ({ text, fontSize: 8, color: softInk, margin: [0, 0.9, 0, 0] });
  const rows: TableCell[][] = [];
  for (let i = 0; i < pairs.length; i += 2) {
    const [a = '', b = ''] = pairs[i] ?? [];
    const [c = '', d = ''] = pairs[i + 1] ?? [];
    rows.push([name(a), { text: b }, name(c), { text: d }]);
  }
  return [
    {
      table: { widths: widthsOf([19, 31, 19, 31], 0), body: rows, dontBreakRows: true },
      layout: open,
      margin: [0, 2, 0, 8],
    },
  ];
}

/** Statements with a word or number before each, ruled off above and below. */
export const statements = (items: readonly (readonly [name: string, text: string])[], nameShare = 9): Content[] => [
  {
    table: {
      widths: widthsOf([nameShare, 100 - nameShare], 0),
      body: items.map(([name, text]): TableCell[] => [{ text: name, bold: true }, { text }]),
    },
    layout: open,
    margin: [0, 2, 0, 8],
  },
];

/** Longest text, in characters, whose block is surely shorter than a page. */
const shortText = 90;

const longest = (content: unknown): number => {
  if (typeof content === 'string') return content.length;
  if (typeof content !== 'object' || content === null) return 0;
  return Math.max(0, ...Object.values(content).map(longest));
};

/**
 * Keeps a short block on one page, its heading with it. A block that holds a long text is left to break: what is longer than a page and may not
 * break would run off it.
 */
export const together = (block: readonly Content[]): Content[] =>
  longest(block) > shortText
    ? [...block]
    : [
        {
          // the block moves as a whole, so its headings need not be watched
          stack: block.map((item) =>
            typeof item === 'object' && 'headlineLevel' in item ? { ...item, headlineLevel: undefined } : item,
          ),
          unbreakable: true,
        } as Content,
      ];

/** The heading of a section. */
export const section = (text: string): Content => ({ text, style: 'section', headlineLevel: 1 });
/** The heading of a part of a section. */
export const part = (text: string): Content => ({ text, style: 'part', headlineLevel: 2 });
export const sentence = (text: string): Content => ({ text, margin: [0, 1, 0, 5] });
/** Less weighty text. */
export const small = (text: string): Content => ({ text, fontSize: 8, margin: [0, 1, 0, 5] });
/** A remark on how to read what stands above or below it. */
export const aside = (text: string): Content => ({ text, style: 'aside' });
/** Sentences with a dash before each. */
export const list = (items: readonly string[]): Content[] =>
  items.map((item) => ({
    columns: [
      { text: '–', width: 12 },
      { text: item, width: textWidth - 12 },
    ],
    margin: [0, 0, 0, 2],
  }));
/** The same with numbers, where the order counts. */
export const numbered = (items: readonly string[]): Content[] =>
  items.map((item, i) => ({
    columns: [
      { text: `${i + 1}.`, width: 16 },
      { text: item, width: textWidth - 16 },
    ],
    margin: [0, 0, 0, 2],
  }));
