/**
 * Whether what lies in the browser's database as a draft is one of this form. It may be anything: damaged, or left by another version. A draft is
 * taken up whole or not at all; nothing is mended, guessed or left out, since what is left out of a form is left out of the entry.
 */
import { massUnits } from '../core/mass.ts';
import { id } from '../core/shapes.ts';
import { isMoment } from '../core/time.ts';
import type { DraftRow } from './drafts.ts';

/** Day, time and how exact, as the fields of a form hold them. */
export interface When {
  day: string;
  time: string;
  timing: 'exact' | 'about' | 'day';
}

/** What any entry may carry besides its body, as the fields of a form hold it. */
export interface Extras {
  witness: string[];
  formNumber: string;
  formPage: string;
  book: string;
  page: string;
  /** Pictures and documents that lie at the host already: the file's name there, and what it shows. */
  evidence: { file: string; shows: string }[];
}

export const noExtras = (): Extras => ({ witness: [], formNumber: '', formPage: '', book: '', page: '', evidence: [] });

/** What a draft holds. */
export interface DraftContent<V> {
  readonly id: string;
  readonly values: V;
  readonly when: When;
  readonly extras: Extras;
}

/** The one key of a sample of things held by their ids: stands for every id there may be. */
export const anyKey = '*';

const someWhen: When = { day: '', time: '', timing: 'exact' };

/** Texts that are one of a few: the key, a key that stands beside it, and what it may say. */
const closed: readonly (readonly [key: string, beside: string, texts: readonly string[]])[] = [
  ['timing', 'day', ['exact', 'about', 'day']],
  ['how', 'tareHow', ['scale', 'volume', 'stated']],
  ['tareHow', 'how', ['none', 'reading', 'vessel']],
  ['unit', 'amount', ['', ...massUnits]],
  ['take', 'own', ['whole', 'part', 'not-found']],
];

/** Where a moment was filled from, which its field may leave out; and what drafts of before forms could take it do not have. */
const mayLack: ReadonlySet<string> = new Set(['was', 'evidence', 'log', 'noted', 'aimedFrom', 'aimedTo', 'plates']);

const isMember = (value: unknown): value is Readonly<Record<string, unknown>> =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

/**
 * True where a value has the members of the sample, no others, and the same kinds of things in them. A list holds things like the first of the
 * sample's list, texts where that is empty; a sample with the one key `*` stands for things by their ids.
 */
export function sameShape(value: unknown, sample: unknown): boolean {
  if (Array.isArray(sample)) return Array.isArray(value) && value.every((one) => sameShape(one, sample[0] ?? ''));
  if (!isMember(sample)) return typeof value === typeof sample && (value === null) === (sample === null);
  if (!isMember(value)) return false;
  const [keys, known] = [Object.keys(value), Object.keys(sample)];
  // a key of that name is lost wherever members are copied one by one
  if (keys.includes('__proto__')) return false;
  if (known.length === 1 && known[0] === anyKey) return keys.every((key) => sameShape(value[key], sample[anyKey]));
  if (!keys.every((key) => known.includes(key))) return false;
  if (!known.every((key) => (Object.hasOwn(value, key) ? sameShape(value[key], sample[key]) : mayLack.has(key)))) return false;
  return closed.every(
    ([key, beside, texts]) => !known.includes(key) || !known.includes(beside) || texts.includes(value[key] as string),
  );
}

/** The content of a stored draft of a form whose values are like the sample, or null where it is none. Never throws. */
export function draftContent<V extends object>(row: DraftRow, sample: V): DraftContent<V> | null {
  const whole = { id: '', values: sample, when: someWhen, extras: { ...noExtras(), evidence: [{ file: '', shows: '' }] } };
  if (!isMoment(row.touched) || !sameShape(row.content, whole)) return null;
  const content = row.content as DraftContent<V>;
  return id.safeParse(content.id).success ? content : null;
}

const aside = 'unread/';

/** Name under which a draft of this form that could not be read is kept aside; `n` tells several apart. */
export const asideName = (form: string, n: number): string => `${aside}${n}/${form}`;

/** The form that a draft kept aside was of; null for the name of any other draft. */
export function asideOf(name: string): string | null {
  const m = /^unread\/\d+\/(.*)$/s.exec(name);
  return m ? (m[1] ?? '') : null;
}

/** What a draft holds, as text to copy from; empty where even that cannot be made. */
export function contentText(row: DraftRow): string {
  try {
    return JSON.stringify(row.content, null, 1) ?? '';
  } catch {
    return '';
  }
}
