/**
 * What was put right, taken back or noted about the entries a paper rests on: who, when and why, with the old reading beside the new one.
 * Nothing that was ever written about them is left off.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { type Reading, rootOf } from '../../core/book/current.ts';
import type { Run } from '../../core/book/runs.ts';
import type { Entry } from '../../core/entry.ts';
import { bodyFrom, registerKinds } from '../../core/kinds/index.ts';
import { compareMoments, isDay, isMoment } from '../../core/time.ts';
import { dayText, momentText } from '../../words/dates.ts';
import { runSheet as words } from '../../words/papers.ts';
import { theKind } from '../../words/papers-common.ts';
import { fieldText } from '../../words/record-fields.ts';
import { inDegrees, recordValue } from '../../words/record-values.ts';
import { aside, ledger, part, type Row, section, sentence } from '../ledger.ts';
import { personName, thingName } from '../names.ts';
import { entriesOf, struckOf } from './concerns.ts';

/** Every value of a body with the path it stands at. */
export function valuesOf(body: unknown, path = ''): Map<string, unknown> {
  const found = new Map<string, unknown>();
  const walk = (value: unknown, at: string) => {
    if (Array.isArray(value)) for (const [i, item] of value.entries()) walk(item, `${at}[${i}]`);
    else if (typeof value === 'object' && value !== null)
      for (const [key, item] of Object.entries(value)) walk(item, at === '' ? key : `${at}.${key}`);
    else if (value !== undefined) found.set(at, value);
  };
  walk(body, path);
  return found;
}

/** Days, moments and names in place of what the record keeps; anything else in the site's notation. */
function valueText(book: Book, path: string, kept: unknown, moment: string): string {
  const value = String(kept);
  if (isDay(value)) return dayText(value);
  if (isMoment(value)) return momentText(value);
  const lot = book.lots.all.get(value);
  if (lot) return lot.label;
  const kind = registerKinds.find((k) => book.registers[k].has(value));
  return kind ? thingName(book, kind, value, moment) : recordValue(path.split(/[.[\]]+/), kept);
}

/** Fields that read differently in two bodies, old beside new. */
export function differences(book: Book, before: unknown, after: unknown, moment: string): Row[] {
  const [old, now] = [valuesOf(before), valuesOf(after)];
  const text = (path: string, value: unknown) =>
    value === undefined ? words.nothingThere : valueText(book, path, value, moment);
  return [...new Set([...old.keys(), ...now.keys()])]
    .filter((path) => old.get(path) !== now.get(path))
    .map((path) => ({ cells: [inDegrees(fieldText(path)), text(path, old.get(path)), text(path, now.get(path))] }));
}

const kindName = (reading: Reading): string => words.entryOf(theKind(reading.kind), momentText(reading.happened));

const byWhom = (book: Book, entry: Entry): Content =>
  aside(words.changedBy(personName(book, entry.by, entry.happened), momentText(entry.written)));

const why = (entry: Entry): Content => sentence(words.why(String(entry.body.why ?? '')));

interface Change {
  readonly written: string;
  readonly content: readonly Content[];
}

function corrections(book: Book, reading: Reading): Change[] {
  let body: unknown = reading.entry.body;
  let happened = reading.entry.happened;
  return reading.corrections.map((correction) => {
    const next = correction.body.body;
    const head = [part(words.corrected(kindName(reading))), byWhom(book, correction), why(correction)];
    if (!bodyFrom(reading.kind, next).ok) return { written: correction.written, content: [...head, sentence(words.notTaken)] };
    const rows = differences(book, body, next, happened);
    const when = correction.body.happened;
    if (typeof when === 'string' && when !== happened) {
      rows.unshift({ cells: [words.happenedField, momentText(happened), momentText(when)] });
      happened = when;
    }
    body = next;
    const table = ledger(
      [
        { head: words.field, share: 34 },
        { head: words.oldReading, share: 33 },
        { head: words.newReading, share: 33 },
      ],
      rows,
      { breaking: true },
    );
    return { written: correction.written, content: [...head, ...(rows.length > 0 ? table : [sentence(words.sameReading)])] };
  });
}

function strike(book: Book, what: string, struck: Entry, body: unknown, moment: string): Change {
  const rows = [...valuesOf(body)].map(([path, value]) => ({
    cells: [inDegrees(fieldText(path)), valueText(book, path, value, moment)],
  }));
  return {
    written: struck.written,
    content: [
      part(what),
      byWhom(book, struck),
      why(struck),
      ...ledger(
        [
          { head: words.field, share: 45 },
          { head: words.asItStood, share: 55 },
        ],
        rows,
        { breaking: true },
      ),
    ],
  };
}

/** Struck corrections and notes: entries of their own that speak of one of `about`. */
function besides(book: Book, about: readonly Reading[]): Change[] {
  const entries = new Map(book.entries.map((entry) => [entry.id, entry]));
  const known = new Map(about.map((reading) => [reading.id, reading]));
  return [...book.current.byId.values()].flatMap((reading): Change[] => {
    const { entry, struck } = reading;
    if (reading.kind === 'correction' && struck) {
      const root = rootOf(entry.id, entries);
      const of = root ? known.get(root.id) : undefined;
      return of ? [strike(book, words.struckCorrection(kindName(of)), struck, entry.body.body, reading.happened)] : [];
    }
    const of = reading.kind === 'note' && !struck ? known.get(String(entry.body.about)) : undefined;
    const text = String((reading.body as { text?: unknown }).text ?? '');
    return of
      ? [{ written: entry.written, content: [part(words.noted(kindName(of))), byWhom(book, entry), sentence(text)] }]
      : [];
  });
}

/** Corrections, strikes and notes about these entries, in the order they were written; `gone` are the struck ones. */
export function changesOf(book: Book, standing: readonly Reading[], gone: readonly Reading[], none: string): Content[] {
  const all = [
    ...[...standing, ...gone].flatMap((reading) => corrections(book, reading)),
    ...gone.flatMap((reading) =>
      reading.struck ? [strike(book, words.struck(kindName(reading)), reading.struck, reading.body, reading.happened)] : [],
    ),
    ...besides(book, [...standing, ...gone]),
  ].sort((a, b) => compareMoments(a.written, b.written));
  return [section(words.changes), ...(all.length === 0 ? [sentence(none)] : all.flatMap(({ content }) => content))];
}

/** Those of a run. */
export const changes = (book: Book, run: Run, scaleStates: readonly string[]): Content[] =>
  changesOf(book, entriesOf(book, run, scaleStates), struckOf(book, run), words.noChanges);
