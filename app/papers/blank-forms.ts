/**
 * Blank forms to fill by hand at the retort. They are drawn from the description of each kind's fields, the one the entry forms are made of, in the
 * same order: so they can be typed in line by line. What is never answered by a person (keys of rows, figures of closings) is not asked.
 */
import type { Content, TableCell } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import { latest, nameOf, type Registered } from '../core/book/registers.ts';
import { dayForms, formKinds } from '../core/kinds/by-hand.ts';
import type { Work } from '../core/kinds/check-list.ts';
import type { Kind, RegisterKind } from '../core/kinds/index.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { askedAt } from '../words/asked-checks.ts';
import { fieldsOf } from '../words/daybook-fields.ts';
import type { FieldWords, Shape } from '../words/daybook-shapes.ts';
import { kindNames, registerNames } from '../words/labels.ts';
import { formsPaper as words } from '../words/papers-forms.ts';
import { unitShown } from '../words/temperatures.ts';
import { workForm, workNames, worksOf } from '../words/work-cautions.ts';
import { aside, facts, ink, ledger, list, section, statements, textWidth } from './ledger.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { serialOf } from './serial.ts';
import { standingText } from './standing.ts';

const namedHere: readonly RegisterKind[] = ['person', 'scale', 'vessel', 'battery', 'plate', 'retort', 'meter', 'parcel'];
const answerWidth = textWidth * 0.66 - 7.4;
const nameWidth = textWidth * 0.34 - 7;
const lineHeight = 22;
/** Lines for a list: as many as a day usually brings; fewer where it seldom is written in at all. */
const listRows = { first: 6, further: 3 } as const;

const asked = (fields: readonly FieldWords[]): readonly FieldWords[] =>
  fields.filter(({ shape }) => shape.is !== 'key' && shape.is !== 'body');

/** Empty cells with their names above, in small type. */
function cells(names: readonly (readonly [name: string, share: number])[]): Content {
  const whole = names.reduce((sum, [, share]) => sum + share, 0);
  const widths = names.map(([, share]) => Math.floor((answerWidth * share) / whole) - 6);
  return {
    table: {
      widths,
      heights: [0, 15],
      body: [names.map(([text]): TableCell => ({ text, fontSize: 6.5 })), names.map((): TableCell => ({ text: '' }))],
    },
    layout: {
      hLineWidth: (i) => (i === 2 ? 0.6 : 0),
      vLineWidth: (i, node) => (i === 0 || i === node.table.widths?.length ? 0 : 0.4),
      paddingLeft: () => 2,
      paddingRight: () => 2,
      paddingTop: () => 0,
      paddingBottom: () => 1,
    },
  };
}

const ticks = (names: Readonly<Record<string, string>>): string =>
  Object.values(names)
    .map((name) => `${words.box}\u00a0${name.replaceAll(' ', '\u00a0')}`)
    .join('   ');

const weighed = (volume: boolean): (readonly [string, number])[] => [
  [words.weighed.scale, 30],
  [words.weighed.gross, 26],
  [words.weighed.tare, 26],
  [words.weighed.unit, 12],
  ...(volume
    ? ([
        [words.volume.ml, 14],
        [words.volume.at, 12],
      ] as const)
    : []),
];

/** Room for the answer to one field. */
function room(shape: Shape): Content {
  switch (shape.is) {
    case 'weight':
      return cells(weighed(shape.volume === true));
    case 'mass':
      return cells([
        [words.mass.value, 70],
        [words.mass.unit, 24],
      ]);
    case 'one':
    case 'many':
      return { text: ticks(shape.names), fontSize: 8.5 };
    case 'share':
      return { text: words.share, alignment: 'right', fontSize: 8 };
    case 'number':
      return { text: unitShown(shape.unit) ?? '', alignment: 'right', fontSize: 8 };
    default:
      return { text: '' };
  }
}

const tallOf = (shape: Shape): number => {
  if (shape.is === 'refs' || (shape.is === 'text' && shape.long)) return 3 * lineHeight;
  return shape.is === 'one' || shape.is === 'many' ? 0 : lineHeight;
};

const notes = (field: FieldWords, beside: readonly FieldWords[]): string => {
  const other = field.only && beside.find(({ key }) => key === field.only?.key);
  const names = other && (other.shape.is === 'one' || other.shape.is === 'many') ? other.shape.names : {};
  const only = other && field.only ? [words.only(other.label, field.only.has.map((has) => names[has] ?? has).join(', '))] : [];
  return [...(field.needed ? [words.needed] : []), ...only].join('; ');
};

interface Line {
  readonly label: string;
  readonly note: string;
  readonly shape: Shape;
}

/** Fields one below the other; those of a group carry its name. */
function linesOf(fields: readonly FieldWords[], before = ''): Line[] {
  return asked(fields).flatMap((field): Line[] => {
    if (field.shape.is === 'group') return linesOf(field.shape.fields, `${before}${field.label}: `);
    return [{ label: `${before}${field.label}`, note: notes(field, fields), shape: field.shape }];
  });
}

const ruledLines = (lines: readonly Line[]): Content => ({
  table: {
    widths: [nameWidth, answerWidth],
    heights: lines.map(({ shape }) => tallOf(shape)),
    dontBreakRows: true,
    body: lines.map(({ label, note, shape }): TableCell[] => [
      { stack: [{ text: label }, ...(note === '' ? [] : [{ text: note, fontSize: 7, italics: true }])] },
      room(shape) as TableCell,
    ]),
  },
  layout: {
    hLineWidth: () => 0.4,
    vLineWidth: (i) => (i === 1 ? 0.4 : 0),
    paddingLeft: () => 4,
    paddingRight: () => 3,
    paddingTop: () => 2,
    paddingBottom: () => 2,
  },
  margin: [0, 2, 0, 6],
});

/** Columns of a list: what stands first in a row, weights as what is read of them. */
function columnsOf(fields: readonly FieldWords[]): { head: string; share: number }[] {
  return asked(fields).flatMap((field) => {
    if (field.shape.is === 'group') return columnsOf(field.shape.fields);
    if (field.shape.is === 'list') return [];
    if (field.shape.is === 'weight')
      return [words.weighed.scale, words.weighed.gross, words.weighed.tare, words.weighed.unit].map((head, i) => ({
        head: i === 1 ? `${field.label}: ${head.toLowerCase()}` : head,
        share: i === 3 ? 9 : 15,
      }));
    return [{ head: field.label, share: field.shape.is === 'text' ? 24 : 18 }];
  });
}

/** More columns than this cannot be written in. */
const mostColumns = 8;

function listOf(field: FieldWords, fields: readonly FieldWords[], one: string, rows: number): Content[] {
  const first = fields.filter((f) => f.first);
  const columns = columnsOf(first.length > 0 ? first : fields).slice(0, mostColumns);
  const further = asked(fields).filter((f) => !first.includes(f));
  const head = { text: `${field.label}. ${words.rows(one)}`, bold: true, fontSize: 9, headlineLevel: 2 } as Content;
  const codes = further.flatMap(({ label, shape }) =>
    shape.is === 'one' || shape.is === 'many' ? [`${label}: ${Object.values(shape.names).join(', ')}.`] : [],
  );
  return [
    head,
    ...ledger(
      [
        ...columns,
        ...(codes.length > 0
          ? [
              {
                head: further
                  .filter((f) => f.shape.is === 'one')
                  .map((f) => f.label)
                  .join(', '),
                share: 18,
              },
            ]
          : []),
      ],
      Array.from({ length: rows }, () => ({ cells: [], tall: true })),
    ),
    ...(codes.length > 0 ? [aside(codes.join(' '))] : []),
  ];
}

/** Questions that a charge answers in fields of its own. */
const ownFields: ReadonlySet<string> = new Set(['pipe-clear', 'water-on', 'dry']);

const worksIn = (kind: Kind): readonly Work[] =>
  kind === 'charge'
    ? ['run-before']
    : kind === 'firing'
      ? ['run-during', 'run-after']
      : (worksOf[kind] ?? []).map(({ work }) => work);

/** The questions asked at the works this form may be about, as the site asks them by then; two rows stay for what else was asked. */
const askedTables = (asking: Asking): Content[] =>
  worksIn(asking.kind).flatMap((work) => [
    { text: workForm.checks(workNames[work]), bold: true, fontSize: 9, headlineLevel: 2 } as Content,
    ...ledger(
      [
        { head: words.checks.question, share: 52 },
        { head: words.checks.yes, share: 8 },
        { head: words.checks.no, share: 7 },
        { head: words.checks.na, share: 10 },
        { head: words.checks.remark, share: 23 },
      ],
      [
        ...askedAt(asking.book.current, work, asking.at)
          .questions.filter(({ check }) => asking.kind !== 'charge' || !ownFields.has(check))
          .map(({ asks }) => ({ cells: [asks, words.box, words.box, words.box, ''] })),
        ...[0, 1].map(() => ({ cells: ['', words.box, words.box, words.box, ''], tall: true })),
      ],
    ),
    aside(workForm.general),
  ]);

interface Asking {
  readonly book: Book;
  readonly kind: Kind;
  readonly at: string;
}

/** A run of fields as they come: lists break the ruled lines. */
function blocks(fields: readonly FieldWords[], rows: number, asking: Asking): Content[] {
  const out: Content[] = [];
  let waiting: FieldWords[] = [];
  const flush = () => {
    const lines = linesOf(waiting);
    if (lines.length > 0) out.push(ruledLines(lines));
    waiting = [];
  };
  for (const field of asked(fields)) {
    if (field.shape.is !== 'list') {
      waiting.push(field);
      continue;
    }
    flush();
    const asked = field.key === 'checks' ? askedTables(asking) : [];
    out.push(...(asked.length > 0 ? asked : listOf(field, field.shape.fields, field.shape.one, rows)));
  }
  flush();
  return out;
}

function formOf(asking: Asking, serial: string): Content[] {
  const { kind } = asking;
  const fields = fieldsOf[kind];
  const first = fields.filter((field) => field.first);
  const further = fields.filter((field) => !field.first);
  return [
    {
      stack: [
        { text: kindNames[kind], style: 'title', fontSize: 16 },
        {
          canvas: [{ type: 'line', x1: 0, y1: 1, x2: textWidth, y2: 1, lineWidth: 1.4, lineColor: ink }],
        },
        { text: words.sheet(kindNames[kind], serial), fontSize: 8.5, bold: true, margin: [0, 2, 0, 2] },
      ],
      pageBreak: 'before',
    },
    ...facts([
      [words.when, '\n'],
      [words.exact, ticks(Object.fromEntries(words.exactWords.map((w) => [w, w])))],
      [words.by, '\n'],
      [words.witness, '\n'],
      [words.typed, '\n'],
    ]),
    ...blocks(first, listRows.first, asking),
    ...(further.length > 0 ? [section(words.more), aside(words.moreNote), ...blocks(further, listRows.further, asking)] : []),
  ];
}

/** What people here call their things: whoever writes by hand uses the names the book knows. */
function namesUsed(book: Book): Content[] {
  const rows = namedHere.flatMap((kind) => {
    const things = [...book.registers[kind].values()] as Registered<RegisterKind>[];
    const names = things.map((thing) => latest(thing).body as { label?: string; name?: string; out?: string });
    const inUse = names.filter(({ out }) => out === undefined).map((body) => nameOf(body));
    return inUse.length > 0 ? [[registerNames[kind], inUse.join(' · ')] as const] : [];
  });
  return rows.length > 0 ? [section(words.names), aside(words.namesNote), ...statements(rows, 16)] : [];
}

/** The blank form of one kind (`id` is its name on disk), or those of a day. Problems: `paper-no-such` for a kind without a form. */
export function blankForms(book: Book, id: string, frame: Frame): Result<Definition> {
  const kind = formKinds.find((k) => k === id);
  if (id !== '' && kind === undefined) return bad(problem('paper-no-such', 'id', { wanted: 'form', id }));
  const serial = serialOf(frame);
  const forms = kind === undefined ? dayForms : [kind];
  return good(
    paper(frame, {
      name: words.name,
      subject: kind === undefined ? words.subject : words.one(kindNames[kind]),
      number: words.number(serial),
      standing: standingText(book, frame.newest),
      reservations: [],
      body: [
        section(words.how),
        ...list(words.howTo),
        ...namesUsed(book),
        ...forms.flatMap((k) => formOf({ book, kind: k, at: frame.newest }, serial)),
      ],
    }),
  );
}
