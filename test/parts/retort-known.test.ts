/** What a run page and its sheet say beside the figures: the verdict, what was not recorded, which causes the entries rule out, where bands come from. */
import { expect, test } from 'vitest';
import { readBook, runOf } from '../../app/core/book/book.ts';
import { checkDraft } from '../../app/core/book/rules.ts';
import type { Run } from '../../app/core/book/runs.ts';
import { weighedFrom } from '../../app/core/book/weights.ts';
import type { Body } from '../../app/core/kinds/index.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { correctedAtCharging, correctedInCleanUp } from '../../app/screens/retort/corrected-lots.ts';
import { dayOfRun, stateOf } from '../../app/screens/retort/run-state.ts';
import { stampProblems } from '../../app/screens/retort/stamps.ts';
import { asReadText } from '../../app/screens/retort/typed.ts';
import { findingFor, type KnownOfRun } from '../../app/words/findings.ts';
import { flagText } from '../../app/words/flags.ts';
import { bandSources, lossRule, ratioRule } from '../../app/words/retort-bands.ts';
import { knownOf, notRecordedOf, notRecordedText } from '../../app/words/retort-known.ts';
import { BookMaker, scaled, stated } from '../core/book-maker.ts';
import { sheetOf, textOf } from '../papers/site-of-runs.ts';

type Site = ReturnType<typeof BookMaker.site>;

function charged(book: Site, name: string, more: Partial<Body<'charge'>> = {}, happened = '2026-03-14T08:00+13:00'): string {
  const [lot = ''] = book.lots(name, ['500.0'], book.bench);
  return book.add(
    `charge ${name}`,
    'charge',
    { retort: book.pot, rows: [{ take: 'whole', key: 'l1', lot, weight: scaled('500.0', book.bench) }], ...more },
    { happened },
  );
}
const fired = (book: Site, charge: string, mercury: string, more: Partial<Body<'firing'>> = {}, happened?: string) =>
  book.add(
    `firing ${charge}`,
    'firing',
    {
      heats: [{ charge, sponge: scaled('190.0', book.bench) }],
      mercury: { weight: scaled(mercury, book.bench), vessel: book.bottle },
      ...more,
    },
    happened === undefined ? {} : { happened },
  );
function runIn(book: Site, charge: string): Run {
  const run = runOf(readBook(book.entries), charge);
  if (!run) throw new Error('there is a run');
  return run;
}

test('a run that is complete says what its figures show and nothing before it, on the page and at the head of its sheet', () => {
  const book = BookMaker.site();
  const short = charged(book, 'short');
  fired(book, short, '270.0', { water: stated('0', '0') });
  expect(stateOf(runIn(book, short)).text).toBe('short of mercury');
  expect(textOf(sheetOf(book, short).content)).toContain('Pot retort, 1 March 2026: short of mercury');
  const open = charged(book, 'open');
  expect(stateOf(runIn(book, open)).text).toBe('open, awaiting firing');
  expect(textOf(sheetOf(book, open).content)).toContain(': open, awaiting firing');
});

test('what was left out is told as not recorded, and an answer of no is not among it', () => {
  const book = BookMaker.site();
  const charge = charged(book, 'silent');
  fired(book, charge, '305.0');
  expect(notRecordedOf(runIn(book, charge))).toEqual([
    'time of lighting',
    'time of opening',
    'opening temperature',
    'mercury wet or dry',
    'water that came over',
    'colour of the sponge',
    'how full the retort was',
    'checks before 15 of 15',
    'checks while hot 5 of 5',
    'checks after opening 6 of 6',
  ]);
  expect(textOf(sheetOf(book, charge).content)).toContain(notRecordedText(runIn(book, charge)));
  const told = charged(book, 'told', { pipeClear: 'no', dry: 'yes', fill: 0.5, checks: [{ check: 'no-food', answer: 'no' }] });
  fired(book, told, '305.0', {
    checks: [{ check: 'place', answer: 'yes' }],
    opening: { measuredC: 20 },
    water: stated('0', '0'),
  });
  const missing = notRecordedOf(runIn(book, told));
  expect(missing).toContain('checks before 11 of 15');
  expect(missing).not.toContain('opening temperature');
  expect(missing).not.toContain('how full the retort was');
});

test('of several firings those are named that leave something out', () => {
  const book = BookMaker.site();
  const charge = charged(book, 'twice');
  fired(book, charge, '295.0', { opening: { measuredC: 20 } }, '2026-03-14T12:00+13:00');
  book.add(
    'firing again',
    'firing',
    {
      heats: [{ charge, sponge: scaled('185.0', book.bench) }],
      mercury: { weight: scaled('9.0', book.bench), vessel: book.bottle },
    },
    { happened: '2026-03-15T12:00+13:00' },
  );
  expect(notRecordedOf(runIn(book, charge))).toContain('opening temperature (firing 2)');
});

const nothing: KnownOfRun = { dry: false, waterWeighed: false, mercuryDry: false, firings: 1 };

test('causes that the entries rule out are left out, and the others stay', () => {
  const causes = (code: Parameters<typeof findingFor>[0], known: Partial<KnownOfRun>) =>
    findingFor(code, { ...nothing, ...known }).causes.join(' ');
  expect(causes('within-band', {})).toContain('Water in the charge');
  expect(causes('within-band', { dry: true, waterWeighed: true })).not.toMatch(/water/i);
  expect(causes('within-band', { dry: true, waterWeighed: true })).toContain('condenser');
  expect(causes('short-of-mercury', { dry: true })).not.toMatch(/wet charge/i);
  expect(causes('more-out-than-in', { mercuryDry: true })).not.toMatch(/water/i);
  expect(findingFor('more-out-than-in', { ...nothing, mercuryDry: true }).next.join(' ')).not.toMatch(/^Dry/);
  expect(causes('water-not-known', { dry: true })).toBe('A wet lining or lute: the amalgam was dry when weighed.');
});

test('water that was not weighed is told of the one firing there is, or of those among several', () => {
  expect(findingFor('water-not-known', nothing).says).toMatch(/^The water that came over was not weighed,/);
  expect(findingFor('water-not-known', { ...nothing, firings: 2 }).says).toMatch(/^Not all the water/);
});

test('what is known of a run is what its entries say', () => {
  const book = BookMaker.site();
  const charge = charged(book, 'dry', { dry: 'yes' });
  fired(book, charge, '305.0', {
    water: stated('0', '0'),
    mercury: { weight: scaled('305.0', book.bench), vessel: book.bottle, state: 'dry' },
  });
  expect(knownOf(runIn(book, charge))).toEqual({ dry: true, waterWeighed: true, mercuryDry: true, firings: 1 });
  const other = charged(book, 'damp', { dry: 'no' });
  fired(book, other, '305.0');
  expect(knownOf(runIn(book, other))).toEqual(nothing);
});

test('a band says whether the site set it or this program began with it', () => {
  const book = BookMaker.site();
  const charge = charged(book, 'begun');
  fired(book, charge, '305.0');
  const run = runIn(book, charge);
  const { registers } = readBook(book.entries);
  expect(lossRule(run.bands, bandSources(registers, run), 10)).toBe('starting value of this program (2\u00a0% of the charge)');
  expect(ratioRule(run.bands, bandSources(registers, run))).toBe(
    '± 4\u00a0% of the charge is ordinary (starting value of this program)',
  );
  book.add(
    'pot again',
    'retort',
    { of: book.pot, label: 'Pot retort', lossBand: 0.015, lossAllowance: '12 g' },
    {
      happened: '2026-03-14T07:00+13:00',
    },
  );
  const set = runIn(book, charge);
  const sources = bandSources(readBook(book.entries).registers, set);
  expect(sources).toEqual({ loss: 'site', ratio: 'start' });
  expect(lossRule(set.bands, sources, 12)).toBe('12.00\u00a0g whatever the charge, set by the site');
  expect(lossRule(set.bands, sources, 15)).toBe('set by the site (1.5\u00a0% of the charge)');
});

test('runs of one day are told apart by their time, and by their balls where the times are the same', () => {
  const book = BookMaker.site();
  const [one, two] = [charged(book, 'one'), charged(book, 'two', {}, '2026-03-14T11:30+13:00')];
  const at = (charge: string) => dayOfRun(readBook(book.entries), runIn(book, charge));
  expect(at(one)).toBe('14 March 2026, 08:00');
  expect(at(two)).toBe('14 March 2026, 11:30');
  const three = charged(book, 'three');
  expect(at(three)).toBe('14 March 2026, three A');
  const alone = charged(book, 'alone', {}, '2026-03-20T08:00+13:00');
  expect(at(alone)).toBe('20 March 2026');
});

test('a lot whose label or weight was corrected is marked, one that was not is not', () => {
  const book = BookMaker.site();
  const charge = charged(book, 'ball');
  const made = book.entries.find((entry) => entry.id.startsWith('ball'));
  if (!made) throw new Error('there is a clean-up');
  const lots = structuredClone((made.body as Body<'clean-up'>).lots).map((lot) => ({
    ...lot,
    weight: scaled('501.0', book.bench),
  }));
  const lotOf = () => {
    const lot = readBook(book.entries).charges.all.get(charge)?.rows[0]?.lot;
    if (!lot) throw new Error('there is a lot');
    return lot;
  };
  expect(correctedInCleanUp(readBook(book.entries), lotOf())).toEqual([]);
  book.add('mended', 'correction', { corrects: made.id, body: { type: 'routine', lots }, why: 'Misread.' });
  expect(correctedInCleanUp(readBook(book.entries), lotOf())).toEqual(['weight']);
  const reading = () => {
    const got = readBook(book.entries).charges.all.get(charge)?.reading;
    if (!got) throw new Error('there is a charge');
    return got;
  };
  expect(correctedAtCharging(reading(), 'l1')).toEqual([]);
  const [row] = reading().body.rows;
  book.add('mended too', 'correction', {
    corrects: charge,
    body: { retort: book.pot, rows: [{ ...row, weight: scaled('499.0', book.bench) }] },
    why: 'Misread.',
  });
  expect(correctedAtCharging(reading(), 'l1')).toEqual(['charged']);
});

test('a ball that gained is not said to have dried', () => {
  const drift = (ug: number) => flagText({ code: 'lot-drift', entry: 'charge', data: { label: 'B1', ug } });
  expect(drift(4_000_000)).toContain('A ball does not gain by lying');
  expect(drift(4_000_000)).not.toMatch(/drying/);
  expect(drift(-4_000_000)).toContain('A small loss by drying is usual');
});

test('a stamp that has not come, or stands before its step, is told at its own field before anything is kept', () => {
  const book = BookMaker.site();
  const now = '2026-03-14T12:00+13:00';
  const daybook = {
    clock: { now: () => now, offsetAt: () => '+13:00' },
    check: (draft: unknown) => {
      const read = draftFrom(draft);
      if (!read.ok) return read;
      const problems = checkDraft(readBook(book.entries), read.value, now);
      return problems.length > 0 ? { ok: false as const, problems } : read;
    },
  };
  const none = { lit: '', firstMercury: '', lastMercury: '', finishFrom: '', finishTo: '', opened: '' };
  const of = (stamps: Partial<typeof none>) =>
    stampProblems(daybook as Parameters<typeof stampProblems>[0], { ...none, ...stamps });
  expect(Object.values(of({ lit: '2026-03-14T08:00+13:00', opened: '2026-03-14T11:00+13:00' })).flat()).toEqual([]);
  expect(of({ lit: '2062-03-14T08:00+13:00' }).lit.join()).toContain('14 March 2062 has not come yet');
  const reversed = of({ lit: '2026-03-14T10:00+13:00', firstMercury: '2026-03-14T09:00+13:00' });
  expect(reversed.lit).toEqual([]);
  expect(reversed.firstMercury.join()).toContain('09:00 is earlier than the step before it (10:00)');
});

test('a weight in another unit than grams is read back as it was read, with its grams behind it', () => {
  const { registers } = readBook(BookMaker.site().entries);
  const read = (gross: string) =>
    weighedFrom({ how: 'scale', gross }, { entry: 'e', path: 'p', at: '2026-03-14T12:00+13:00' }, registers);
  expect(asReadText(read('5 ozt'))).toBe('5 ozt (155.52\u00a0g)');
  expect(asReadText(read('212.40 g'))).toBe('212.40\u00a0g');
});
