import { expect, test } from 'vitest';
import { airRecord } from '../../app/papers/air-record.ts';
import { incidentSheet } from '../../app/papers/incident-sheet.ts';
import { openDaySheet } from '../../app/papers/open-day-sheet.ts';
import { personalAirRecord } from '../../app/papers/personal-air.ts';
import { runSheet } from '../../app/papers/run-sheet.ts';
import { wallSheet } from '../../app/papers/wall-sheet.ts';
import { frameOf } from './site-of-runs.ts';
import { between, bookOf, said, year } from './year.ts';

type Made = ReturnType<typeof year>;
const record = (made: Made, id: string) => said(airRecord(bookOf(made.book), id, frameOf(made.book)));

/** A limit that the site picked. */
function picked(made: Made, name: string, mgM3: string, people: 'work' | 'public') {
  made.book.add(
    name,
    'limit',
    {
      label: name,
      body: 'This site',
      form: 'elemental-vapour',
      mgM3,
      basis: people === 'public' ? 'continuous' : '8h',
      people,
      source: 'A sheet of this site',
      checked: { by: 'Safety officer', on: '2026-01-06' },
      picked: 'yes',
    },
    { happened: '2026-01-06T09:00+13:00' },
  );
}

test('a reading stands as shown, time nobody read is named, and without a picked limit there is no verdict', () => {
  const made = year();
  const text = record(made, made.ids.air);
  expect(text).toContain('0.4 µg/m³');
  expect(between(text, 'Time nobody read', 'What the readings allow to be said')).toContain('11:00 to 14:00, 3 h');
  expect(text).toContain('No limit is picked for this day');
  expect(text).toContain('OUT OF DATE when it was read');
});

test('a place of visitors is held against figures for the public, whatever is picked for people at work', () => {
  const made = year();
  picked(made, 'Figure for work', '0.02', 'work');
  picked(made, 'Figure for the public', '0.0003', 'public');
  for (const text of [record(made, made.ids.air), said(openDaySheet(bookOf(made.book), made.ids.openDay, frameOf(made.book)))]) {
    // 0.4 µg/m³ over the hour that was read, against 0.3
    expect(text).toContain('Figure for the public: 0.0003 mg/m³');
    expect(text).toContain('above the figure you entered');
    expect(text).not.toContain('Figure for work');
  }
});

test('readings at a person are on no record: refused by their own id, left out and counted on that of a run', () => {
  const made = year();
  const at = (clock: string) => `2026-03-02T${clock}+13:00`;
  const own = made.book.add(
    'own air',
    'air-reading',
    {
      sample: 'personal',
      person: made.ids.keeper,
      unit: 'mg/m3',
      shows: '0.777',
      from: at('10:00'),
      to: at('11:00'),
      run: made.ids.charge,
    },
    { happened: at('11:00') },
  );
  expect(airRecord(bookOf(made.book), own, frameOf(made.book))).toMatchObject({
    ok: false,
    problems: [{ code: 'paper-personal-air' }],
  });
  const text = record(made, made.ids.charge);
  expect(text).toContain('One day of readings at a person is left out');
  expect(text).toContain('No reading of a place names this run.');
  expect(text).not.toContain('0.777');
});

test('what one person breathed is on that person’s own paper: it says whom it is for, and takes no reading of a place', () => {
  const made = year();
  picked(made, 'Figure for work', '0.02', 'work');
  picked(made, 'Figure for the public', '0.0003', 'public');
  const own = (id: string) => personalAirRecord(bookOf(made.book), id, frameOf(made.book));
  const text = said(own(made.ids.ownAir));
  expect(text).toContain('It is for that person, the safety officer');
  expect(text).toContain('0.018 mg/m³');
  expect(text).toContain('Keeper, 25 May 2026');
  // two hours at 0.018 and nothing else: 0.0045 over eight
  expect(text).toContain('Figure for work: 0.02 mg/m³');
  expect(text).not.toContain('Figure for the public');
  expect(text).not.toContain('0.4 µg/m³');
  expect(text).not.toMatch(/\b(safe|safely|approved|compliant)\b/i);
  const at = (clock: string) => `2026-05-28T${clock}+13:00`;
  made.book.add(
    'own air two',
    'air-reading',
    { sample: 'personal', person: made.ids.keeper, unit: 'mg/m3', shows: '0.006', from: at('08:00'), to: at('09:00') },
    { happened: at('09:00') },
  );
  const both = said(own(made.ids.keeper));
  expect(both).toContain('Keeper, 2 days with readings');
  expect(both).toContain('0.006 mg/m³');
  for (const id of [made.ids.air, made.ids.charge, 'nobody'])
    expect(own(id)).toMatchObject({ ok: false, problems: [{ code: 'paper-no-such', data: { wanted: 'personal-air' } }] });
});

test('no other paper says what one person breathed', () => {
  const made = year();
  for (const make of [
    () => airRecord(bookOf(made.book), made.ids.air, frameOf(made.book)),
    () => openDaySheet(bookOf(made.book), made.ids.openDay, frameOf(made.book)),
    () => incidentSheet(bookOf(made.book), made.ids.spill, frameOf(made.book)),
    () => wallSheet(bookOf(made.book), frameOf(made.book)),
    () => runSheet(bookOf(made.book), made.ids.charge, frameOf(made.book)),
  ])
    expect(said(make())).not.toContain('0.018');
});

test('the wall sheet has the numbers entered, an open line for each that is missing, and the site’s stop rules', () => {
  const made = year();
  const sheet = () => said(wallSheet(bookOf(made.book), frameOf(made.book)));
  expect(sheet()).toContain('Poison centre, Poison line\n000 111');
  expect(sheet().match(/…{10,}/g)).toHaveLength(4);
  expect(sheet()).toContain('Fill them in by hand');
  made.book.add(
    'stops',
    'stop-rules',
    { rules: [{ of: 'reading', when: 'at 0.05 mg/m³' }] },
    { happened: '2026-05-22T09:00+13:00' },
  );
  expect(sheet()).toContain('Reading of the air: at 0.05 mg/m³');
  expect(sheet()).not.toMatch(/\b(safe|safely|approved|compliant)\b/i);
});
