import { describe, expect, test } from 'vitest';
import { accountOf } from '../../app/core/book/account.ts';
import { readBook } from '../../app/core/book/book.ts';
import { comparedWithBook, countListOf, methodsUsed } from '../../app/core/book/count-list.ts';
import { stocksAt } from '../../app/core/book/movements/gathering.ts';
import { circuitPlace, lossPlace, lotPlace, outside, vesselPlace } from '../../app/core/book/places.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import { sealAt } from '../../app/core/book/seals.ts';
import { type Body, draftFrom } from '../../app/core/kinds/index.ts';
import { nothing, uOf } from '../../app/core/measured.ts';
import { flagText } from '../../app/words/flags.ts';
import { problemText } from '../../app/words/problems.ts';
import { BookMaker, idOf, scaled, stated } from './book-maker.ts';

const now = '2026-07-01T12:00+12:00';
const at = '2026-06-30T12:00+12:00';
type Line = Body<'stock-take'>['lines'][number];

/** Two flasks that came under seal, an open bottle with mercury in it, a lot in the safe and a waste drum. */
function store() {
  const book = BookMaker.site();
  const flask = book.add('flask', 'vessel', { label: 'Flask 1', use: 'flask', mercury: 'new' });
  const second = book.add('second flask', 'vessel', { label: 'Flask 2', use: 'flask', mercury: 'new' });
  const drum = book.add('drum', 'vessel', { label: 'Drum', use: 'drum' });
  book.add('in', 'receipt', { vessel: flask, weight: stated('34473', '5'), way: 'bought', seal: 'S 901' });
  book.add('in too', 'receipt', { vessel: second, weight: stated('34473', '5'), way: 'bought', seal: 'S 902' });
  book.add('poured', 'receipt', { vessel: book.bottle, weight: stated('1200', '0.2'), way: 'already-here' });
  const [lot = ''] = book.lots('balls', ['400'], book.bench);
  return Object.assign(book, { flask, second, drum, lot });
}
type Store = ReturnType<typeof store>;

const none = (part: 'mortar' | 'plates' | 'pan' | 'trap'): Line => ({
  how: 'estimated',
  place: circuitPlace(part),
  estimate: { mass: '0 g', method: 'looked at' },
});
const whole = (s: Store): Line[] => [
  { how: 'sealed', place: vesselPlace(s.flask), seal: 'S 901' },
  { how: 'sealed', place: vesselPlace(s.second), seal: 's902' },
  { how: 'weighed', place: vesselPlace(s.bottle), weight: stated('1199', '0.1') },
  { how: 'seen', place: lotPlace(s.lot) },
  { how: 'estimated', place: vesselPlace(s.drum), estimate: { mass: '0 g', method: 'looked at' } },
  none('mortar'),
  { how: 'estimated', place: circuitPlace('plates'), estimate: { mass: '150 g', method: 'by area', sharedU: 0.15, ownU: 0.05 } },
  none('pan'),
  none('trap'),
];

const draft = (lines: unknown[], more = {}) => ({
  id: 'count-draft',
  happened: at,
  by: null,
  kind: 'stock-take',
  body: { scope: 'whole', lines, ...more },
});

/** Problems of a draft, by schema and by book: code, field and sentence. */
function problems(s: Store, lines: unknown[], more = {}): { code: string; field: string; text: string }[] {
  const read = draftFrom(draft(lines, more));
  const found = read.ok ? checkDraft(readBook(s.entries), read.value, now) : read.problems;
  return found.map((p) => ({ code: p.code, field: p.field, text: problemText(p) }));
}
const counted = (s: Store, lines: Line[], name = 'count', happened = at) => s.add(name, 'stock-take', { lines }, { happened });
const gramsIn = (s: Store, place: string) => (stocksAt(readBook(s.entries).movements.all, null).get(place)?.ug ?? 0) / 1e6;

describe('the list of a count', () => {
  test('names every place that has to be answered, in walking order, each with how it is best answered', () => {
    const s = store();
    const list = countListOf(readBook(s.entries), at);
    expect(list.map(({ place, group, expected }) => [place, group, expected])).toEqual([
      [vesselPlace(s.flask), 'sealed', 'sealed'],
      [vesselPlace(s.second), 'sealed', 'sealed'],
      [vesselPlace(s.bottle), 'working', 'weighed'],
      [lotPlace(s.lot), 'lots', 'weighed'],
      [vesselPlace(s.drum), 'drums', 'estimated'],
      [circuitPlace('mortar'), 'circuit', 'estimated'],
      [circuitPlace('plates'), 'circuit', 'estimated'],
      [circuitPlace('pan'), 'circuit', 'estimated'],
      [circuitPlace('trap'), 'circuit', 'estimated'],
    ]);
    expect(list[0]?.seal).toBe('S 901');
    expect(list[2]?.book.ug).toBe(1_200_000_000);
  });

  test('a charge, a sponge and a condenser are asked about only while they hold mercury', () => {
    const s = store();
    const [lot = ''] = s.lots('fired', ['400'], s.bench);
    const charge = s.add('charge', 'charge', { retort: s.pot, rows: [{ key: 'a', take: 'whole', lot, weight: scaled('400') }] });
    const charged = countListOf(readBook(s.entries), at).find((row) => row.place === `charge:${charge}`);
    expect([charged?.group, charged?.expected]).toEqual(['in-hand', 'seen']);
    s.add('firing', 'firing', {
      retort: s.pot,
      heats: [{ charge, sponge: scaled('150') }],
      mercury: { weight: scaled('245'), vessel: s.bottle },
    });
    const kinds = countListOf(readBook(s.entries), at).map((row) => row.place.split(':')[0]);
    expect(kinds).toContain('sponge');
    expect(kinds).not.toContain('charge');
  });

  test('the estimating method used last stands with the place, and all methods are offered', () => {
    const s = store();
    counted(s, whole(s), 'first', '2026-04-01T09:00+12:00');
    const read = readBook(s.entries);
    expect(countListOf(read, at).find((row) => row.place === circuitPlace('plates'))?.lastEstimate).toEqual({
      method: 'by area',
      sharedU: 0.15,
      ownU: 0.05,
    });
    expect(methodsUsed(read)).toEqual(['looked at', 'by area']);
  });
});

describe('seals', () => {
  test('a flask that is sealed and untouched differs by exactly nothing and adds no variance', () => {
    const s = store();
    const before = readBook(s.entries);
    const stockBefore = stocksAt(before.movements.all, null).get(vesselPlace(s.flask));
    const id = counted(s, [{ how: 'sealed', place: vesselPlace(s.flask), seal: 'S 901' }]);
    const read = readBook(s.entries);
    expect(read.movements.all.some((m) => m.entry === id)).toBe(false);
    expect(stocksAt(read.movements.all, null).get(vesselPlace(s.flask))).toEqual(stockBefore);
    const line: Line = { how: 'sealed', place: vesselPlace(s.flask), seal: 'S 901' };
    const compared = comparedWithBook(read, line, at);
    expect([compared.counted, compared.difference.ug, uOf(compared.difference), compared.z]).toEqual([null, 0, 0, null]);
  });

  test('a seal stands until mercury is drawn off, and until a count finds it broken', () => {
    const s = store();
    expect(sealAt(readBook(s.entries), s.flask, at)).toBe('S 901');
    s.add('fed', 'issue', { vessel: s.flask, to: 'plates', weight: stated('100', '0.1') });
    expect(sealAt(readBook(s.entries), s.flask, at)).toBe(null);
    counted(s, [{ how: 'unanswered', place: vesselPlace(s.second), why: 'no scale is large enough', sealBroken: 'yes' }]);
    expect(sealAt(readBook(s.entries), s.second, at)).toBe(null);
  });

  test('a number that another flask bears, or that stands twice in one count, is refused by name', () => {
    const s = store();
    const lines = whole(s);
    lines[0] = { how: 'sealed', place: vesselPlace(s.flask), seal: 'S 902' };
    const [first, second] = problems(s, lines);
    expect([first?.code, first?.field]).toEqual(['seal-reused', 'body.lines[0].seal']);
    expect(first?.text).toContain('“S 902” is or was on “Flask 2”');
    expect([second?.code, second?.field]).toEqual(['seal-reused', 'body.lines[1].seal']);
    // a new seal bears no number that was used before, on the same flask either
    lines[0] = { how: 'weighed', place: vesselPlace(s.flask), weight: stated('34470'), sealBroken: 'yes', newSeal: 'S 901' };
    expect(problems(s, lines).map((p) => [p.code, p.field])).toEqual([['seal-reused', 'body.lines[0].newSeal']]);
  });

  test('another number than the book’s is told with both, and a vessel without a seal cannot be answered by one', () => {
    const s = store();
    const lines = whole(s);
    lines[0] = { how: 'sealed', place: vesselPlace(s.flask), seal: 'S 777' };
    expect(problems(s, lines)).toEqual([
      { code: 'seal-differs', field: 'body.lines[0].seal', text: expect.stringMatching(/“S 901” on “Flask 1”, not “S 777”/) },
    ]);
    const open = whole(s);
    open[2] = { how: 'sealed', place: vesselPlace(s.bottle), seal: 'S 1' };
    expect(problems(s, open).map((p) => p.code)).toEqual(['seal-not-booked']);
  });

  test('a flask weighed for the first time since it came under seal is invoice against weighed, and no loss', () => {
    const s = store();
    counted(s, [
      { how: 'weighed', place: vesselPlace(s.flask), weight: stated('34150', '2'), sealBroken: 'yes', newSeal: 'S 950' },
    ]);
    const read = readBook(s.entries);
    const [moved] = read.movements.all.filter((m) => m.basis === 'invoice-against-weighed');
    // 34,150 − 34,473 (cases.md 9)
    expect([moved?.from, moved?.to, moved?.mercury.ug]).toEqual([outside, vesselPlace(s.flask), -323_000_000]);
    expect(gramsIn(s, lossPlace('unaccounted'))).toBe(0);
    expect(accountOf(read, { from: null, to: null }).unaccounted.ug).toBe(0);
    expect(sealAt(read, s.flask, at)).toBe('S 950');
    expect(read.flags.get('count0')?.map((f) => f.code)).toEqual(['seal-broken']);
    // opened once: from then on a difference is this site's own
    counted(
      s,
      [{ how: 'weighed', place: vesselPlace(s.flask), weight: stated('34100', '2') }],
      'again',
      '2026-06-30T14:00+12:00',
    );
    expect(gramsIn(s, lossPlace('unaccounted'))).toBe(50);
  });
});

describe('a place that was looked into and found empty', () => {
  test('is counted as nothing, and what was booked there is unaccounted for', () => {
    const s = store();
    counted(s, [{ how: 'empty', place: vesselPlace(s.bottle) }]);
    expect([gramsIn(s, vesselPlace(s.bottle)), gramsIn(s, lossPlace('unaccounted'))]).toEqual([0, 1200]);
    const compared = comparedWithBook(readBook(store().entries), { how: 'empty', place: vesselPlace(s.bottle) }, at);
    expect([compared.counted?.ug, uOf(compared.counted ?? nothing), compared.difference.ug]).toEqual([0, 0, -1_200_000_000]);
  });

  test('is an answer of a whole count, except where a seal, a label or the metal of a plate keeps the eye out', () => {
    const s = store();
    const empty = (place: string) =>
      problems(
        s,
        whole(s).map((line) => (line.place === place ? { how: 'empty', place } : line)),
      );
    for (const place of [vesselPlace(s.bottle), vesselPlace(s.drum), circuitPlace('trap'), circuitPlace('pan')])
      expect(empty(place), place).toEqual([]);
    for (const place of [vesselPlace(s.flask), lotPlace(s.lot), circuitPlace('plates')])
      expect(
        empty(place).map((p) => p.code),
        place,
      ).toEqual(['count-way']);
  });
});

/** The flask poured from by one issue, and then weighed for the first time. */
function pouredFrom(s: Store, weight: Body<'issue'>['weight'], foundG: string) {
  s.add('fed', 'issue', { vessel: s.flask, to: 'plates', weight });
  counted(s, [{ how: 'weighed', place: vesselPlace(s.flask), weight: stated(foundG, '2') }]);
  return readBook(s.entries);
}

describe('a flask poured from before it was first weighed', () => {
  test('what was drawn on a scale is known: what is left is the supplier’s figure less the draws, with its doubt, and no loss', () => {
    const s = store();
    // 34,473 by the invoice, 2,000 drawn, 32,150 there: the flask came with 34,150
    const read = pouredFrom(s, scaled('2000', s.bench), '32150');
    const [moved] = read.movements.all.filter((m) => m.basis === 'invoice-against-weighed');
    expect([moved?.from, moved?.to, moved?.mercury.ug]).toEqual([outside, vesselPlace(s.flask), -323_000_000]);
    // 5 g of the invoice, 2 g of the weighing, and what the draw's own scale adds: 0.03/2 of its certificate and 0.01/√12 of its last digit
    expect(uOf(moved?.mercury ?? nothing) / 1e6).toBeCloseTo(Math.sqrt(25 + 4), 2);
    expect(uOf(moved?.mercury ?? nothing) / 1e6).toBeGreaterThan(Math.sqrt(25 + 4));
    expect(gramsIn(s, lossPlace('unaccounted'))).toBe(0);
    expect(accountOf(read, { from: null, to: null }).invoiced.ug).toBe(-323_000_000);
    expect(read.flags.get('count0')).toBe(undefined);
  });

  test('what was drawn without a scale is not: the difference is unaccounted for, with a reservation of its own', () => {
    const s = store();
    const read = pouredFrom(s, stated('2000', '10'), '32150');
    expect(read.movements.all.some((m) => m.basis === 'invoice-against-weighed')).toBe(false);
    expect(read.movements.all.find((m) => m.entry === idOf('fed'))?.basis).toBe('stated');
    expect(gramsIn(s, lossPlace('unaccounted'))).toBe(323);
    const account = accountOf(read, { from: null, to: null });
    expect(account.reservations.map((r) => r.code)).toContain('poured-unweighed');
    const [said] = read.flags.get('count0') ?? [];
    expect(said && flagText(said)).toMatch(/^“Flask 1” was weighed for the first time, .* −323\.00.g counts as unaccounted for/);
  });

  test('what came back into it makes its figure mixed as well', () => {
    const s = store();
    s.add('back', 'return', { vessel: s.flask, from: 'trap', weight: scaled('50', s.bench) });
    const read = pouredFrom(s, scaled('2000', s.bench), '32200');
    expect(gramsIn(s, lossPlace('unaccounted'))).toBeCloseTo(323, 6);
    expect(read.flags.get('count0')?.map((f) => f.code)).toEqual(['poured-unweighed']);
  });
});

describe('answers that are awkward are kept', () => {
  test('a vessel not found: all that was booked is not accounted for, with a reservation', () => {
    const s = store();
    const lines = whole(s);
    lines[2] = { how: 'not-found', place: vesselPlace(s.bottle), note: 'shelf searched' };
    expect(problems(s, lines)).toEqual([]);
    counted(s, lines);
    expect(gramsIn(s, vesselPlace(s.bottle))).toBe(0);
    const read = readBook(s.entries);
    const posted = read.movements.all.find((m) => m.to === vesselPlace(s.bottle) && m.basis === 'counted');
    expect([posted?.from, posted?.mercury.ug]).toEqual([lossPlace('unaccounted'), -1_200_000_000]);
    expect(accountOf(read, { from: null, to: null }).reservations.map((r) => r.code)).toContain('place-not-found');
  });

  test('a broken seal that cannot be weighed carries the book’s amount forward and stands as a reservation', () => {
    const s = store();
    const lines = whole(s);
    lines[0] = { how: 'unanswered', place: vesselPlace(s.flask), why: 'no scale is large enough', sealBroken: 'yes' };
    expect(problems(s, lines)).toEqual([]);
    counted(s, lines);
    expect(gramsIn(s, vesselPlace(s.flask))).toBe(34_473);
    const codes = accountOf(readBook(s.entries), { from: null, to: null }).reservations.map((r) => r.code);
    expect(codes).toContain('count-unanswered');
  });
});

describe('lots in the safe', () => {
  test('a ball that weighs less lost mercury in its share, not in its whole weight', () => {
    const s = store();
    counted(s, [{ how: 'weighed', place: lotPlace(s.lot), weight: scaled('392', s.bench) }]);
    // 400 g at the prior share 0.625: 250 g; 8 g less weight is 5 g less mercury
    expect(gramsIn(s, lotPlace(s.lot))).toBeCloseTo(245, 5);
    expect(gramsIn(s, lossPlace('unaccounted'))).toBeCloseTo(5, 5);
  });

  test('what a count changed of a ball is taken back when its charge trues it up: nothing stays in an empty place', () => {
    for (const line of ['weighed', 'not-found'] as const) {
      const s = store();
      const place = lotPlace(s.lot);
      counted(
        s,
        [line === 'weighed' ? { how: 'weighed', place, weight: scaled('392', s.bench) } : { how: 'not-found', place }],
        'early',
        '2026-03-05T09:00+13:00',
      );
      s.add(
        'charge',
        'charge',
        { retort: s.pot, rows: [{ key: 'a', take: 'whole', lot: s.lot, weight: scaled('392', s.bench) }] },
        { happened: '2026-03-06T09:00+13:00' },
      );
      expect(gramsIn(s, place)).toBeCloseTo(0, 9);
      expect(gramsIn(s, lossPlace('unaccounted'))).toBeCloseTo(0, 9);
    }
  });
});

describe('what is refused, by name', () => {
  test('a whole count that leaves a place out names every one it leaves out; a part need not', () => {
    const s = store();
    const lines = whole(s);
    const short = [...lines.slice(0, 2), ...lines.slice(4)];
    const found = problems(s, short);
    expect(found.map((p) => [p.code, p.field])).toEqual([
      ['count-left-out', 'body.lines'],
      ['count-left-out', 'body.lines'],
    ]);
    expect(found[0]?.text).toMatch(/^“Working bottle” is not answered/);
    expect(found[1]?.text).toMatch(/^“balls A” is not answered/);
    expect(problems(s, short, { scope: 'part' })).toEqual([]);
    expect(problems(s, short, { scope: undefined })).toEqual([]);
    expect(problems(s, lines)).toEqual([]);
  });

  test('a line left without an answer, a negative estimate and a negative uncertainty each name their line', () => {
    const s = store();
    const broken: [unknown, string][] = [
      [{ place: vesselPlace(s.bottle) }, 'body.lines[2]'],
      [{ how: 'estimated', place: circuitPlace('plates'), estimate: { mass: '-5 g', method: 'by area' } }, 'estimate.mass'],
      [
        { how: 'estimated', place: circuitPlace('plates'), estimate: { mass: '5 g', method: 'by area', sharedU: -0.1 } },
        'estimate.sharedU',
      ],
    ];
    for (const [line, field] of broken) {
      const lines: unknown[] = [...whole(s)];
      lines[2] = line;
      const found = problems(s, lines);
      expect(found.map((p) => p.field)).toEqual([expect.stringContaining(field)]);
      expect(found[0]?.field).toContain('body.lines[2]');
    }
  });

  test('a place twice, a place that is none, and a scale held to a drum or the circuit', () => {
    const s = store();
    const add = (line: Line) => problems(s, [...whole(s), line]).map((p) => p.code);
    expect(add(none('pan'))).toEqual(['place-twice']);
    expect(add({ how: 'seen', place: 'loss:tailings' })).toEqual(['count-no-place']);
    expect(add({ how: 'seen', place: 'circuit:roof' })).toEqual(['count-no-place']);
    expect(add({ how: 'seen', place: 'lot:nobody-knows/1' })).toEqual(['unknown-id']);
    for (const place of [vesselPlace(s.drum), circuitPlace('plates')]) {
      const lines = whole(s).map((line): Line => (line.place === place ? { how: 'weighed', place, weight: stated('9') } : line));
      expect(problems(s, lines).map((p) => p.code)).toEqual(['count-way']);
    }
  });

  test('a count that is written anew is held to the book without itself', () => {
    const s = store();
    const lines = whole(s);
    const moved: Line = { how: 'not-found', place: vesselPlace(s.bottle) };
    const id = s.add(
      'count',
      'stock-take',
      { scope: 'whole', lines: lines.map((l, i) => (i === 2 ? moved : l)) },
      { happened: at },
    );
    const correction = {
      id: 'correction',
      happened: at,
      by: null,
      kind: 'correction',
      body: { corrects: id, why: 'found behind the door', body: { scope: 'whole', lines: lines.filter((_, i) => i !== 2) } },
    };
    const read = draftFrom(correction);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(checkDraft(readBook(s.entries), read.value, now).map((p) => [p.code, p.data?.name])).toEqual([
      ['count-left-out', 'Working bottle'],
    ]);
  });
});

describe('a place counted far from its book', () => {
  const counted = (grams: string, u = '0.1') => {
    const maker = BookMaker.site();
    const jar = maker.add('jar', 'vessel', { label: 'Jar', use: 'jar' });
    maker.add('came', 'receipt', { vessel: jar, way: 'bought', weight: stated('1000', '0.1') });
    const count = maker.add('count', 'stock-take', {
      scope: 'part',
      lines: [{ how: 'weighed', place: `vessel:${jar}`, weight: stated(grams, u) }],
    });
    return (readBook(maker.entries).flags.get(count) ?? []).filter((f) => f.code === 'count-differs');
  };
  test('is told beyond three standard uncertainties, either way, and not within them', () => {
    // u = √(0.1² + 0.1²) = 0.141421; three of it are 0.424264
    expect(counted('999.58')).toEqual([]);
    expect(counted('999.57').map((f) => [f.data.ug, f.data.z, f.data.name])).toEqual([[-430000, '\u22123.0', 'Jar']]);
    expect(counted('1001.1').map((f) => [f.data.ug, f.data.z])).toEqual([[1_100_000, '7.8']]);
    expect(counted('999', '10')).toEqual([]);
  });
});
