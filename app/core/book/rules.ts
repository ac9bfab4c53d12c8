/**
 * What cannot be meant, and is therefore refused before anything is written: an id nobody knows, a day that has not come, a lot that is used up,
 * two answers that contradict each other. Everything that may be true, however awkward, is kept and flagged instead (`flags.ts`). The rules of
 * each kind stand in `rules/`.
 */
import type { Draft } from '../entry.ts';
import { serialStands } from '../form-serial.ts';
import { type Body, bodyFrom, isKind, type Kind } from '../kinds/index.ts';
import { type Problem, problem } from '../result.ts';
import type { Book } from './book.ts';
import { Asking } from './rules/asking.ts';
import { rulesOf } from './rules/by-kind.ts';

/** Every reason this draft cannot be kept in this book. `now` is the machine's clock as a moment. Empty: it can be kept. */
export function checkDraft(book: Book, draft: Draft, now: string): readonly Problem[] {
  const transcribed = draft.transcribed !== undefined;
  const asking = new Asking(book, now, { happened: draft.happened, transcribed });
  asking.moment(draft.happened, 'happened');
  if (draft.form && serialStands(draft.form.number) === false)
    asking.problems.push(problem('form-number', 'form.number', { read: draft.form.number }));
  // the first person of a book writes their own entry
  const people = [draft.by, ...(draft.witness ?? [])];
  for (const [i, id] of people.entries()) {
    if (id === null || (id === draft.id && draft.kind === 'person')) continue;
    asking.known(id, 'person', i === 0 ? 'by' : `witness[${i - 1}]`);
  }
  if (!isKind(draft.kind)) return [...asking.problems, problem('unknown-kind', 'kind', { kind: draft.kind })];
  if (draft.kind === 'correction')
    return [...asking.problems, ...checkCorrection(book, draft.body as Body<'correction'>, now, transcribed)];
  rulesOf(draft.kind, draft.body, draft.happened, asking);
  return asking.problems;
}

/** A correction is held to the rules of the kind it corrects; what the old reading used up is free for the new one. */
function checkCorrection(book: Book, body: Body<'correction'>, now: string, transcribed: boolean): Problem[] {
  const root = rootReading(book, body.corrects);
  if (!root) return [problem('unknown-id', 'body.corrects', { id: body.corrects, wanted: 'entry' })];
  if (root.kind === 'strike') return [problem('correction-of-strike', 'body.corrects')];
  if (root.struck) return [problem('already-struck', 'body.corrects')];
  const inner = bodyFrom(root.kind as Kind, body.body);
  const within = (p: Problem): Problem => ({ ...p, field: `body.${p.field}` });
  if (!inner.ok) return inner.problems.map(within);
  const happened = body.happened ?? root.happened;
  const copied = transcribed || root.entry.transcribed !== undefined;
  const asking = new Asking(book, now, { instead: root.id, happened, transcribed: copied });
  rulesOf(root.kind, inner.value, happened, asking);
  const problems = asking.problems.map(within);
  if (body.happened === undefined) return problems;
  const dated = new Asking(book, now, { happened, transcribed: copied });
  dated.moment(body.happened, 'body.happened');
  return [...problems, ...dated.problems];
}

/** Follows a correction back to the entry first written. */
function rootReading(book: Book, id: string) {
  const seen = new Set<string>();
  let reading = book.current.byId.get(id);
  while (reading?.kind === 'correction') {
    if (seen.has(reading.id)) return undefined;
    seen.add(reading.id);
    reading = book.current.byId.get((reading.body as Body<'correction'>).corrects);
  }
  return reading;
}
