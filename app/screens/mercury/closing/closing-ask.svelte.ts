/**
 * A period on its way to being closed: what is typed and its draft, what is wrong, and the asking. The id stays with the draft until the host has
 * answered, so that asking again closes once. A period and the next version of each closing have a draft of their own.
 */
import type { AskOf } from '../../../contract.ts';
import { falseAlarmAt } from '../../../core/book/site-figures.ts';
import type { Entry } from '../../../core/entry.ts';
import { type Problem, problem } from '../../../core/result.ts';
import type { Daybook } from '../../../daybook/book.svelte.ts';
import { EntryForm, type FormPlan, numberOr, textOr } from '../../../daybook/form.svelte.ts';

/** Which period, or which closing's next version. */
export interface Chosen {
  readonly opening: string | undefined;
  readonly closing: string;
  readonly replaces: string | undefined;
}

/** What is typed on the page, as its draft holds it. */
export interface ClosingValues {
  /** The key of the picked period; empty: none was picked, or the next version of a closing is issued. */
  period: string;
  note: string;
  falseAlarm: string;
}

/** The host makes the entry's body; the form holds what is typed. `again` is the closing a next version is issued of. The false alarm starts from the site's own. */
const planOf = ({ book, clock }: Daybook, again: string): FormPlan<ClosingValues> => ({
  name: again === '' ? 'closing' : `closing/${again}`,
  kind: 'closing',
  start: () => ({ period: '', note: '', falseAlarm: String(falseAlarmAt(book.current, clock.now()) ?? '') }),
  body: () => ({}),
});

export class ClosingAsk {
  form: EntryForm<ClosingValues> = $state.raw() as EntryForm<ClosingValues>;
  stage = $state<'writing' | 'asking'>('writing');
  problems = $state.raw<readonly Problem[]>([]);
  /** The last closing kept here. */
  kept = $state.raw<{ readonly entry: Entry; readonly endMark: string } | null>(null);
  readonly daybook: Daybook;

  constructor(daybook: Daybook, again = '') {
    this.daybook = daybook;
    this.form = new EntryForm(daybook, planOf(daybook, again));
  }

  /** Turns to a period, or to the next version of a closing, and takes up the draft that was left of it. */
  async open(again: string): Promise<void> {
    const plan = planOf(this.daybook, again);
    if (this.form.plan.name !== plan.name) {
      if (this.form.pending) await this.form.saveDraft();
      this.form = new EntryForm(this.daybook, plan);
      this.problems = [];
    }
    const { form } = this;
    await form.restore();
    // closed before the window could put its draft away
    if (this.daybook.book.current.byId.has(form.draft().id as string)) await form.startAfresh();
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
    const { form } = this;
    await form.saveDraft();
    const { note, falseAlarm } = form.values;
    const ask: Record<string, unknown> = { id: form.draft().id, happened: daybook.clock.now(), by: daybook.writer, closing };
    const more = { opening, replaces, note: textOr(note), falseAlarm: numberOr(falseAlarm) };
    for (const [key, value] of Object.entries(more)) if (value !== undefined) ask[key] = value;
    const answer = await daybook.host.ask('close-period', ask as AskOf<'close-period'>);
    if (answer.ok) {
      this.kept = { entry: answer.value.entry as Entry, endMark: answer.value.desk.endMark };
      await form.startAfresh();
      await daybook.start();
      await daybook.reload();
    } else this.problems = answer.problems;
    this.stage = 'writing';
    return answer.ok;
  }
}
