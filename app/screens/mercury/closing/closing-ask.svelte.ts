/**
 * A period on its way to being closed: what is typed, what is wrong, and the asking. The id is made once and kept until the host has answered, so that
 * asking again closes once.
 */
import type { AskOf } from '../../../contract.ts';
import type { Entry } from '../../../core/entry.ts';
import { type Problem, problem } from '../../../core/result.ts';
import type { Daybook } from '../../../daybook/book.svelte.ts';
import { numberOr, textOr } from '../../../daybook/form.svelte.ts';

/** Which period, or which closing's next version. */
export interface Chosen {
  readonly opening: string | undefined;
  readonly closing: string;
  readonly replaces: string | undefined;
}

export class ClosingAsk {
  note = $state('');
  falseAlarm = $state('');
  stage = $state<'writing' | 'asking'>('writing');
  problems = $state.raw<readonly Problem[]>([]);
  /** The last closing kept here. */
  kept = $state.raw<{ readonly entry: Entry; readonly endMark: string } | null>(null);
  readonly daybook: Daybook;
  #id: string = crypto.randomUUID();

  constructor(daybook: Daybook) {
    this.daybook = daybook;
  }

  /** Asks the host to close it; the entries are read anew when it has. True when it is closed. */
  async send({ opening, closing, replaces }: Chosen): Promise<boolean> {
    if (this.stage === 'asking') return false;
    const { daybook } = this;
    if (daybook.writer === null && daybook.people.length > 0) {
      this.problems = [problem('writer-missing', 'by')];
      return false;
    }
    this.stage = 'asking';
    this.problems = [];
    const ask: Record<string, unknown> = { id: this.#id, happened: daybook.clock.now(), by: daybook.writer, closing };
    const more = { opening, replaces, note: textOr(this.note), falseAlarm: numberOr(this.falseAlarm) };
    for (const [key, value] of Object.entries(more)) if (value !== undefined) ask[key] = value;
    const answer = await daybook.host.ask('close-period', ask as AskOf<'close-period'>);
    if (answer.ok) {
      this.kept = { entry: answer.value.entry as Entry, endMark: answer.value.desk.endMark };
      this.#id = crypto.randomUUID();
      this.note = '';
      this.falseAlarm = '';
      await daybook.start();
      await daybook.reload();
    } else this.problems = answer.problems;
    this.stage = 'writing';
    return answer.ok;
  }
}
