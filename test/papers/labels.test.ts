import { expect, test } from 'vitest';
import { labels } from '../../app/papers/labels.ts';
import { retortTag } from '../../app/papers/retort-tag.ts';
import { orderFrom } from '../../main/host/papers.ts';
import { frameOf } from './site-of-runs.ts';
import { bookOf, fromLater, said, stated, year } from './year.ts';

/** A year with one more lot, which is still in the safe. */
function withLot() {
  const made = year();
  const cleanUp = made.book.add(
    'second clean up',
    'clean-up',
    { type: 'routine', lots: [{ key: '1', label: 'Ball 2', weight: stated('212.4', '0.1'), state: 'squeezed' }] },
    { happened: '2026-06-01T09:00+12:00' },
  );
  return { ...made, second: cleanUp };
}

const codesIn = (value: unknown): string[] => {
  if (Array.isArray(value)) return value.flatMap(codesIn);
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inside]) => (key === 'qr' ? [String(inside)] : codesIn(inside)));
};

const made = (id: string, from = withLot()) => {
  const got = labels(bookOf(from.book), id, frameOf(from.book));
  return { got, text: got.ok ? said(got) : '', codes: got.ok ? codesIn(got.value.content) : [] };
};

test('a label of a lot says what it is, its label, mass and day, that it holds mercury, who comes first, and its clean-up by code', () => {
  const from = withLot();
  const { text, codes } = made(`${from.second}/1`, from);
  for (const part of [
    'Amalgam lot',
    'Ball 2',
    '212.4 g',
    '1 June 2026',
    'Squeezed',
    'HOLDS MERCURY',
    'licensed people come first',
  ])
    expect(text).toContain(part);
  expect(codes).toEqual([`retort-daybook:entry/${from.second}`]);
});

test('a label of a vessel says the mercury the book has in it; an empty one says that it has held some', () => {
  const from = withLot();
  const { text, codes } = made(from.ids.bottle, from);
  // year.ts: the bottle was counted at 1138 g on the last day
  for (const part of ['Bottle', 'Working bottle', '1138.0\u00a0g', 'HOLDS MERCURY'])
    expect(text.replaceAll(' ', '\u00a0')).toContain(part.replaceAll(' ', '\u00a0'));
  expect(codes).toEqual([`retort-daybook:entry/${from.ids.bottle}`]);
  const jar = from.book.add('jar', 'vessel', { label: 'Jar 3', use: 'jar' }, { happened: '2026-06-02T09:00+12:00' });
  const empty = made(jar, from).text;
  expect(empty).toContain('HAS HELD MERCURY');
  expect(empty).not.toContain('HOLDS MERCURY');
});

test('all lots in the safe, all vessels, or both: a lot that was charged has no label any more', () => {
  const from = withLot();
  const lots = made('lots', from).codes;
  const vessels = made('vessels', from).codes;
  expect(lots).toEqual([`retort-daybook:entry/${from.second}`]);
  expect(vessels.toSorted()).toEqual([from.ids.flask, from.ids.bottle].map((id) => `retort-daybook:entry/${id}`).toSorted());
  expect(made('', from).codes).toEqual([...lots, ...vessels]);
  expect(made(`${from.ids.cleanUp}/1`, from).got).toMatchObject({ ok: false, problems: [{ code: 'paper-no-such' }] });
});

test('what a newer program wrote of a labelled thing keeps the label from being printed; a period is refused', () => {
  const from = withLot();
  fromLater(from.book, { of: from.ids.bottle });
  expect(made(from.ids.bottle, from).got).toMatchObject({ ok: false, problems: [{ code: 'paper-not-understood' }] });
  expect(made(from.ids.flask, from).got.ok).toBe(true);
  expect(orderFrom('labels', undefined, { from: '2026-01-01' })).toMatchObject({ ok: false });
});

test('the retort tag carries the code of its charge, black on white with four white modules around it', () => {
  const { book, ids } = year();
  const tag = retortTag(bookOf(book), ids.charge, frameOf(book));
  expect(tag.ok && codesIn(tag.value.content)).toEqual([`retort-daybook:entry/${ids.charge}`]);
  expect(tag.ok && JSON.stringify(tag.value.content)).toContain('"padding":4,"foreground":"black","background":"white"');
});
