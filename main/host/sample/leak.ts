/**
 * The leaking run as it was watched: temperatures, water and fire noted along it, checks, and the air read beside the retort. Everything is made up; no dice
 * are thrown here, so nothing else of the story moves.
 */
import type { Body } from '../../../app/core/kinds/index.ts';
import type { SampleSite } from './site.ts';
import type { Story } from './story.ts';

/** What the firing carries of it. */
export function watched(day: string, offset: string): Pick<Body<'firing'>, 'noted' | 'aimedC' | 'checks'> {
  const at = (clock: string) => `${day}T${clock}${offset}`;
  return {
    aimedC: { from: 350, to: 450 },
    noted: [
      { at: at('08:50'), water: 'on' },
      { at: at('09:30'), temperatureC: 145 },
      { at: at('09:50'), temperatureC: 330 },
      { at: at('10:20'), temperatureC: 392, what: 'smell at the lid' },
      { at: at('10:25'), fire: 'off', what: 'stood back, lute renewed' },
      { at: at('11:00'), temperatureC: 240 },
      { at: at('11:05'), fire: 'on' },
      { at: at('11:35'), temperatureC: 371 },
      { at: at('12:15'), temperatureC: 428 },
      { at: at('12:45'), temperatureC: 560 },
      { at: at('13:05'), temperatureC: 690 },
      { at: at('16:50'), water: 'off' },
    ],
    checks: [
      { check: 'slow-heat', answer: 'yes' },
      { check: 'watched', answer: 'yes' },
      { check: 'not-moved', answer: 'no', note: 'lid pressed down while hot' },
      { check: 'water-kept', answer: 'yes' },
      { check: 'read-at-seal', answer: 'yes' },
      { check: 'bottled', answer: 'yes' },
    ],
  };
}

/** The air beside the retort on that day, every reading of it at the run. */
export function tellAirOfLeak(story: Story, { meter }: SampleSite, day: string, run: string): void {
  const at = (clock: string) => `${day}T${clock}${story.offset}`;
  const read = (from: string, to: string | undefined, shows: string, activity: string) =>
    story.tell('air-reading', day, to ?? from, {
      sample: 'area',
      place: 'Retort house, a metre from the lid',
      height: 'breathing',
      distanceM: 1,
      activity,
      meter,
      zero: { before: '0.000', after: '0.000' },
      temperatureC: 19,
      pressureKpa: 98.2,
      unit: 'mg/m3',
      mode: to === undefined ? 'spot' : 'mean',
      from: at(from),
      ...(to === undefined ? {} : { to: at(to) }),
      shows,
      run,
    });
  read('08:55', undefined, '<0.003', 'before lighting');
  read('09:10', '09:45', '0.004', 'heating up');
  read('10:22', undefined, '0.061', 'smell at the lid');
  read('10:40', '11:00', '0.017', 'fire off, doors open');
  read('11:20', '12:30', '0.006', 'mercury coming over');
  read('16:58', undefined, '0.011', 'at the seal when opened');
}
