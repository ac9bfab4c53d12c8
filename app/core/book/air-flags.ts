/** Flags of air readings: an emergency figure first of all; a meter out of date or not named; what was asked about and stands. Nothing is deleted. */
import { toNumber } from '../decimal.ts';
import { dayOf } from '../time.ts';
import { airFigure, atIdlh, questionsOf, saturatedAt } from './air-as-read.ts';
import { uncountedReadings } from './air-days.ts';
import type { Current } from './current.ts';
import { type Flag, flag } from './flags.ts';
import { type Registers, stateAt } from './registers.ts';

interface Known {
  readonly current: Current;
  readonly registers: Pick<Registers, 'meter'>;
}

/** Readings of hours that count already, as two desks may keep them side by side. */
const countedOnce = (current: Current): Flag[] =>
  uncountedReadings(current).map(({ id, body }) => flag('air-counted-once', id, { from: body.from, to: body.to ?? body.from }));

export const airFlags = ({ current, registers }: Known): readonly Flag[] => [
  ...countedOnce(current),
  ...current.of('air-reading').flatMap(({ id, body }) => {
    const flags: Flag[] = [];
    const shown = { shows: body.shows, unit: body.unit };
    if (atIdlh(body)) flags.push(flag('air-idlh', id, shown));
    const meter = body.meter === undefined ? undefined : registers.meter.get(body.meter);
    if (body.meter === undefined) flags.push(flag('air-no-meter', id));
    else if (meter) {
      const { label, calibrated } = stateAt(meter, body.from).body;
      if (calibrated === undefined) flags.push(flag('meter-no-calibration', id, { meter: label }));
      else if (calibrated.due !== undefined && calibrated.due < dayOf(body.from))
        flags.push(flag('meter-out-of-date', id, { meter: label, due: calibrated.due }));
    }
    const asked = questionsOf(body);
    if (asked.includes('temperature')) flags.push(flag('air-temperature-odd', id, { c: body.temperatureC ?? 0 }));
    if (asked.includes('figure'))
      flags.push(
        flag('air-above-saturation', id, {
          ...shown,
          mgM3: toNumber(airFigure(body).mgM3),
          holds: saturatedAt(body.temperatureC) ?? 0,
          c: body.temperatureC ?? 0,
        }),
      );
    return flags;
  }),
];
