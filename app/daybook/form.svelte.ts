/**
 * The state of one form on its way to an entry, the same for every kind: what is typed, what is wrong and where, the draft that outlives a crash,
 * and keeping. The entry's id is made with the form and stays with its draft, so that asking to keep it twice keeps it once.
 *
 * To use it: make one with a plan (`new EntryForm(daybook, plan)`), call `await form.restore()`, bind fields to `form.values`, show
 * `form.at('body.…')` at each field, and put everything into `Sheet.svelte`, which saves drafts, reads back and keeps.
 */
import type { Kind } from '../core/kinds/index.ts';
import { type Problem, problem, type Result } from '../core/result.ts';
import { dayOf, isMoment } from '../core/time.ts';
import { problemText } from '../words/problems.ts';
import type { Daybook, Kept } from './book.svelte.ts';
import { asideName, asideOf, type DraftContent, draftContent, type Extras, noExtras, type When } from './draft-shape.ts';
import type { DraftRow } from './drafts.ts';
import { Steps } from './steps.ts';

/** What a form makes of what is typed. */
export interface FormPlan<V extends object> {
  /** The name its draft is kept under: "scale", "firing/<charge id>". One draft per name. */
  readonly name: string;
  readonly kind: Kind;
  /** What stands in an empty form: plain data only. */
  readonly start: () => V;
  /** The same with one thing in every list and by every id (`anyKey`), where `start` may have none: what a draft is held against. */
  readonly full?: () => V;
  /** The body of the entry; a member left undefined is left out. May be half filled in: the schema says what is missing. */
  readonly body: (values: V) => Record<string, unknown>;
}

/** Text of a field, or undefined where nothing was typed. */
export const textOr = (text: string): string | undefined => (text.trim() === '' ? undefined : text.trim());

/** The number a field holds as typed, or undefined where nothing was typed; what is no number goes through as text and is refused by the schema. */
export const numberOr = (text: string): number | string | undefined => {
  const plain = text.trim().replace('−', '-');
  return plain === '' ? undefined : /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : plain;
};

const delayMs = 250;
/** Letters that what a picture shows may have (`label` of core/shapes.ts). */
const mostLetters = 120;

/** What a person can change in a form. */
type Typed<V> = Pick<DraftContent<V>, 'values' | 'when' | 'extras'>;

export class EntryForm<V extends object> {
  readonly plan: FormPlan<V>;
  readonly daybook: Daybook;
  values = $state() as V;
  when: When = $state({ day: '', time: '', timing: 'exact' });
  extras: Extras = $state(noExtras());
  problems = $state.raw<readonly Problem[]>([]);
  stage = $state<'writing' | 'keeping' | 'kept'>('writing');
  /** The entry, once it is on the disk. */
  kept = $state.raw<Kept | null>(null);
  /** When the draft this form was taken up from was last touched; empty for a fresh form. */
  takenUp = $state('');
  /** It has been looked whether a draft was left: what stands in the fields is what the form begins with. */
  restored = $state(false);
  /** Drafts of this form that could not be read: they are kept aside, as they are. */
  unread = $state.raw<readonly DraftRow[]>([]);
  /** The draft could not be saved: what is typed lives in this window only. */
  draftLost = $state(false);
  /** A picture or document is on its way to the host. */
  attaching = $state(false);
  /** Why the last picture or document was not taken, in sentences. */
  notAttached = $state.raw<readonly string[]>([]);
  /** A change can be taken back. */
  canTakeBack = $state(false);
  /** What was typed was thrown away and can be had back, as long as nothing else is kept. */
  thrown = $state(false);
  #thrown: DraftContent<V> | null = null;
  #steps: Steps<Typed<V>> | null = null;
  #id = '';
  #timer: ReturnType<typeof setTimeout> | null = null;
  #fields = new Set<string>();
  #asked = false;
  /** A draft that cannot be read lies where this form would save its own. */
  #blocked = false;

  constructor(daybook: Daybook, plan: FormPlan<V>) {
    this.daybook = daybook;
    this.plan = plan;
    this.values = plan.start();
    this.#fresh();
  }

  #fresh(): void {
    const now = this.daybook.clock.now();
    this.#id = crypto.randomUUID();
    this.when = { day: dayOf(now), time: now.slice(11, 16), timing: 'exact' };
    this.extras = noExtras();
    this.problems = [];
    this.notAttached = [];
    this.kept = null;
    this.takenUp = '';
    this.#asked = false;
  }

  /** When it happened, as the fields say; empty while a field is. */
  get happened(): string {
    const { day, timing } = this.when;
    const time = timing === 'day' ? '12:00' : this.when.time;
    const text = `${day}T${time}${this.daybook.clock.offsetAt(day, time)}`;
    return isMoment(text) ? text : '';
  }

  /** Who writes it. The first person of a book writes their own entry. */
  get by(): string | null {
    const first = this.plan.kind === 'person' && this.daybook.book.registers.person.size === 0;
    return this.daybook.writer ?? (first ? this.#id : null);
  }

  /** Whether it is written by the very person it enters. */
  get byItself(): boolean {
    return this.by === this.#id;
  }

  /** The entry as it would be handed in. */
  draft(): Record<string, unknown> {
    const { witness, formNumber, formPage, book, page, evidence } = this.extras;
    const form = textOr(formNumber) || textOr(formPage) ? { number: formNumber.trim(), page: textOr(formPage) } : undefined;
    const transcribed = textOr(book) || textOr(page) ? { book: book.trim(), page: textOr(page) } : undefined;
    return pruned({
      id: this.#id,
      happened: this.happened === '' ? undefined : this.happened,
      by: this.by,
      kind: this.plan.kind,
      body: this.plan.body($state.snapshot(this.values) as V),
      timing: this.when.timing === 'exact' ? undefined : this.when.timing,
      witness: witness.length > 0 ? [...witness] : undefined,
      form,
      transcribed,
      evidence: evidence.length > 0 ? evidence.map(({ file, shows }) => ({ file, shows: textOr(shows) })) : undefined,
    });
  }

  /** Checks all of it; true when nothing is wrong. From the first time on, every change checks again. */
  check(): boolean {
    this.#asked = true;
    const read = this.daybook.check(this.draft());
    const problems = read.ok ? [] : [...read.problems];
    if (this.daybook.writer === null && this.plan.kind !== 'person' && this.daybook.people.length > 0)
      problems.push(problem('writer-missing', 'by'));
    this.problems = problems;
    return problems.length === 0;
  }

  /** Has the host keep a picture or document at once, which then goes with the entry; the same one goes with it once. */
  async attach(bytes: Uint8Array, shows: string): Promise<void> {
    this.attaching = true;
    const answer = await this.daybook.host.ask('evidence', bytes);
    this.attaching = false;
    this.notAttached = answer.ok ? [] : answer.problems.map(problemText);
    if (!answer.ok || this.extras.evidence.some((one) => one.file === answer.value.file)) return;
    this.extras.evidence.push({ file: answer.value.file, shows: shows.trim().slice(0, mostLetters) });
  }

  /** Sentences on what is wrong with a field; a field that asks is known to say so itself. */
  at(field: string): readonly string[] {
    this.#fields.add(field);
    return this.problems.filter((p) => p.field === field).map(problemText);
  }

  /** Problems of a field and everything below it, their paths from there on: for a field made of several. */
  below(field: string): readonly Problem[] {
    this.#fields.add(`${field}.`);
    return this.problems.flatMap((p) => {
      if (p.field === field) return [{ ...p, field: '' }];
      return p.field.startsWith(`${field}.`) ? [{ ...p, field: p.field.slice(field.length + 1) }] : [];
    });
  }

  /** Why the host did not take it, where that lies with no field: it does not answer, or lets this window in no more. */
  get unreached(): 'silent' | 'shut' | null {
    const codes = this.problems.map((p) => p.code);
    return codes.includes('no-session') ? 'shut' : codes.includes('host-silent') ? 'silent' : null;
  }

  /** Problems that no field on the page shows. */
  get homeless(): readonly string[] {
    const shown = (p: Problem) =>
      this.#fields.has(p.field) || [...this.#fields].some((f) => f.endsWith('.') && `${p.field}.`.startsWith(f));
    return this.problems.filter((p) => !shown(p)).map(problemText);
  }

  /**
   * To be called after every change: saves the draft a quarter of a second after the first change that is not in it yet, however long the typing
   * goes on. A window that is let in no more leaves the draft to the one opened after it.
   */
  touched(): void {
    if (this.stage === 'kept') return;
    this.#steps?.note(this.#typed());
    this.canTakeBack = (this.#steps?.count ?? 0) > 0;
    if (this.#asked) this.check();
    if (this.#timer !== null || this.daybook.reach === 'shut') return;
    this.#timer = setTimeout(() => void this.saveDraft(), delayMs);
  }

  #typed(): Typed<V> {
    return $state.snapshot({ values: this.values, when: this.when, extras: this.extras }) as Typed<V>;
  }

  /** From here on changes are noted: what stands there is what the form begins with. */
  #begin(): void {
    this.#steps = new Steps(this.#typed());
    this.canTakeBack = false;
  }

  /** Takes the last change back, with the draft; nothing happens where none was made. */
  takeBack(): void {
    const before = this.stage === 'writing' ? this.#steps?.back() : null;
    if (!before) return;
    // copies: what is typed next must not change what was noted
    const { values, when, extras } = structuredClone(before);
    this.values = values;
    this.when = when;
    this.extras = extras;
    this.canTakeBack = (this.#steps?.count ?? 0) > 0;
    this.touched();
  }

  /** Brings back what was thrown away last, in place of what stands there now. */
  bringBack(): void {
    const content = this.#thrown;
    if (!content || this.stage !== 'writing') return;
    this.#id = content.id;
    this.values = content.values;
    this.when = content.when;
    this.extras = content.extras;
    this.#thrown = null;
    this.thrown = false;
    this.#begin();
    this.touched();
  }

  /** Something was typed that is not in the draft yet. */
  get pending(): boolean {
    return this.#timer !== null;
  }

  /** Saves the draft now. */
  async saveDraft(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    // a window that only reads must not write over the draft of the one that writes
    if (this.stage === 'kept' || this.daybook.elsewhere) return;
    if (this.#blocked && !(await this.#putAside())) {
      this.draftLost = true;
      return;
    }
    const content = $state.snapshot({ id: this.#id, values: this.values, when: this.when, extras: this.extras });
    try {
      await this.daybook.store.saveDraft({ form: this.plan.name, touched: this.daybook.clock.now(), content });
      this.draftLost = false;
    } catch {
      this.draftLost = true;
    }
  }

  /** Takes up the draft of this form, if one was left. One that cannot be read is told and kept aside: nothing is written over it. */
  async restore(): Promise<void> {
    const row = await this.daybook.store.draft(this.plan.name).catch(() => undefined);
    const content = row && this.#readable(row);
    if (row && content) {
      this.#id = content.id;
      this.values = content.values;
      this.when = content.when;
      this.extras = { ...noExtras(), ...content.extras };
      this.takenUp = row.touched;
    }
    this.#blocked = row !== undefined && !content;
    // a window that only reads leaves the draft where it is, and tells it all the same
    if (this.#blocked && !this.daybook.elsewhere) await this.#putAside();
    await this.#lookAside();
    this.#begin();
    this.restored = true;
  }

  /** What a stored draft holds, or null where this form could not hold it. */
  #readable(row: DraftRow): DraftContent<V> | null {
    const content = draftContent(row, (this.plan.full ?? this.plan.start)());
    if (!content) return null;
    try {
      this.plan.body(content.values);
      return content;
    } catch {
      return null;
    }
  }

  /** Moves the draft that cannot be read out of the way; false where that fails, and then it lies where it lay. */
  async #putAside(): Promise<boolean> {
    const { store } = this.daybook;
    try {
      const row = await store.draft(this.plan.name);
      // another window of this daybook may have put it aside by now, and a sound one begun
      if (row && !this.#readable(row)) {
        const taken = new Set((await store.drafts()).map((r) => r.form));
        let n = 1;
        while (taken.has(asideName(this.plan.name, n))) n++;
        // first the copy, then the place: between the two it is there twice, never not at all
        await store.saveDraft({ ...row, form: asideName(this.plan.name, n) });
        await store.dropDraft(this.plan.name);
      }
      this.#blocked = false;
      return true;
    } catch {
      return false;
    }
  }

  async #lookAside(): Promise<void> {
    const { name } = this.plan;
    const rows = await this.daybook.store.drafts().catch(() => []);
    this.unread = rows.filter((row) => asideOf(row.form) === name || (this.#blocked && row.form === name));
  }

  /** Throws a draft that could not be read away, because a person said so. */
  async dropUnread(row: DraftRow): Promise<void> {
    await this.daybook.store.dropDraft(row.form).catch(() => {});
    if (row.form === this.plan.name) this.#blocked = false;
    await this.#lookAside();
  }

  /** Throws what is typed and its draft away and begins anew. What was not kept can be brought back while this form stands. */
  async startAfresh(): Promise<void> {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
    this.#thrown = this.stage === 'kept' ? null : { id: this.#id, ...this.#typed() };
    this.thrown = this.#thrown !== null;
    this.stage = 'writing';
    this.values = this.plan.start();
    this.#fresh();
    this.#begin();
    if (!this.#blocked) await this.daybook.store.dropDraft(this.plan.name).catch(() => {});
  }

  /** Checks, hands in and waits for the disk. The draft goes only after the entry is kept. */
  async keep(): Promise<Result<Kept> | null> {
    if (this.stage === 'keeping' || !this.check()) return null;
    this.stage = 'keeping';
    const first = this.byItself;
    await this.saveDraft();
    const answer = await this.daybook.keep(this.draft());
    if (!answer.ok) {
      this.problems = answer.problems;
      this.stage = 'writing';
      return answer;
    }
    this.kept = answer.value;
    this.stage = 'kept';
    this.#thrown = null;
    this.thrown = false;
    this.canTakeBack = false;
    if (first) await this.daybook.write(answer.value.entry.id);
    if (!this.#blocked) await this.daybook.store.dropDraft(this.plan.name).catch(() => {});
    return answer;
  }
}

/** Without members that are undefined, at any depth. */
function pruned<T>(value: T): T {
  if (Array.isArray(value)) return value.map(pruned) as T;
  if (value === null || typeof value !== 'object') return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .map(([k, v]) => [k, pruned(v)]),
  ) as T;
}
