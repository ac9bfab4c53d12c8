/** The questions every rule asks of a book: is this id known, has this day come, can this weight be read. Gathers all problems; refuses nothing itself. */
import type { Body, Kind } from '../../kinds/index.ts';
import { type Problem, problem } from '../../result.ts';
import type { Weight } from '../../shapes.ts';
import { dayNumber, dayOf, minutesOf } from '../../time.ts';
import type { Book } from '../book.ts';
import { belowNothing } from './below-nothing.ts';

/** How far ahead of the machine's clock a moment may lie: a day, for clocks and offsets that differ. */
const aheadMinutes = 1440;
/** No record of this trade is older. */
const earliestYear = 1800;

export class Asking {
  readonly problems: Problem[] = [];
  readonly book: Book;
  /** The machine's clock, as a moment. */
  readonly now: string;
  /** The entry whose new reading this is, if it is a correction: what it used up is free. */
  readonly instead: string | null;
  /** When it happened, as a moment: a scale counts as it stood then. */
  readonly happened: string;
  /** Copied from an older book: what stands there is kept as it stands, however odd. */
  readonly transcribed: boolean;

  constructor(book: Book, now: string, of: { instead?: string; happened: string; transcribed: boolean }) {
    this.book = book;
    this.now = now;
    this.instead = of.instead ?? null;
    this.happened = of.happened;
    this.transcribed = of.transcribed;
  }

  refuse(code: string, field: string, data?: Problem['data']): void {
    this.problems.push(problem(code, field, data));
  }

  /** The id is that of an entry of this kind. */
  known(id: string | undefined, wanted: Kind, field: string): void {
    if (id !== undefined && this.book.current.byId.get(id)?.kind !== wanted) this.refuse('unknown-id', field, { id, wanted });
  }

  /** Scale and vessel of the weight are known, a vessel's tare is written down with it, and what is left is not less than nothing. */
  weight(weight: Weight | undefined, field: string): void {
    if (weight?.how !== 'scale') return;
    this.known(weight.scale, 'scale', `${field}.scale`);
    this.known(weight.vessel, 'vessel', `${field}.vessel`);
    if (weight.vessel !== undefined && weight.tare === undefined) this.refuse('tare-missing', `${field}.tare`);
    if (!this.transcribed && belowNothing(weight, this.happened, this.book.registers))
      this.refuse('net-below-nothing', `${field}.gross`, { gross: weight.gross, tare: weight.tare ?? '' });
  }

  /** The moment has come, and is not before the trade. */
  moment(moment: string | undefined, field: string): void {
    if (moment === undefined) return;
    const ahead = (minutesOf(moment) ?? 0) - (minutesOf(this.now) ?? 0);
    if (ahead > aheadMinutes) this.refuse('in-the-future', field, { read: dayOf(moment), today: dayOf(this.now) });
    else if (Number(moment.slice(0, 4)) < earliestYear)
      this.refuse('too-early', field, { read: dayOf(moment), earliest: earliestYear });
  }

  /** The day has come. */
  pastDay(day: string | undefined, field: string): void {
    if (day === undefined) return;
    const ahead = (dayNumber(day) ?? 0) - (dayNumber(dayOf(this.now)) ?? 0);
    if (ahead > 1) this.refuse('in-the-future', field, { read: day, today: dayOf(this.now) });
  }

  /** No key stands twice. */
  keys(keys: readonly { readonly key: string; readonly field: string }[]): void {
    const seen = new Set<string>();
    for (const { key, field } of keys) {
      if (seen.has(key)) this.refuse('key-twice', field, { key });
      seen.add(key);
    }
  }
}

/** The rules of kinds of entry, by their names. */
export type Rules = { readonly [K in Kind]?: (body: Body<K>, asking: Asking, happened: string) => void };
