/** Writing up from the description of the fields: what is offered, what a fresh form holds, and what it makes. */
import { describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { bodyFrom, type Kind, kinds } from '../../app/core/kinds/index.ts';
import { massEntry } from '../../app/parts/mass-entry.ts';
import { choicesOf } from '../../app/screens/daybook/choices.ts';
import type { Typed } from '../../app/screens/daybook/typed.ts';
import { countGroup, placesAsked, rowsMissing, waysOf } from '../../app/screens/daybook/write/count.ts';
import { offeredFor } from '../../app/screens/daybook/write/offered.ts';
import { readBackOf, usualScale, writePlan } from '../../app/screens/daybook/write/plan.ts';
import { plainKind, plainKinds, writeHref, writtenKinds } from '../../app/screens/daybook/write/routes.ts';
import type { WeighingEntry } from '../../app/screens/shared/weighing-entry.ts';
import { draftPlace } from '../../app/screens/today/drafts.ts';
import { fieldsOf } from '../../app/words/daybook-fields.ts';
import { explains, writeCautions } from '../../app/words/write-up.ts';
import { BookMaker, scaled } from '../core/book-maker.ts';

const now = '2026-03-20T18:00+13:00';
const start = (book: BookMaker) => ({ book: readBook(book.entries), now });
const sent = (value: unknown) => JSON.parse(JSON.stringify(value)) as Record<string, unknown>;

/** A site with a drum, a dish, a flask out of use, a charge fired and one that waits. */
function atWork() {
  const book = BookMaker.site();
  const drum = book.add('drum', 'vessel', { label: 'Drum 1', use: 'drum' });
  const dish = book.add('dish', 'vessel', { label: 'Dish', use: 'dish' });
  const gone = book.add('gone flask', 'vessel', { label: 'Old flask', use: 'flask', out: '2026-02-01' });
  const [one = '', two = '', three = ''] = book.lots('march', ['500', '300', '200'], book.bench);
  const chargeOf = (name: string, lot: string, g: string) =>
    book.add(name, 'charge', { retort: book.pot, rows: [{ take: 'whole', key: '1', lot, weight: scaled(g, book.bench) }] });
  const fired = chargeOf('fired charge', one, '500');
  book.add('firing', 'firing', {
    heats: [{ charge: fired, sponge: scaled('190', book.bench) }],
    mercury: { weight: scaled('308', book.bench), vessel: book.bottle },
    water: scaled('0', book.bench),
  });
  const waiting = chargeOf('waiting charge', two, '300');
  return { book, drum, dish, gone, fired, waiting, inSafe: three };
}

describe('what can be written up', () => {
  test('is every kind of the record that is not about another entry or has its place in the Site room, each once', () => {
    const elsewhere = ['standing', 'person', 'scale', 'vessel', 'retort', 'closing', 'correction', 'strike'];
    const all = Object.keys(kinds).filter((kind) => !elsewhere.includes(kind));
    expect([...writtenKinds].sort()).toEqual(all.sort());
    expect(new Set(writtenKinds.map((kind) => writeHref(kind))).size).toBe(all.length);
    for (const kind of writtenKinds) expect(explains[kind].length, kind).toBeGreaterThan(20);
  });

  test('has a form of its own or is written here, and nothing else is', () => {
    expect(writeHref('charge')).toBe('#/retort/new/charge');
    expect(writeHref('note')).toBe('#/daybook/note');
    expect(writeHref('spill')).toBe('#/daybook/write/spill');
    expect(writeHref('melt', 'charge-one')).toBe('#/bullion/melt/charge-one');
    expect([plainKind('charge'), plainKind('correction'), plainKind('toString'), plainKind(undefined)]).toEqual(
      Array(4).fill(undefined),
    );
  });

  test('is found again as a draft', () => {
    const book = readBook(BookMaker.site().entries);
    expect(draftPlace(book, { form: 'spill', touched: now, content: null })).toMatchObject({ href: '#/daybook/write/spill' });
    expect(draftPlace(book, { form: 'air/reading', touched: now, content: null })).toMatchObject({ href: '#/air/reading' });
    expect(draftPlace(book, { form: 'air/limit/some-row', touched: now, content: null })).toMatchObject({
      href: '#/air/limits/some-row',
    });
    expect(draftPlace(book, { form: 'battery', touched: now, content: null })).toMatchObject({ href: '#/site/battery' });
  });
});

describe('a fresh form', () => {
  test.each(plainKinds)('of %s lacks only what is still to be answered', (kind) => {
    const plan = writePlan(kind, start(atWork().book));
    const body = bodyFrom(kind, sent(plan.body(plan.start())));
    const codes = new Set(body.ok ? [] : body.problems.map((p) => p.code));
    expect([...codes].filter((code) => !['missing', 'not-one-of', 'not-accepted', 'too-short'].includes(code))).toEqual([]);
    expect(plan.kind).toBe(kind);
  });

  test('begins a list that must hold something with one row, keyed apart from the others', () => {
    const { fields } = writePlan('melt', start(atWork().book)).start();
    expect((fields.bars as Typed[]).map((bar) => bar.key)).toEqual(['1']);
    expect(fields.sponges).toHaveLength(1);
    expect(fields.samples).toEqual([]);
  });

  test('weighs on the scale used last, in the unit of its display', () => {
    const { book } = atWork();
    const fine = book.scale('fine scale', '1 mg');
    book.add('later', 'return', { vessel: book.bottle, from: 'trap', weight: scaled('3', fine) });
    const { fields } = writePlan('return', start(book)).start();
    const weight = fields.weight as WeighingEntry;
    expect([weight.scale, weight.gross.unit]).toEqual([fine, 'mg']);
    expect(usualScale(readBook([]), now)).toEqual({ scale: '', unit: 'g' });
  });

  test('counts ore in the unit it was last counted in', () => {
    const book = BookMaker.site();
    const unit = () => ((writePlan('crushing', start(book)).start().fields.ore as Typed).mass as { unit: string }).unit;
    expect(unit()).toBe('t');
    const battery = book.add('battery', 'battery', { label: 'Battery 1' });
    book.add('crushing', 'crushing', { battery, feed: 'concentrate', mercuryFed: 'none', ore: { mass: '3 long-ton' } });
    expect(unit()).toBe('long-ton');
  });

  test('of a melt begins with the charge whose page it was opened from', () => {
    const { book, fired } = atWork();
    const plan = writePlan('melt', { ...start(book), about: fired });
    expect((plan.start().fields.sponges as Typed[])[0]?.charge).toBe(fired);
  });

  test('of a thing stated anew holds what it was and names it', () => {
    const book = BookMaker.site();
    const id = book.add('battery', 'battery', { label: 'Battery 1', stamps: 5 });
    const plan = writePlan('battery', { ...start(book), of: { id, body: { label: 'Battery 1', stamps: 5 } } });
    expect(plan.name).toBe(`battery/${id}`);
    expect(sent(plan.body(plan.start()))).toEqual({ of: id, label: 'Battery 1', stamps: 5 });
  });

  test('filled in makes a body that is kept, and reads it back in the daybook’s words', () => {
    const { book } = atWork();
    const plan = writePlan('return', start(book));
    const values = plan.start();
    Object.assign(values.fields, { vessel: book.bottle, from: 'trap' });
    (values.fields.weight as WeighingEntry).gross = massEntry('136.4 g');
    const draft = sent({ id: 'return-one', happened: now, by: null, kind: 'return', body: plan.body(values) });
    expect(draft.body).toEqual({
      vessel: book.bottle,
      from: 'trap',
      weight: { how: 'scale', scale: book.bench, gross: '136.4 g' },
    });
    const read = readBook(book.entries);
    expect(checkDraft(read, draft as never, now)).toEqual([]);
    const line = readBackOf(read, draft, now).replace(/[\u00a0\u202f]/g, ' ');
    expect(line).toContain('136.4 g');
    expect(line).toContain('Working bottle');
    expect(readBackOf(read, { ...draft, body: {} }, now)).toBe('');
  });
});

describe('what a field offers', () => {
  const offered = (book: BookMaker, kind: Kind, field: string, to: 'charge' | 'vessel') => {
    const read = readBook(book.entries);
    const fits = offeredFor(read, kind, field, to, '2026-03-20');
    return choicesOf(read, to, []).flatMap((c) => (fits(c.value) ? [c.value] : []));
  };

  test('a melt takes the sponge of a charge that was fired and not melted yet; taking apart, one that was not fired', () => {
    const { book, fired, waiting } = atWork();
    expect(offered(book, 'melt', 'charge', 'charge')).toEqual([fired]);
    expect(offered(book, 'unmake', 'charge', 'charge')).toEqual([waiting]);
    book.add('melt', 'melt', { sponges: [{ charge: fired }], bars: [{ key: '1', label: 'Bar 1', weight: scaled('185') }] });
    expect(offered(book, 'melt', 'charge', 'charge')).toEqual([]);
  });

  test('a vessel out of use is offered no more, and waste goes into drums', () => {
    const { book, drum, dish, gone } = atWork();
    expect(offered(book, 'issue', 'vessel', 'vessel')).toEqual([book.bottle, drum, dish]);
    expect(offered(book, 'waste', 'drum', 'vessel')).toEqual([drum]);
    expect(offered(book, 'issue', 'vessel', 'vessel')).not.toContain(gone);
    const none = BookMaker.site();
    expect(offered(none, 'waste', 'drum', 'vessel')).toEqual([none.bottle]);
  });

  test('places are the places of the account, never entries', () => {
    const read = readBook(atWork().book.entries);
    expect(choicesOf(read, 'place', []).map((c) => c.value)).toContain('circuit:plates');
    expect(choicesOf(read, 'place', []).every((c) => c.value.includes(':'))).toBe(true);
  });
});

describe('a stock-take', () => {
  test('asks about every vessel in use or not empty, every drum and every part of the circuit', () => {
    const { book, drum, gone } = atWork();
    const bottle = `vessel:${book.bottle}`;
    const circuit = ['circuit:mortar', 'circuit:plates', 'circuit:pan', 'circuit:trap'];
    expect(placesAsked(readBook(book.entries), now)).toEqual([bottle, `vessel:${drum}`, ...circuit]);
    book.add('found', 'found', { where: 'loft', what: 'mercury', weight: scaled('12'), vessel: gone });
    expect(placesAsked(readBook(book.entries), now)).toContain(`vessel:${gone}`);
  });

  test('is not kept before every place is answered, and says at which it is not', () => {
    const { book } = atWork();
    const plan = writePlan('stock-take', start(book));
    const values = plan.start();
    const lines = values.fields.lines as Typed[];
    for (const line of lines.slice(1)) Object.assign(line, { how: 'unanswered', why: 'no time' });
    const open = bodyFrom('stock-take', sent(plan.body(values)));
    expect(open.ok ? [] : open.problems.map((p) => p.field)).toEqual([expect.stringMatching(/^body\.lines\[0\]/)]);
    Object.assign(lines[0] as Typed, { how: 'sealed', seal: 'S 1' });
    const body = sent(plan.body(values));
    expect(bodyFrom('stock-take', body)).toMatchObject({ ok: true });
    expect((body.lines as unknown[])[0]).toEqual({ how: 'sealed', place: `vessel:${book.bottle}`, seal: 'S 1' });
  });

  test('takes no scale’s word for what a drum or the circuit holds', () => {
    const { book, drum } = atWork();
    const read = readBook(book.entries);
    expect(countGroup(read, `vessel:${drum}`)).toBe('drums');
    expect(waysOf.drums).not.toContain('weighed');
    expect(waysOf.circuit).toEqual(['estimated', 'unanswered']);
    for (const ways of Object.values(waysOf)) expect(ways).toContain('unanswered');
  });

  test('asks about places that came on the book after its draft was begun', () => {
    const { book } = atWork();
    const { fields } = writePlan('stock-take', start(book)).start();
    const jar = book.add('new jar', 'vessel', { label: 'Jar', use: 'jar' });
    const read = readBook(book.entries);
    const missing = rowsMissing(read, now, fields.lines as Typed[], usualScale(read, now));
    expect(missing.map((row) => row.place)).toEqual([`vessel:${jar}`]);
  });
});

describe('cautions before the fields', () => {
  const said = (kind: keyof typeof writeCautions) => writeCautions[kind]?.lines.join(' ') ?? '';

  test('a spill: people out, doors, never a vacuum cleaner, the floor; a melt: mercury in the sponge, fume caught; a find: shut', () => {
    for (const words of ['People out', 'Doors', 'Never a vacuum cleaner', 'floor']) expect(said('spill')).toContain(words);
    expect(said('melt')).toMatch(/still holds mercury.*fume is caught/s);
    expect(said('found')).toMatch(/photographed and weighed shut.*not opened/s);
  });

  test('defer to local rules, and stand before the fields of kinds that have fields', () => {
    for (const [kind, caution] of Object.entries(writeCautions)) {
      expect(fieldsOf[kind as Kind].length).toBeGreaterThan(0);
      expect(`${caution.title} ${caution.lines.join(' ')}`, kind).toMatch(/licensed people|doctor/);
    }
  });
});
