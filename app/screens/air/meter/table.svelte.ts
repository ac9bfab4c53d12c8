/**
 * A meter's own table on its way into the book: its text, which column is what, and what all its readings have in common. The host reads the rows again
 * one by one and keeps all of them or none; a row keeps its figure as it stood in its cell.
 */
import { readSeparated } from '../../../core/importing/separated.ts';
import type { AirSample, AirUnit } from '../../../core/kinds/air-reading.ts';
import type { Body } from '../../../core/kinds/index.ts';
import { readMeterTable } from '../../../core/meter-table.ts';
import { bad, type Problem, problem, type Result } from '../../../core/result.ts';
import type { Daybook } from '../../../daybook/book.svelte.ts';
import { csvOf } from '../../mercury/copied.ts';
import { usualMeter } from '../reading/reading-plan.ts';

type AirBody = Body<'air-reading'>;
const filledIn = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

export class MeterTaking {
  text = $state('');
  time = $state('');
  value = $state('');
  mark = $state('');
  end = $state('');
  /** When the last row ends: day and time, at the clock of the meter. */
  ends = $state({ day: '', time: '', timing: 'exact' as const });
  offset = $state('');
  meter = $state('');
  unit = $state<AirUnit | ''>('');
  sample = $state<AirSample | ''>('');
  person = $state('');
  place = $state('');
  activity = $state('');
  asking = $state(false);
  problems = $state.raw<readonly Problem[]>([]);
  kept = $state.raw<number | null>(null);
  readonly daybook: Daybook;

  constructor(daybook: Daybook) {
    this.daybook = daybook;
    this.offset = daybook.clock.now().slice(-6);
    this.meter = usualMeter(daybook.book);
  }

  /** The headings of the table; null where it cannot be read as one. */
  readonly headings: readonly string[] | null = $derived.by(() => {
    const table = this.text === '' ? null : readSeparated(this.text);
    return table?.ok ? table.value.headings : null;
  });

  /** The readings, or every fault by row and column; null while the questions above it are not answered. */
  readonly read: Result<readonly AirBody[]> | null = $derived.by(() => {
    const { unit, sample } = this;
    if (this.text === '') return null;
    const table = readSeparated(this.text);
    if (!table.ok) return table;
    if (this.time === '' || this.value === '' || unit === '' || sample === '') return null;
    const ends = this.ends.day === '' || this.ends.time === '' ? undefined : `${this.ends.day}T${this.ends.time}${this.offset}`;
    const said = {
      meter: filledIn(this.meter),
      person: sample === 'personal' ? filledIn(this.person) : undefined,
      place: filledIn(this.place),
      activity: filledIn(this.activity),
    };
    const answered = Object.fromEntries(Object.entries(said).filter(([, text]) => text !== undefined));
    return readMeterTable(this.text, {
      columns: {
        time: this.time,
        value: this.value,
        ...(this.mark ? { mark: this.mark } : {}),
        ...(this.end ? { end: this.end } : {}),
      },
      offset: this.offset,
      ...(ends === undefined ? {} : { ends }),
      reading: { sample, unit, mode: 'mean', ...answered },
    });
  });

  /** Takes the text of a file: UTF-8 and nothing else. */
  take(bytes: Uint8Array): void {
    this.changed();
    try {
      this.text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
      this.text = '';
      this.problems = bad(problem('import-not-text', '')).problems;
    }
  }

  /** What the host said of it holds no longer. */
  changed(): void {
    this.problems = [];
    this.kept = null;
  }

  /** Asks the host to keep every reading of the table, or none. */
  async keep(): Promise<void> {
    const read = this.read;
    if (this.asking || !read?.ok) return;
    const [first] = read.value;
    if (!first) return;
    this.asking = true;
    this.changed();
    const { from: _f, to: _t, shows: _s, ...common } = first;
    const fields = ['happened', 'body.from', 'body.to', 'body.shows'];
    const answer = await this.daybook.host.ask('import', {
      kind: 'air-reading',
      text: csvOf([fields, ...read.value.map((r) => [r.from, r.from, r.to ?? '', r.shows])]),
      mapping: {
        columns: fields.map((field) => ({ column: field, field })),
        same: [
          ...Object.entries(common).map(([key, value]) => ({ field: `body.${key}`, text: String(value) })),
          ...(this.daybook.writer === null ? [] : [{ field: 'by', text: this.daybook.writer }]),
        ],
      },
    });
    if (answer.ok) {
      this.kept = answer.value.added;
      await this.daybook.start();
      await this.daybook.reload();
    } else this.problems = answer.problems;
    this.asking = false;
  }
}
