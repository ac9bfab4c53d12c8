/** What an assay and a settlement may not say is refused by name; what may be a true reading, however odd, is kept. */
import { expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { entryLine } from '../../app/words/daybook-line.ts';
import { problemText } from '../../app/words/problems.ts';
import { BookMaker, stated } from './book-maker.ts';

const now = '2026-03-20T12:00+13:00';

function site() {
  const book = BookMaker.site();
  const [lot = ''] = book.lots('march', ['955.6']);
  const charge = book.add('charge', 'charge', {
    retort: book.pot,
    rows: [{ take: 'whole', key: '1', lot, weight: stated('955.6', '0.1') }],
  });
  const melt = book.add('melt one', 'melt', {
    sponges: [{ charge, weight: stated('371.8', '0.1') }],
    bars: [
      { key: '1', label: 'Bar 7', weight: stated('200.0', '0.1') },
      { key: '2', label: 'Bar 8', weight: stated('164.9', '0.1') },
    ],
  });
  return { book, charge, bar: `${melt}/1`, other: `${melt}/2` };
}

function refused(book: BookMaker, kind: string, body: Record<string, unknown>): string[] {
  const got = draftFrom({ id: 'the-new-entry', happened: '2026-03-14T09:00+13:00', by: null, kind, body });
  const problems = got.ok ? checkDraft(readBook(book.entries), got.value, now) : got.problems;
  for (const p of problems) expect(problemText(p), p.code).toMatch(/\.$|:.+\.$/);
  return problems.map((p) => `${p.code} ${p.field}`);
}

const fire = (bar: string, more: Record<string, unknown> = {}) => ({
  subject: 'bar',
  bar,
  method: 'fire-assay',
  replicates: [{ sample: '250.12 mg', cornet: '221.437 mg' }],
  ...more,
});

test('a cornet heavier than its sample is refused; one as heavy, and gold and silver over the whole, are kept', () => {
  const { book, bar } = site();
  const with1 = (sample: string, cornet: string, bead?: string) =>
    refused(book, 'assay', fire(bar, { replicates: [{ sample, cornet, ...(bead === undefined ? {} : { bead }) }] }));
  expect(with1('250.00 mg', '250.01 mg')).toEqual(['cornet-over-sample body.replicates[0].cornet']);
  expect(with1('0.25 g', '250.00 mg')).toEqual([]);
  expect(with1('250.00 mg', '249.0 mg', '255.0 mg')).toEqual([]);
});

test('a proof that found over five parts in a hundred more than was taken is refused, exactly five is kept', () => {
  const { book, bar } = site();
  const found = (text: string) => refused(book, 'assay', fire(bar, { proofs: [{ taken: '200 mg', found: text }] }));
  expect(found('210.001 mg')).toEqual(['proof-over-taken body.proofs[0].found']);
  expect(found('210 mg')).toEqual([]);
  expect(found('180 mg')).toEqual([]);
});

test('a bar nobody poured, an assay of nothing in particular and of two things are refused', () => {
  const { book, bar, charge } = site();
  expect(refused(book, 'assay', fire('melt-one/9'))).toEqual(['unknown-id body.bar']);
  expect(refused(book, 'assay', { ...fire(bar), bar: undefined })).toEqual(['assay-of-what body.bar']);
  expect(refused(book, 'assay', fire(bar, { charge }))).toEqual(['assay-of-two body.charge']);
  expect(refused(book, 'assay', { ...fire(bar), bar: undefined, subject: 'ore', which: 'stope 2' })).toEqual([]);
});

test('metal cannot weigh more in water than in air, and only a bar is weighed so', () => {
  const { book, bar } = site();
  const density = (air: string, water: string, subject = 'bar') =>
    refused(book, 'assay', { subject, bar, method: 'density', air, water, waterDensity: '0.9982', other: 'silver' });
  expect(density('412.36 g', '388.61 g')).toEqual([]);
  expect(density('388.61 g', '412.36 g')).toEqual(['heavier-in-water body.water']);
  expect(density('412.36 g', '388.61 g', 'ore')).toContain('density-of-bar body.method');
});

test('a method is held to its own questions: a fire assay has samples, a certificate has a result', () => {
  const { book, bar } = site();
  expect(refused(book, 'assay', { subject: 'bar', bar, method: 'fire-assay' })).toEqual(['missing body.replicates']);
  expect(refused(book, 'assay', fire(bar, { certificate: 'C 1' }))).toEqual(['unknown-field body.certificate']);
  const outside = (result: unknown) => refused(book, 'assay', { subject: 'bar', bar, method: 'outside', result });
  expect(outside({ unit: 'permille' })).toEqual(['assay-of-nothing body.result.gold']);
  expect(outside({ unit: 'oz-ton', gold: '1' })).toEqual(['not-one-of body.result.unit']);
  expect(outside({ unit: 'permille', gold: '884,6' })).toEqual(['decimal-text body.result.gold']);
  expect(outside({ unit: 'permille', gold: '1002.5', silver: '3' })).toEqual([]);
});

test('a settlement rests on assays of its own bar, one for each party', () => {
  const { book, bar, other } = site();
  const ours = book.add('our assay', 'assay', fire(bar) as never);
  const strange = book.add('strange assay', 'assay', fire(other) as never);
  const settled = (more: Record<string, unknown>) =>
    refused(book, 'settlement', { bar, site: '884.6', other: '885.3', limit: '0.5', rule: 'median', ...more });
  expect(settled({ siteAssay: ours, umpire: '884.9' })).toEqual([]);
  expect(settled({ siteAssay: strange })).toEqual(['assay-of-another body.siteAssay']);
  expect(settled({ siteAssay: ours, otherAssay: ours })).toEqual(['assay-twice body.otherAssay']);
  expect(settled({ umpireAssay: ours })).toEqual(['umpire-figure body.umpire']);
  expect(settled({ rule: 'whatever' })).toEqual(['not-one-of body.rule']);
  expect(settled({ siteAssay: bar.split('/')[0] })).toEqual(['unknown-id body.siteAssay']);
});

test('both read out in one sentence with what was read', () => {
  const { book, bar } = site();
  const lines = [
    book.add('fire', 'assay', fire(bar) as never),
    book.add('certificate', 'assay', {
      subject: 'bar',
      bar,
      method: 'outside',
      result: { unit: 'permille', gold: '884.60', silver: '84.1' },
      laboratory: 'a laboratory',
      certificate: 'C 17',
    }),
    book.add('settled', 'settlement', { bar, site: '884.6', other: '885.3', limit: '0.5', rule: 'median', umpire: '884.9' }),
  ];
  const read = readBook(book.entries);
  expect(lines.map((id) => entryLine(read, read.current.byId.get(id) as never))).toEqual([
    'Bar (Bar 7) assayed: fire assay; 1 sample, no proofs',
    'Bar (Bar 7) assayed: certificate of another laboratory; gold 884.60, silver 84.1 parts per thousand; by a laboratory; certificate C 17',
    'Bar 7 settled: ours 884.6, theirs 885.3 parts of gold per thousand, splitting limit 0.5; umpire 884.9; beyond the limit: the middle one of the three',
  ]);
});
