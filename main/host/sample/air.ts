/**
 * The air of the sample: a meter with its calibration, a limit the site made up and picked, a day with a gap and a reading below detection, a day of one
 * person, a quiet day. Everything is made up; the limit says so in its own source. No dice are thrown here, so nothing else of the story moves.
 */
import type { Body } from '../../../app/core/kinds/index.ts';
import type { SampleSite } from './site.ts';
import type { Story } from './story.ts';

type Air = Body<'air-reading'>;

export function tellAir(story: Story, site: SampleSite): void {
  const at = (day: string, clock: string) => `${day}T${clock}${story.offset}`;
  const meter = story.tell('meter', '2026-03-02', '09:00', {
    label: 'Vapour meter 1',
    calibrated: { on: '2026-02-20', due: '2027-02-20' },
  });
  story.tell('limit', '2026-03-02', '09:30', {
    label: 'Site rule',
    body: 'This site',
    form: 'elemental-vapour',
    mgM3: '0.020',
    basis: '8h',
    people: 'work',
    status: 'recommendation',
    source: 'Site rule, sheet 4 (invented for this sample; no authority’s figure)',
    checked: { by: 'Safety officer', on: '2026-03-02' },
    picked: 'yes',
  });
  const read = (day: string, from: string, to: string | undefined, shows: string, more: Partial<Air>) =>
    story.tell('air-reading', day, to ?? from, {
      sample: 'area',
      place: 'Retort house, bench',
      meter,
      unit: 'mg/m3',
      mode: to === undefined ? 'spot' : 'mean',
      from: at(day, from),
      ...(to === undefined ? {} : { to: at(day, to) }),
      shows,
      ...more,
    });

  // a day with a gap over midday: the meter was taken to the store
  const shift = { from: at('2026-03-10', '07:30'), to: at('2026-03-10', '15:30') };
  const bench = { shift, height: 'breathing', fans: 'on', hood: 'on', temperatureC: 21, pressureKpa: 98.4 } as const;
  read('2026-03-10', '07:30', '08:15', '<0.003', {
    ...bench,
    activity: 'before work',
    zero: { before: '0.000', after: '0.001' },
  });
  read('2026-03-10', '08:15', '10:00', '0.012', { ...bench, activity: 'dismantling plates', max: '0.031' });
  read('2026-03-10', '10:00', '11:30', '0.024', { ...bench, activity: 'scraping', max: '0.058' });
  read('2026-03-10', '13:45', '15:30', '0.007', { ...bench, activity: 'sweeping up, plates covered' });
  read('2026-03-10', '12:20', undefined, '0.004', {
    shift,
    height: 'floor',
    activity: 'midday, nobody at work',
    temperatureC: 22,
  });

  // one person, a shorter day
  const own = { sample: 'personal', person: site.helper, place: 'Plate house', temperatureC: 19, pressureKpa: 98.6 } as const;
  read('2026-04-14', '08:00', '09:30', '0.009', { ...own, activity: 'lifting plates' });
  read('2026-04-14', '09:30', '12:00', '0.016', { ...own, activity: 'scraping', max: '0.040' });

  // a quiet day
  read('2026-05-12', '08:00', '12:00', '<0.003', {
    ...bench,
    shift: undefined,
    activity: 'no work with mercury',
    temperatureC: 14,
  });
  read('2026-05-12', '12:00', '16:00', '0.004', { ...bench, shift: undefined, activity: 'retort opened cold', temperatureC: 17 });
}
