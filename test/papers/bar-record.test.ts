import { expect, test } from 'vitest';
import { barOrigin } from '../../app/core/book/bar-origin.ts';
import { type Bar, barsOf } from '../../app/core/book/bars.ts';
import type { Reading } from '../../app/core/book/current.ts';
import { barRecord } from '../../app/papers/bar-record.ts';
import data from '../outside/data/bullion-book.json' with { type: 'json' };
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, fromLater, said, stated, year } from './year.ts';

const { proofed } = data;

/** The year's bar with an assay of the weighings of WE-18, and its record. */
function assayed(more: Record<string, unknown> = {}) {
  const { book, ids } = year();
  const bar = `${ids.melt}/1`;
  book.add('assay', 'assay', {
    subject: 'bar',
    bar,
    method: 'fire-assay',
    replicates: proofed.replicates,
    proofs: proofed.proofs,
    balanceU: proofed.balanceU,
    repeatability: proofed.repeatability,
    proofScatter: proofed.proofScatter,
    laboratory: 'The bench',
    ...more,
  });
  const record = () => said(barRecord(bookOf(book), bar, frameOf(book)));
  return { book, bar, record };
}

test('fineness and fine gold stand with their uncertainty, rounded once, and with the class of assay they rest on', () => {
  const text = between(assayed().record(), 'What it holds', 'Assays of this bar');
  // 885.023990, u 0.146541: U 0.29; fine 146.2 · 0.88502399 = 129.390507, u by 0.1 g on the bar: U = 2·√(0.0885² + 0.0214²) = 0.18
  expect(text).toMatch(/Gold\n885\.02\n± 0\.29\n129\.39\n± 0\.18\nfire assay with proofs/);
  expect(text).toContain('What sampling adds was not stated.');
});

test('sampling is told as a term of its own', () => {
  const text = assayed({ sampling: { method: 'drill', positions: 'top and bottom', u: proofed.samplingU } }).record();
  expect(text).toContain('Sampling adds 0.80 parts per thousand to the gold');
  expect(text).toContain('Drilled, top and bottom');
  expect(text).not.toContain('What sampling adds was not stated.');
});

test('it certifies nothing, says so first, and does not print where the bar is kept', () => {
  const text = assayed().record();
  expect(text).toContain('This record certifies nothing.');
  expect(text).toContain('Where the bar is kept is not printed.');
  expect(text).not.toContain('Store\n');
  expect(text).not.toMatch(/\b(safe|safely|approved|compliant|authori[sz]ed)\b/i);
});

test('a bar nobody assayed says that what it holds is not known; a density that it is only an indication', () => {
  const { book, ids } = year();
  const bar = `${ids.melt}/1`;
  expect(said(barRecord(bookOf(book), bar, frameOf(book)))).toContain('No assay of this bar is written down');
  book.add('weighed in water', 'assay', {
    subject: 'bar',
    bar,
    method: 'density',
    air: data.density.air,
    water: data.density.water,
    waterDensity: data.density.waterDensity,
    other: 'silver',
  });
  const text = said(barRecord(bookOf(book), bar, frameOf(book)));
  expect(text).toMatch(/Gold\n862\.19\n.*\n.*\n.*\ndensity, indicative only/);
  expect(text).toContain('no basis for a settlement');
});

test('a settlement stands beside the assays, and one that waits for its umpire is a reservation', () => {
  const { book, bar, record } = assayed();
  const body = { bar, site: '884.6', other: '885.3', limit: '0.5', rule: 'nearer-mean' as const };
  const first = book.add('settled', 'settlement', body);
  expect(between(record(), 'Reservations', 'The bar')).toContain('no umpire’s figure is written down');
  expect(record()).toContain('not settled: an umpire’s figure is needed');
  book.add('put right', 'correction', { corrects: first, body: { ...body, umpire: '884.9' }, why: 'The umpire answered.' });
  const text = between(record(), 'Settlement', 'Remarks');
  expect(text).toContain('Settled at\n884.75');
  // 146.2 g at 884.75
  expect(text).toContain('Fine gold by the settled figure\n129.35 g');
  expect(record()).toContain('885.02');
});

test('impossible results stand as found, first among the reservations', () => {
  const { book, bar, record } = assayed();
  book.add('certificate', 'assay', {
    subject: 'bar',
    bar,
    method: 'outside',
    result: { unit: 'permille', gold: '950', silver: '60' },
  });
  expect(between(record(), 'Reservations', 'The bar')).toContain('come to over 1000 parts');
  expect(record()).toMatch(/Neither gold nor silver\n−10\.00/);
});

test('what became of it is told with its papers', () => {
  const { book, bar, record } = assayed();
  book.add(
    'sold',
    'transfer',
    { way: 'out', what: 'bar', party: 'Buyer', bar, document: 'B 5', weight: stated('146.2', '0.1') },
    { happened: '2026-05-02T09:00+12:00' },
  );
  expect(record()).toContain('left the site; 2 May 2026: handed over to Buyer, document B 5');
});

test('an unknown bar and a struck melt are refused; an entry not understood keeps it from being printed', () => {
  const { book, bar } = assayed();
  const codes = (id: string) => {
    const got = barRecord(bookOf(book), id, frameOf(book));
    return got.ok ? [] : got.problems.map(({ code, data: d }) => [code, d?.wanted]);
  };
  expect(codes('no-such/1')).toEqual([['paper-no-such', 'bar']]);
  fromLater(book, { about: bar });
  expect(codes(bar)).toEqual([['paper-not-understood', undefined]]);
});

test('its lots, the work they came from and what was corrected behind it stand on the record', () => {
  const { book, ids } = year();
  const bar = `${ids.melt}/1`;
  const { charges, lots, makers } = barOrigin(bookOf(book), barsOf(bookOf(book)).all.get(bar) as Bar);
  expect(lots.length).toBeGreaterThan(0);
  expect(makers.length).toBeGreaterThan(0);
  const before = said(barRecord(bookOf(book), bar, frameOf(book)));
  for (const { label } of lots) expect(between(before, 'Out of the lots', 'Out of the work and ore')).toContain(label);
  expect(between(before, 'Out of the work and ore', 'What became of it')).toMatch(/clean-up/i);
  const charge = charges[0] as Reading<'charge'>;
  const none = 'Nothing this paper rests on was corrected';
  expect(before).toContain(none);
  book.add('mended charge', 'correction', {
    corrects: charge.id,
    body: { ...charge.body, note: 'mended' },
    why: 'a note was left out',
  });
  expect(said(barRecord(bookOf(book), bar, frameOf(book)))).not.toContain(none);
});
