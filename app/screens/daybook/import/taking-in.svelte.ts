/**
 * A table on its way into the book: its text, what its columns are, how its first rows read, and the asking of the host, which checks every row again and keeps
 * all of them or none.
 */
import { type ImportField, importFields } from '../../../core/importing/fields.ts';
import { type ImportRead, readImport } from '../../../core/importing/import.ts';
import { type ColumnMapping, type Mapping, mappingFromHeadings } from '../../../core/importing/mapping.ts';
import { fieldAt } from '../../../core/importing/row.ts';
import { readSeparated, type Separator, type Table } from '../../../core/importing/separated.ts';
import type { Kind } from '../../../core/kinds/index.ts';
import { bad, type Problem, problem, type Result } from '../../../core/result.ts';
import type { Daybook } from '../../../daybook/book.svelte.ts';

/** Rows that are shown before anything is kept. */
const shownRows = 4;

/** A column as a person answers it; empty: not said. */
export interface ColumnAnswer {
  column: string;
  field: string;
  unit: string;
  decimal: string;
  days: string;
}

/** A picture of the old book that was kept: its page as the rows have it; empty: it goes with every row. */
export interface PagePicture {
  readonly file: string;
  /** What the file was called. */
  readonly name: string;
  page: string;
}

export class TakingIn {
  kind = $state<Kind | ''>('');
  text = $state('');
  separator = $state<Separator | ''>('');
  columns = $state<ColumnAnswer[]>([]);
  book = $state('');
  pictures = $state<PagePicture[]>([]);
  asking = $state(false);
  /** What the host found, or the text itself; told until something is changed and asked again. */
  problems = $state.raw<readonly Problem[]>([]);
  kept = $state.raw<{ readonly added: number; readonly before: boolean; readonly endMark: string } | null>(null);
  readonly daybook: Daybook;
  /** The kind that the columns were answered for. */
  #answeredAs: Kind | '' = '';
  /** What was said of each column so far, by its heading: a table pasted again, mended, asks nothing anew. */
  readonly #answers = new Map<string, ColumnAnswer>();

  constructor(daybook: Daybook) {
    this.daybook = daybook;
  }

  readonly table: Result<Table> | null = $derived(
    this.text === '' ? null : readSeparated(this.text, this.separator === '' ? undefined : this.separator),
  );

  /** Says anew what the headings say, after the kind or the table has changed. What a person said of a column stands while it has this heading. */
  headings(): void {
    this.problems = [];
    this.kept = null;
    const { table, kind } = this;
    if (kind === this.#answeredAs) for (const answer of this.columns) this.#answers.set(answer.column, answer);
    else this.#answers.clear();
    this.#answeredAs = kind;
    if (!table?.ok || kind === '') this.columns = [];
    else
      this.columns = mappingFromHeadings(kind, table.value.headings).map(
        ({ column, field, unit, decimal, days }) =>
          this.#answers.get(column) ?? {
            column,
            field,
            unit: unit ?? '',
            decimal: decimal ?? 'point',
            days: days ?? 'year-month-day',
          },
      );
  }

  /** Fields that the headings themselves name. */
  get headed(): readonly string[] {
    const { table, kind } = this;
    if (!table?.ok || kind === '') return [];
    return mappingFromHeadings(kind, table.value.headings).flatMap(({ field }) => (field === '' ? [] : [field]));
  }

  /** The field a column is. */
  fieldOf({ field }: ColumnAnswer): ImportField | null {
    return this.kind === '' || field === '' ? null : (fieldAt(importFields(this.kind), field) ?? null);
  }

  get mapping(): Mapping {
    const columns = this.columns.map((answer): ColumnMapping => {
      const cell = this.fieldOf(answer)?.cell;
      const measured = cell === 'mass' || cell === 'volume' || cell === 'number';
      const said: Record<string, string> = { column: answer.column, field: answer.field };
      if (measured && answer.unit !== '') said.unit = answer.unit;
      if (measured || cell === 'figure') said.decimal = answer.decimal;
      if (cell === 'day' || cell === 'moment') said.days = answer.days;
      return said as ColumnMapping;
    });
    const same = [
      ...(this.book.trim() === '' ? [] : [{ field: 'transcribed.book', text: this.book.trim() }]),
      ...(this.daybook.writer === null || columns.some(({ field }) => field === 'by')
        ? []
        : [{ field: 'by', text: this.daybook.writer }]),
    ];
    return {
      ...(this.separator === '' ? {} : { separator: this.separator }),
      columns,
      ...(same.length > 0 ? { same } : {}),
      ...(this.pictures.length === 0
        ? {}
        : { pictures: this.pictures.map(({ file, page }) => (page.trim() === '' ? { file } : { file, page: page.trim() })) }),
    };
  }

  /** The first rows as they read now. */
  readonly preview: Result<ImportRead> | null = $derived.by(() => {
    const { kind, table } = this;
    if (!table || kind === '') return null;
    if (!table.ok) return table;
    const { book, clock } = this.daybook;
    return readImport({
      kind,
      text: this.text,
      mapping: this.mapping,
      batch: 'a-look-at-it',
      entries: book.entries,
      now: clock.now(),
      first: shownRows,
    });
  });

  /** The page each row says it stands on; empty where it says none. */
  readonly pages: readonly string[] = $derived.by(() => {
    const at = this.columns.findIndex(({ field }) => field === 'transcribed.page');
    return at < 0 || !this.table?.ok ? [] : this.table.value.rows.map(({ cells }) => (cells[at] ?? '').trim());
  });

  /** How many rows a picture goes with. */
  rowsWith({ page }: PagePicture): number {
    const own = page.trim();
    if (own === '') return this.table?.ok ? this.table.value.rows.length : 0;
    return this.pages.filter((row) => row === own).length;
  }

  /** The page a file is called after, where a row stands on one of that name: "folio 17.png" is page 17. */
  #pageCalled(name: string): string {
    const plain = name.replace(/\.[^.]*$/, '').trim();
    const last = /[0-9]+[a-z]?$/i.exec(plain)?.[0]?.replace(/^0+(?=\d)/, '');
    return [plain, last].find((page) => page !== undefined && this.pages.includes(page)) ?? '';
  }

  /** Keeps pictures or documents of the old book; one that is there already stays as it is. */
  async keepPictures(files: readonly { readonly name: string; readonly bytes: Uint8Array }[]): Promise<void> {
    const problems: Problem[] = [];
    for (const { name, bytes } of files) {
      const answer = await this.daybook.host.ask('evidence', bytes);
      if (!answer.ok) problems.push(...answer.problems.map((p) => ({ ...p, field: name })));
      else if (!this.pictures.some(({ file }) => file === answer.value.file))
        this.pictures.push({ file: answer.value.file, name, page: this.#pageCalled(name) });
    }
    this.problems = problems;
  }

  /** Leaves a picture off; what is kept of it stays kept. */
  leaveOff(picture: PagePicture): void {
    this.pictures = this.pictures.filter((other) => other !== picture);
  }

  /** Takes the text of a file: UTF-8 and nothing else. */
  take(bytes: Uint8Array): void {
    let got: Result<string>;
    try {
      got = { ok: true, value: new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes) };
    } catch {
      got = bad(problem('import-not-text', ''));
    }
    this.text = got.ok ? got.value : '';
    this.headings();
    if (!got.ok) this.problems = got.problems;
  }

  /** Asks the host to keep every row. */
  async keep(): Promise<void> {
    if (this.asking || this.kind === '') return;
    this.asking = true;
    this.problems = [];
    this.kept = null;
    const answer = await this.daybook.host.ask('import', { kind: this.kind, text: this.text, mapping: this.mapping });
    if (answer.ok) {
      const { added, before, desk } = answer.value;
      this.kept = { added, before, endMark: desk.endMark };
      await this.daybook.start();
      await this.daybook.reload();
    } else this.problems = answer.problems;
    this.asking = false;
  }
}
