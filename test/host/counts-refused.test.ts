/** Counts and closings that cannot be kept: refused by name through the host's one door, and nothing is written. All things are invented. */
import { expect, it } from 'vitest';
import { everything } from '../terminal/called.ts';
import { aHost, bookIn, codesIn } from './a-host.ts';
import { keeper } from './drafts.ts';

const at = (day: string) => `2026-${day}T12:00+13:00`;
const stated = (g: string) => ({ how: 'stated', mass: `${g} g` });
const part = (name: string, mass = '0 g') => ({
  how: 'estimated',
  place: `circuit:${name}`,
  estimate: { mass, method: 'none there' },
});
const parts = ['mortar', 'plates', 'pan', 'trap'].map((name) => part(name));
const flask = (id: string, seal: string) => ({ how: 'sealed', place: `vessel:${id}`, seal });
const bottle = { how: 'weighed', place: 'vessel:bottle-one', weight: stated('900') };
const whole = [flask('flask-one', 'S 1'), flask('flask-two', 'S 2'), bottle, ...parts];

/** Two sealed flasks and a working bottle, and nobody has counted. */
async function aStore() {
  const host = aHost({ clock: () => '2026-07-01T09:30:00+13:00' });
  const { folder } = bookIn(await host.ask('open', { make: 'Upper Battery' }));
  const ask = (id: string, kind: string, happened: string, body: Record<string, unknown>) =>
    host.ask('keep', { id, kind, happened, by: keeper.id, body });
  const keep = async (...draft: Parameters<typeof ask>) => expect(codesIn(await ask(...draft))).toEqual([]);
  await keep(keeper.id, keeper.kind, keeper.happened, keeper.body);
  await keep('standing', 'standing', at('03-01'), { held: [{ what: 'stock' }], done: [{ what: 'clearing' }] });
  const flasks = { 'flask-one': 'S 1', 'flask-two': 'S 2' };
  for (const id of Object.keys(flasks)) await keep(id, 'vessel', at('03-01'), { label: id, use: 'flask', mercury: 'new' });
  await keep('bottle-one', 'vessel', at('03-01'), { label: 'Working bottle', use: 'bottle', mercury: 'mixed' });
  const was = (vessel: string, more = {}) =>
    keep(`was-${vessel}`, 'receipt', at('04-01'), { vessel, weight: stated('1000'), way: 'already-here', ...more });
  for (const [vessel, seal] of Object.entries(flasks)) await was(vessel, { seal });
  await was('bottle-one');
  return { host, folder, ask, keep };
}

const instead = (place: string, line: unknown) => whole.map((one) => (one.place === place ? line : one));
const counts: readonly (readonly [string, readonly unknown[], RegExp])[] = [
  ['a place left out', whole.filter((line) => line !== bottle), /^count-left-out$/],
  ['a line without an answer', instead('vessel:bottle-one', { place: 'vessel:bottle-one' }), /^missing$/],
  [
    'a place that could not be counted, without why',
    instead('vessel:bottle-one', { how: 'unanswered', place: 'vessel:bottle-one' }),
    /^missing$/,
  ],
  ['the seal number of another flask', instead('vessel:flask-one', flask('flask-one', 'S 2')), /^seal-reused$/],
  [
    'a new seal with a number that was used before',
    instead('vessel:flask-one', {
      how: 'weighed',
      place: 'vessel:flask-one',
      weight: stated('1000'),
      sealBroken: 'yes',
      newSeal: 'S 1',
    }),
    /^seal-reused$/,
  ],
  ['an estimate below nothing', instead('circuit:plates', part('plates', '-5 g')), /^mass-sign$/],
];

it.each(counts)('a count with %s is refused, and nothing is written', async (_, lines, code) => {
  const { folder, ask, keep } = await aStore();
  const before = everything(folder);
  const answer = await ask('count-one', 'stock-take', at('04-30'), { scope: 'whole', lines });
  expect(answer.ok).toBe(false);
  expect(codesIn(answer)[0]).toMatch(code);
  if (!answer.ok) expect(answer.problems.every(({ field }) => field?.startsWith('body.lines') === true)).toBe(true);
  expect(everything(folder)).toEqual(before);
  // the same count with every place answered is kept
  await keep('count-one', 'stock-take', at('04-30'), { scope: 'whole', lines: whole });
});

it('a period without a count of the whole, and one that overlaps a closed one, are not closed, and nothing is written', async () => {
  const { host, folder, keep } = await aStore();
  const close = (id: string, more: Record<string, string>) =>
    host.ask('close-period', { id, happened: at('06-02'), by: keeper.id, ...more });
  await keep('part-count', 'stock-take', at('04-20'), { lines: [bottle] });
  for (const [closing, code] of [
    ['nobody-counted', 'unknown-id'],
    ['part-count', 'closing-no-count'],
  ]) {
    const before = everything(folder);
    expect(codesIn(await close('closing-one', { closing: closing ?? '' }))).toContain(code);
    expect(everything(folder)).toEqual(before);
  }
  await keep('count-one', 'stock-take', at('04-30'), { scope: 'whole', lines: whole });
  await keep('later-count', 'stock-take', at('05-31'), { scope: 'whole', lines: whole });
  expect(codesIn(await close('closing-one', { closing: 'count-one' }))).toEqual([]);
  const before = everything(folder);
  expect(codesIn(await close('closing-two', { closing: 'later-count' }))).toContain('closing-overlaps');
  expect(everything(folder)).toEqual(before);
});
