/** What the sheets of the Retort room make of what is typed: a blank is left out, and nothing that was meant is dropped without a word. */
import { expect, test } from 'vitest';
import { bodyFrom } from '../../app/core/kinds/index.ts';
import { draftContent, noExtras } from '../../app/daybook/draft-shape.ts';
import { changesBetween } from '../../app/screens/retort/changes.ts';
import { chargePlan, noTake, taken } from '../../app/screens/retort/charge-form.ts';
import { checksOf } from '../../app/screens/retort/checks-entry.ts';
import { cleanUpPlan, emptyRow, labelAfter, lotRows, nextKey } from '../../app/screens/retort/clean-up-form.ts';
import { emptyNoted, firingPlan } from '../../app/screens/retort/firing-form.ts';

/** As the sheet hands it in: without members that are undefined. */
const plain = (body: unknown): unknown => JSON.parse(JSON.stringify(body));
const weighed = (label: string, grams: string, key = 'b1') => {
  const row = emptyRow(key, label);
  row.weight.gross.amount = grams;
  return row;
};

test('the label after a label counts on, and keeps its noughts', () => {
  expect(labelAfter('B-09')).toBe('B-10');
  expect(labelAfter('7')).toBe('8');
  expect(labelAfter('B099')).toBe('B100');
  expect(labelAfter('plate')).toBe('');
  expect(labelAfter('')).toBe('');
});

test('a row that holds only the label that was offered makes no lot, and one with any other label does', () => {
  const rows = [weighed('B1', '212.4'), emptyRow('b2', 'B2')];
  expect(lotRows(rows).map((row) => row.key)).toEqual(['b1']);
  const own = [weighed('B1', '212.4'), emptyRow('b2', 'mine')];
  expect(lotRows(own).map((row) => row.key)).toEqual(['b1', 'b2']);
  const gapped = [weighed('B1', '212.4'), emptyRow('b2', 'B2'), weighed('B3', '5', 'b3')];
  expect(lotRows(gapped).map((row) => row.key)).toEqual(['b1', 'b3']);
});

test('a key is never used again within a sheet', () => {
  expect(nextKey([], 'b')).toBe('b1');
  expect(nextKey([{ key: 'b1' }, { key: 'b7' }], 'b')).toBe('b8');
  expect(nextKey([{ key: 'u2' }], 'b')).toBe('b1');
});

test('an empty clean-up says that its type, and label and weight of its first row, are missing: none of them is guessed', () => {
  const plan = cleanUpPlan('bench-scale');
  const got = bodyFrom('clean-up', plain(plan.body(plan.start())));
  expect(got.ok ? [] : got.problems.map((p) => p.field).sort()).toEqual([
    'body.lots[0].label',
    'body.lots[0].weight',
    'body.type',
  ]);
});

test('a row takes state and source of the sheet unless it names its own', () => {
  const plan = cleanUpPlan('bench-scale');
  const values = { ...plan.start(), state: 'squeezed', source: 'trap', rows: [weighed('B1', '1'), weighed('B2', '2', 'b2')] };
  const [, second] = values.rows;
  if (second) second.source = 'pan';
  const { lots } = plain(plan.body(values)) as { lots: { state: string; source: string; weight: { scale: string } }[] };
  expect(lots.map((lot) => [lot.state, lot.source, lot.weight.scale])).toEqual([
    ['squeezed', 'trap', 'bench-scale'],
    ['squeezed', 'pan', 'bench-scale'],
  ]);
});

test('lots left blank stay in the safe; a part without a weight is asked for it and not dropped', () => {
  const plan = chargePlan('bench-scale', 'pot-retort', () => ['clean-up-1/b1', 'clean-up-1/b2'], []);
  const values = plan.start();
  expect((plan.body(values) as { rows: unknown[] }).rows).toEqual([]);
  const second = values.lots['clean-up-1/b2'];
  if (second) second.take = 'part';
  expect(taken(second)).toBe(true);
  const got = bodyFrom('charge', plain(plan.body(values)));
  expect(got.ok ? [] : got.problems.map((p) => p.field)).toEqual(['body.rows[0].weight']);
});

test('a lot that was not found is written down without a weight, even if one was typed before', () => {
  const plan = chargePlan('bench-scale', 'pot-retort', () => ['clean-up-1/b1'], []);
  const row = { ...noTake(), take: 'not-found' as const, looked: 'safe and bench' };
  row.weight.gross.amount = '12';
  const { rows } = plain(plan.body({ ...plan.start(), lots: { 'clean-up-1/b1': row } })) as { rows: unknown[] };
  expect(rows).toEqual([{ take: 'not-found', key: 'l1', lot: 'clean-up-1/b1', looked: 'safe and bench' }]);
});

test('the fill is typed in percent and kept as a share; words in its place are refused at its field', () => {
  const plan = chargePlan('', 'pot-retort', () => [], []);
  const fill = (typed: string) => (plan.body({ ...plan.start(), fill: typed }) as { fill?: unknown }).fill;
  expect(fill('62.5')).toBe(0.625);
  expect(fill('60 %')).toBe(0.6);
  expect(fill('')).toBeUndefined();
  const got = bodyFrom('charge', plain(plan.body({ ...plan.start(), fill: 'half' })));
  expect(got.ok ? [] : got.problems.map((p) => p.field)).toEqual(['body.fill']);
});

test('an opening that was not measured is left out, and a firing without its charge names none', () => {
  const plan = firingPlan(null, 'bench-scale', 'bottle');
  const body = plain(plan.body({ ...plan.start(), openingHow: 'measured', retort: 'pot-retort' })) as Record<string, unknown>;
  expect(body).toEqual({ heats: [{}], retort: 'pot-retort' });
  const measured = plan.body({ ...plan.start(), openingHow: 'measured', measuredC: '24' }) as { opening: unknown };
  expect(measured.opening).toEqual({ measuredC: 24 });
});

test('what was noted along the fire keeps its order and its times, and a note without a time says so at its field', () => {
  const plan = firingPlan('charge-000001', 'bench-scale', 'bottle');
  const row = (at: string, more: Partial<ReturnType<typeof emptyNoted>>) => ({ ...emptyNoted('n1', at), ...more });
  const noted = [
    row('2026-03-01T08:10+13:00', { temperatureC: '180', water: 'on' }),
    row('2026-03-01T09:40+13:00', { fire: 'off', what: ' smell at the lute ' }),
  ];
  const body = (values: object) => bodyFrom('firing', plain(plan.body({ ...plan.start(), ...values })));
  const got = body({ noted, aimedFrom: '400', aimedTo: '550' });
  expect(got.ok && [got.value.noted, got.value.aimedC]).toEqual([
    [
      { at: '2026-03-01T08:10+13:00', temperatureC: 180, water: 'on' },
      { at: '2026-03-01T09:40+13:00', fire: 'off', what: 'smell at the lute' },
    ],
    { from: 400, to: 550 },
  ]);
  const bare = body({ noted: [row('', { temperatureC: 'warm' })], aimedTo: '500' });
  expect(bare.ok ? [] : bare.problems.map((p) => p.field).sort()).toEqual([
    'body.aimedC.from',
    'body.noted[0].at',
    'body.noted[0].temperatureC',
  ]);
});

test('drafts of before a form asked for notes of the fire and plates are taken up whole', () => {
  const held = (values: unknown) => ({
    form: 'x',
    kind: 'firing',
    touched: '2026-03-01T08:10+13:00',
    content: { id: 'draft-0001', values, when: { day: '', time: '', timing: 'exact' }, extras: noExtras() },
  });
  const plan = firingPlan('charge-000001', 'bench-scale', 'bottle');
  const { noted: _, aimedFrom: __, aimedTo: ___, ...before } = plan.start();
  const got = draftContent(held(before) as never, (plan.full ?? plan.start)());
  expect(got?.values).toEqual(before);
  expect(plain(plan.body(got?.values as typeof before))).toEqual({ heats: [{ charge: 'charge-000001' }] });
  const cleanUp = cleanUpPlan('bench-scale');
  const { plates: ____, ...row } = emptyRow('b1', 'B1');
  const old = { ...cleanUp.start(), rows: [row] };
  expect(draftContent(held(old) as never, (cleanUp.full ?? cleanUp.start)())?.values).toEqual(old);
  // anything else that is missing or strange is still not taken up
  expect(draftContent(held({ ...plan.start(), noted: [{ at: 3 }] }) as never, (plan.full ?? plan.start)())).toBeNull();
});

test('a row names the plates it was scraped off, and none where none was ticked', () => {
  const plan = cleanUpPlan('bench-scale');
  const rows = [
    { ...emptyRow('b1', 'B1'), plates: ['plate-0001', 'plate-0002'] },
    { ...emptyRow('b2', 'Trap'), plates: [] },
  ];
  const { lots } = plain(plan.body({ ...plan.start(), rows })) as { lots: { plates?: string[] }[] };
  expect(lots.map((lot) => lot.plates)).toEqual([['plate-0001', 'plate-0002'], undefined]);
});

test('checks keep their order, an unanswered one is left out and never a no', () => {
  const answers = {
    b: { answer: 'no' as const, note: ' lute weeps ' },
    a: { answer: 'yes' as const, note: '' },
    c: { answer: '' as const, note: 'x' },
  };
  expect(checksOf(answers, ['a', 'b', 'c', 'd'])).toEqual([
    { check: 'a', answer: 'yes' },
    { check: 'b', answer: 'no', note: 'lute weeps' },
  ]);
  expect(checksOf({}, ['a'])).toBeUndefined();
});

test('a correction tells every field that reads otherwise, in words, with what it read before', () => {
  const before = { heats: [{ charge: 'c', sponge: { how: 'scale', gross: '371.8 g' } }], fuel: 'wood' };
  const after = { heats: [{ charge: 'c', sponge: { how: 'scale', gross: '317.8 g' } }], lit: '2026-03-01T08:00+13:00' };
  expect(changesBetween(before, after)).toEqual([
    { field: 'charge fired · 1 · sponge · reading', was: '371.8\u00a0g', now: '317.8\u00a0g' },
    { field: 'fire lit', was: null, now: '2026-03-01T08:00+13:00' },
    { field: 'fuel', was: 'wood', now: null },
  ]);
});

test('a correction of a row is told by its ball or its question, not by its number', () => {
  const row = (label: string, gross: string) => ({ key: 'b2', label, weight: { how: 'scale', gross } });
  const lots = (second: unknown) => ({ lots: [row('B1', '5 g'), second] });
  expect(changesBetween(lots(row('7', '200.0 g')), lots(row('8', '210.0 g')))).toEqual([
    { field: '“7” · label', was: '7', now: '8' },
    { field: '“7” · reading', was: '200.0\u00a0g', now: '210.0\u00a0g' },
  ]);
  const charged = (gross: string) => ({ rows: [{ take: 'whole', key: 'l1', lot: 'clean-up-1/b1', weight: { gross } }] });
  const name = (id: string) => (id === 'clean-up-1/b1' ? 'B1' : id);
  expect(changesBetween(charged('5 g'), charged('6 g'), name)).toEqual([
    { field: '“B1” · reading', was: '5\u00a0g', now: '6\u00a0g' },
  ]);
  const checks = (answer: string) => ({ checks: [{ check: 'no-food', answer }] });
  expect(changesBetween(checks('yes'), checks('no'))).toEqual([
    { field: '“No food, drink or smoking” · answer', was: 'yes', now: 'no' },
  ]);
});
