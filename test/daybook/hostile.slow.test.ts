/**
 * Hostile drafts in the browser's database before every form that takes one up: none throws, and none is dropped. A hundred thousand in all, from
 * drafts as the forms leave them with bytes and members changed; whatever is taken up makes a body, whatever is not has lost nothing.
 */
import { describe, expect, it } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { draftFrom, isKind, type Kind, kinds } from '../../app/core/kinds/index.ts';
import { draftContent, noExtras, sameShape } from '../../app/daybook/draft-shape.ts';
import type { DraftRow } from '../../app/daybook/drafts.ts';
import type { FormPlan } from '../../app/daybook/form.svelte.ts';
import { notePlan } from '../../app/screens/daybook/plans.ts';
import { filled, oneOfEach } from '../../app/screens/daybook/typed.ts';
import { writePlan } from '../../app/screens/daybook/write/plan.ts';
import { chargePlan } from '../../app/screens/retort/charge-form.ts';
import { cleanUpPlan } from '../../app/screens/retort/clean-up-form.ts';
import { firingPlan } from '../../app/screens/retort/firing-form.ts';
import { draftPlace } from '../../app/screens/today/drafts.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import { todayWords } from '../../app/words/today.ts';
import golden from '../golden/drafts.json' with { type: 'json' };
import { byBytes, byShapes, casesEach, shapesEach, shapesOf } from '../host/mutate.ts';

const now = '2026-03-14T09:20+13:00';
const book = readBook([]);

/** A form as a screen has it, whatever it holds. */
type Form = Pick<FormPlan<object>, 'name'> & { full: () => object; start: () => object; body: (values: object) => unknown };
const form = <V extends object>({ name, start, full = start, body }: FormPlan<V>): Form => ({
  name,
  start,
  full,
  body: (values) => body(values as V),
});

const forms: readonly Form[] = [
  form(chargePlan('scale-bench', '', () => ['entry-0001/b1', 'entry-0001/b2'], [])),
  form(firingPlan('charge-000001', 'scale-bench', '')),
  form(cleanUpPlan('scale-bench')),
  form(notePlan(undefined)),
  ...(Object.keys(kinds) as Kind[]).filter((kind) => kind !== 'correction').map((kind) => form(writePlan(kind, { book, now }))),
];

const rowOf = (name: string, content: unknown): DraftRow => ({ form: name, touched: now, content });
const left = (values: unknown) => ({
  id: 'b4f7c2d0-0000-4000-8000-000000000001',
  values,
  when: { day: '2026-03-14', time: '09:20', timing: 'exact' },
  extras: noExtras(),
});
/** A form as it begins, and with something in every list. */
const leftBy = forms.flatMap((f) => [left(f.start()), left(f.full())]);

/** Takes a stored draft up as a form does, and lists it as the Today room does. */
function taken(f: Form, row: DraftRow): unknown {
  const content = draftContent(row, f.full());
  const place = draftPlace(book, row);
  if (typeof todayWords.draft(place.name, place.touched) !== 'string') throw new Error('no words');
  if (!content) return null;
  const body = f.body(content.values);
  const got = draftFrom({ id: content.id, happened: now, by: null, kind: 'note', body: JSON.parse(JSON.stringify(body)) });
  return got.ok || got.problems.length;
}

describe('a draft in the browser’s database', () => {
  it('as its form leaves it is taken up, with nothing and with something in every list', () => {
    for (const f of forms)
      for (const values of [f.start(), f.full()])
        expect([f.name, draftContent(rowOf(f.name, left(values)), f.full()) !== null]).toEqual([f.name, true]);
  });

  it('filled from an entry of any kind is one of its form', () => {
    const wrong = golden.flatMap(({ kind, body }) => {
      if (!isKind(kind)) return [kind];
      const values = { fields: filled(fieldsOf[kind], body as Record<string, unknown>) };
      return sameShape(values, { fields: oneOfEach(fieldsOf[kind]) }) ? [] : [kind];
    });
    expect([golden.length > 30, wrong]).toEqual([true, []]);
  });

  it('of any bytes and of any shape is taken up whole or left, and never throws', () => {
    let [i, up, not] = [0, 0, 0];
    const read = (content: unknown) => {
      const f = forms[Math.floor((i++ % leftBy.length) / 2)]!;
      const answer = taken(f, rowOf(f.name, content));
      if (answer === null) not++;
      else up++;
      return answer;
    };
    const bytes = byBytes(
      'stored draft',
      leftBy.map((content) => JSON.stringify(content)),
      (changed) => {
        try {
          return read(JSON.parse(changed.toString('utf8')));
        } catch (error) {
          if (!(error instanceof SyntaxError)) throw error;
          // what the database hands back is a value always: here it is the text itself
          return read(changed.toString('utf8'));
        }
      },
    );
    expect(bytes + byShapes('stored draft', shapesOf(leftBy), read, shapesEach)).toBe(casesEach);
    // neither everything is let in nor everything shut out
    expect(Math.min(up, not)).toBeGreaterThan(casesEach / 100);
  });

  it('under any name is listed in words', () => {
    const names = forms.map((f) => f.name);
    const list = (name: string) => {
      const place = draftPlace(book, { form: name, touched: '', content: null });
      if (todayWords.draft(place.name, place.touched).length === 0) throw new Error('no words');
      return place;
    };
    const samples = [...names, 'unread/1/charge', 'firing/charge-000001', 'unread/2/unread/1/note'];
    expect(byBytes('name of a draft', samples, (changed) => list(changed.toString('utf8')), casesEach / 10)).toBe(casesEach / 10);
  });
});
