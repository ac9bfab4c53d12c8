/** A firing along the clock: only what was written is drawn, what was not is named, each thing leads to its entry, and figures follow the site's notation. */
import { afterEach, describe, expect, test } from 'vitest';
import { readBook, runOf } from '../../app/core/book/book.ts';
import { fireTimes } from '../../app/core/book/fire-times.ts';
import { ownNotation } from '../../app/core/book/site-notation.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { layTimeline } from '../../app/drawings/timeline-layout.ts';
import { timelineSvg } from '../../app/drawings/timeline-svg.ts';
import { drawnFiring } from '../../app/words/firing-timeline.ts';
import { writeIn } from '../../app/words/notation.ts';
import { BookMaker, stated } from '../core/book-maker.ts';

const plain = (text: string | undefined) => (text ?? '').replace(/\u00a0/g, ' ');
const at = (clock: string, day = '14') => `2026-03-${day}T${clock}+13:00`;
afterEach(() => void writeIn(ownNotation));

/** A book with one run, its charge at 08:30 and its firing written under 17:00. */
function fired(
  body: Partial<Body<'firing'>>,
  more: Partial<Body<'charge'>> = {},
  also: (book: BookMaker, charge: string) => void = () => {},
) {
  const maker = BookMaker.site();
  const [lot = ''] = maker.lots('clean', ['955.6']);
  const charge = maker.add(
    'charge one',
    'charge',
    { retort: maker.pot, rows: [{ take: 'whole', key: '1', lot, weight: stated('955.6') }], ...more },
    { happened: at('08:30') },
  );
  maker.add('firing one', 'firing', { heats: [{ charge, sponge: stated('371.8') }], ...body }, { happened: at('17:00') });
  also(maker, charge);
  const book = readBook(maker.entries);
  const run = runOf(book, charge);
  const [times] = run ? fireTimes(book, run) : [];
  if (!times) throw new Error('a run with a firing was written');
  return { book, times, charge, ...drawnFiring(book, times) };
}
const whole = {
  lit: at('09:05'),
  firstMercury: at('09:50'),
  lastMercury: at('12:40'),
  finishFrom: at('12:45'),
  finishTo: at('13:10'),
  opened: at('17:00'),
} as const;
const laneOf = ({ drawn }: ReturnType<typeof fired>, id: string) => drawn?.lanes.find((lane) => lane.id === id);

describe('what is drawn', () => {
  test('a bar stands only between two times that were both written', () => {
    const all = fired(whole);
    expect(laneOf(all, 'fire')?.spans.map((s) => [s.text, s.to - s.from])).toEqual([
      ['heating up', 45],
      ['mercury coming over', 170],
      ['finishing heat', 25],
      ['shut, cooling', 230],
    ]);
    const { firstMercury: _, finishTo: __, ...some } = whole;
    const less = fired(some);
    expect(laneOf(less, 'fire')?.spans).toEqual([]);
    expect(laneOf(less, 'fire')?.note).toBe('not written');
    expect(laneOf(less, 'times')?.marks).toHaveLength(4);
    expect(laneOf(less, 'times')?.note).toBe('not written: first mercury, finishing heat to');
  });

  test('where no time was written nothing is drawn, and the table says what was', () => {
    const none = fired({ opening: { measuredC: 24 } });
    expect(none.drawn).toBeNull();
    expect(none.rows.map((row) => plain(row.what))).toContain('24 °C measured at the opening');
    expect(none.rows.filter((row) => row.entry === null).map((row) => row.said)).toContain('not written');
  });

  test('the drawing begins with a charge of the same morning, and one of days before stands at its edge', () => {
    expect(fired(whole).drawn?.minutes).toBe(510);
    const checks = [{ check: 'place', answer: 'yes' as const }];
    const early = fired(
      {
        ...whole,
        lit: at('09:05', '16'),
        firstMercury: at('09:50', '16'),
        lastMercury: at('12:40', '16'),
        finishFrom: at('12:45', '16'),
        finishTo: at('13:10', '16'),
        opened: at('17:00', '16'),
      },
      { checks },
    );
    expect(early.drawn?.minutes).toBe(475);
    const laid = early.drawn && layTimeline(early.drawn, 1020);
    expect(laid?.lanes.find((lane) => lane.id === 'checks')?.marks.map((m) => m.look)).toEqual(['early']);
    expect(early.told.find((one) => one.text.includes('before:'))?.text).toMatch(
      /^14 March 2026, 08:30: before: 1 of \d+ answered$/,
    );
  });

  test('water and fire are bars between being turned on and off; the last one, whose end was not written, is a mark that says so', () => {
    const got = fired({
      ...whole,
      noted: [
        { at: at('08:50'), water: 'on' },
        { at: at('10:30'), fire: 'off', water: 'off', what: 'pump failed' },
        { at: at('10:55'), fire: 'on', water: 'on' },
      ],
    });
    expect(laneOf(got, 'water')?.spans.map((s) => [s.text, s.look, s.to - s.from])).toEqual([
      ['on', 'filled', 100],
      ['off', 'open', 25],
    ]);
    expect(laneOf(got, 'water')?.marks.map((m) => m.text)).toEqual(['on 10:55, turning off not written']);
    expect(laneOf(got, 'stops')?.spans.map((s) => [s.text, s.look, s.to - s.from])).toEqual([['fire off', 'open', 25]]);
    expect(got.rows.find((row) => row.what === 'fire off')).toMatchObject({
      when: '10:30',
      until: '10:55',
      said: '25\u00a0min: pump failed',
    });
  });

  test('answers stand at the time of their entry, no as a cross with its question; phases nobody answered are named', () => {
    const got = fired(
      { ...whole, checks: [{ check: 'water-kept', answer: 'no' }] },
      { waterOn: 'yes', checks: [{ check: 'fire', answer: 'no' }] },
    );
    expect(laneOf(got, 'water')?.marks.map((m) => [m.text, m.look, m.at])).toEqual([
      ['running before the fire: yes', 'dot', 0],
      ['kept on until cold: no', 'cross', 510],
    ]);
    expect(laneOf(got, 'checks')?.note).toBe('not written: during');
    expect(got.rows.filter((row) => row.what.includes('“no”')).every((row) => row.said.startsWith('answered no: '))).toBe(true);
  });

  test('an entry of which only the day is known gives its answers no time', () => {
    const got = fired({ ...whole, checks: [{ check: 'watched', answer: 'yes' }] });
    const { firing } = got.times;
    Object.assign(firing.reading.entry, { timing: 'day' });
    const [mark] = drawnFiring(got.book, got.times).drawn?.lanes.find((lane) => lane.id === 'checks')?.marks ?? [];
    expect(mark?.at).toBeNull();
  });

  test('standing without being measured is an outline as long as it stood; a hot opening says against what', () => {
    const stood = laneOf(fired({ ...whole, opening: { stoodHours: 3 } }), 'opening');
    expect(stood?.spans.map((s) => [s.text, s.look, s.to - s.from])).toEqual([['stood 3 h, not measured', 'open', 180]]);
    expect(plain(laneOf(fired({ ...whole, opening: { measuredC: 52 } }), 'opening')?.marks[0]?.text)).toBe(
      '52 °C measured at the opening: above 40 °C, marked as opened hot',
    );
    expect(laneOf(fired(whole), 'opening')?.note).toBe('not written whether it was measured');
  });

  test('temperatures and the air have a scale of their own, and a line of words while none was read', () => {
    const bare = fired(whole);
    expect(bare.drawn?.panels).toEqual([]);
    expect(laneOf(bare, 'temperature')?.note).toBe('no temperature was noted during the fire');
    expect(laneOf(bare, 'air')?.note).toBe('no reading of the air names this run in this time');
    const read = (book: BookMaker, run: string, from: string, shows: string, place: string) =>
      book.add(`air ${from}`, 'air-reading', { sample: 'area', place, from: at(from), unit: 'ug/m3', mode: 'spot', shows, run });
    const got = fired(
      { ...whole, aimedC: { from: 350, to: 450 }, noted: [{ at: at('10:10'), temperatureC: 380 }], opening: { measuredC: 31 } },
      {},
      (book, charge) => {
        read(book, charge, '10:20', '12', 'at the lute');
        read(book, charge, '22:00', '3', 'long after');
        book.add('air of nothing', 'air-reading', {
          sample: 'area',
          place: 'yard',
          from: at('10:25'),
          unit: 'mg/m3',
          mode: 'spot',
          shows: '9',
        });
      },
    );
    const [temperature, air] = got.drawn?.panels ?? [];
    expect(temperature?.moments.map((m) => m.value)).toEqual([380, 31]);
    expect(temperature?.lines.map((l) => l.value)).toEqual([350, 450, 40]);
    expect(air?.moments.map((m) => [m.value, m.text])).toEqual([[0.012, '0.012']]);
    expect(got.told.some((one) => plain(one.text).includes('12 µg/m³') && one.text.includes('at the lute'))).toBe(true);
  });

  test('what a person breathed is drawn for those who may see it, and for others only counted', () => {
    const got = fired(
      whole,
      {},
      (book, run) =>
        void book.add('air own', 'air-reading', {
          sample: 'personal',
          person: 'keeper',
          from: at('10:20'),
          unit: 'mg/m3',
          mode: 'spot',
          shows: '0.015',
          run,
        }),
    );
    expect(laneOf(got, 'air')?.note).toMatch(/^one reading at a person not shown here/);
    expect(JSON.stringify(got.drawn)).not.toContain('0.015');
    const run = runOf(got.book, got.charge);
    const [seen] = run ? fireTimes(got.book, run, true) : [];
    expect(seen && JSON.stringify(drawnFiring(got.book, seen).drawn)).toContain('0.015');
  });

  test('an incident of this time is drawn and says that it names no run; one of another day is not', () => {
    const got = fired(whole, {}, (book) => {
      book.add('incident now', 'incident', { what: 'smell at the lid' }, { happened: at('10:30') });
      book.add('incident else', 'incident', { what: 'another day' }, { happened: at('10:30', '15') });
    });
    expect(laneOf(got, 'stops')?.marks.map((m) => m.text)).toEqual(['incident 10:30']);
    expect(got.rows.find((row) => row.what.includes('smell'))?.what).toContain('it names no run');
  });

  test('the site’s own rules stand beside it in its words, from the day they were set', () => {
    const rules = (book: BookMaker, day: string) =>
      book.add(
        'stop rules',
        'stop-rules',
        {
          rules: [
            { of: 'temperature', when: 'over 35 at the lid', act: 'leave shut' },
            { of: 'wind', when: 'gusts' },
          ],
        },
        { happened: at('07:00', day) },
      );
    expect(fired(whole, {}, (book) => void rules(book, '13')).rules.join(' ')).toMatch(/over 35 at the lid.*leave shut/);
    expect(fired(whole, {}, (book) => void rules(book, '15')).rules).toEqual([]);
  });
});

describe('what it says', () => {
  test('everything drawn is told, stands in the table and leads to an entry of the book', () => {
    const got = fired(
      { ...whole, noted: [{ at: at('10:10'), temperatureC: 380, what: 'steady' }], lute: 'faint stain', note: 'windy' },
      { waterOn: 'yes' },
    );
    const laid = got.drawn && layTimeline(got.drawn, 1020);
    const told = new Set(got.told.map((one) => one.id));
    for (const aim of laid?.aims ?? []) expect(told.has(aim.id), aim.id).toBe(true);
    expect(new Set(laid?.aims.map((aim) => aim.id)).size).toBe(laid?.aims.length);
    expect(got.rows.filter((row) => row.entry !== null)).toHaveLength(got.told.length);
    for (const one of got.told) expect(got.book.current.byId.has(one.entry), one.id).toBe(true);
    expect(got.told.map((one) => one.text)).toContain('without a time: at the lute: faint stain');
  });

  test('decimals and degrees are written as the site writes them, in words and on the ticks', () => {
    writeIn({ ...ownNotation, decimal: 'comma', temperature: 'fahrenheit' });
    const got = fired(
      { ...whole, noted: [{ at: at('10:10'), temperatureC: 380.5 }], opening: { measuredC: 24.5 } },
      {},
      (book, run) =>
        void book.add('air', 'air-reading', {
          sample: 'area',
          place: 'lid',
          from: at('10:20'),
          unit: 'mg/m3',
          mode: 'spot',
          shows: '0.012',
          run,
        }),
    );
    const svg = got.drawn
      ? timelineSvg(layTimeline(got.drawn, 1020), { title: 'T', font: 'F', legend: [], above: 'Above:' })
      : '';
    expect(svg).toContain('716,9');
    expect(svg).toContain('0,012');
    expect(svg).toContain('76,1\u00a0°F');
    expect(svg.replace(/="[^"]*"/g, '')).not.toMatch(/\d\.\d/);
  });

  test('a firing that goes on into the next day has the day where the clock turns', () => {
    const got = fired({ ...whole, opened: at('08:00', '15') });
    expect(got.drawn?.hours.map((hour) => hour.text)).toContain('15 March 2026');
    expect(got.told.find((one) => one.id === 'opened')?.text).toContain('15 March 2026, 08:00');
  });
});
