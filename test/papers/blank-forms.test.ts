import { expect, test } from 'vitest';
import { formKinds } from '../../app/core/kinds/by-hand.ts';
import { type Kind, kinds } from '../../app/core/kinds/index.ts';
import { blankForms } from '../../app/papers/blank-forms.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import type { FieldWords } from '../../app/words/daybook-shapes.ts';
import { kindNames } from '../../app/words/labels.ts';
import { orderFrom } from '../../main/host/papers.ts';
import { frameOf } from './site-of-runs.ts';
import { bookOf, said, year } from './year.ts';

const forms = (id: string) => {
  const made = year();
  return said(blankForms(bookOf(made.book), id, frameOf(made.book)));
};

/** Labels a person answers, as the entry form asks for them. */
const labels = (fields: readonly FieldWords[]): string[] =>
  fields.flatMap(({ label, shape }) =>
    shape.is === 'key' || shape.is === 'body' || shape.is === 'list' ? [] : shape.is === 'group' ? labels(shape.fields) : [label],
  );

test('every kind that is written by hand has a form, and every field of it a place on the form, in the order of the entry form', () => {
  expect(formKinds).toContain('clean-up');
  for (const kind of formKinds) {
    const text = forms(kind);
    const first = fieldsOf[kind].filter((field) => field.first);
    let from = text.indexOf('The time is');
    for (const label of labels(first)) {
      const at = text.indexOf(label, from);
      expect(at, `${kind}: ${label}`).toBeGreaterThan(-1);
      from = at;
    }
    for (const label of labels(fieldsOf[kind])) expect(text, `${kind}: ${label}`).toContain(label);
  }
});

test('registers, the count and what changes the book itself have no form, and are refused by name', () => {
  const made = year();
  for (const kind of ['scale', 'closing', 'correction', 'stock-take', 'nothing'] as const) {
    expect(formKinds).not.toContain(kind);
    const got = blankForms(bookOf(made.book), kind, frameOf(made.book));
    expect(got).toMatchObject({ ok: false, problems: [{ code: 'paper-no-such', field: 'id', data: { wanted: 'form' } }] });
  }
  expect(Object.keys(kinds)).toEqual(expect.arrayContaining([...formKinds]));
});

test('each form carries its number and a place for its sheet, and tells empty from no', () => {
  const text = forms('firing');
  expect(text).toMatch(/Firing · form \d+-[0-9a-f]{8}-[0-9A-Z*] · sheet ____/);
  expect(text).toContain('never read as “no”');
});

test('the names of scales and vessels stand on the first page, so that the same ones are used', () => {
  const made = year();
  const book = bookOf(made.book);
  const text = forms('');
  const vessel = [...book.registers.vessel.values()][0];
  expect(vessel).toBeDefined();
  expect(text).toContain('Names in the daybook');
  expect(text).toContain((vessel?.states[0]?.body as { label: string } | undefined)?.label ?? 'no vessel');
});

test('left without an id it holds the forms of a working day, and it takes no period', () => {
  const text = forms('');
  for (const kind of ['crushing', 'clean-up', 'charge', 'firing', 'melt', 'spill'] as Kind[])
    expect(text).toContain(`${kindNames[kind]} · form`);
  expect(orderFrom('blank-forms', undefined, {}).ok).toBe(true);
  expect(orderFrom('blank-forms', 'firing', { from: '2026-01-01' }).ok).toBe(false);
});
