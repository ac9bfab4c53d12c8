/** Names of answers in air readings and limits. Each table holds every answer of its list; the types see to it. */
import type { AirQuestion, AirSample, AirUnit, airHeights, airModes, onOff, openShut } from '../core/kinds/air-reading.ts';
import type { LimitBasis, LimitPeople, limitForms, limitStatuses } from '../core/kinds/limit.ts';
import { degreeUnit } from './temperatures.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const airSampleNames: NameOf<AirSample> = {
  personal: 'A person’s breathing zone',
  area: 'A place where people work',
  'visitor-area': 'A place where visitors go',
};
export const airHeightNames: NameOf<(typeof airHeights)[number]> = {
  floor: 'At the floor',
  waist: 'At waist height',
  breathing: 'At mouth and nose',
};
export const airUnitNames: NameOf<AirUnit> = { 'mg/m3': 'mg/m³ (milligrams)', 'ug/m3': 'µg/m³ (micrograms)' };
/** The unit as it stands behind a figure. */
export const airUnitSigns: NameOf<AirUnit> = { 'mg/m3': 'mg/m³', 'ug/m3': 'µg/m³' };
export const airModeNames: NameOf<(typeof airModes)[number]> = { mean: 'Mean over the time', spot: 'Momentary' };
export const onOffNames: NameOf<(typeof onOff)[number]> = { on: 'On', off: 'Off', none: 'There is none' };
export const openShutNames: NameOf<(typeof openShut)[number]> = { open: 'Open', shut: 'Shut', none: 'In the open air' };
export const airQuestionNames: NameOf<AirQuestion> = {
  get temperature() {
    return `The temperature is so, in ${degreeUnit()}`;
  },
  figure: 'The figure was read so',
  unit: 'The unit was read so',
};

export const limitFormNames: NameOf<(typeof limitForms)[number]> = {
  'elemental-vapour': 'Mercury vapour',
  other: 'Another form of mercury',
};
export const limitBasisNames: NameOf<LimitBasis> = {
  '8h': 'Mean over 8 hours',
  '15min': 'Mean over 15 minutes',
  ceiling: 'Ceiling, at no moment',
  continuous: 'Breathed day and night',
};
export const limitPeopleNames: NameOf<LimitPeople> = { work: 'People at work', public: 'The public, visitors' };
export const limitStatusNames: NameOf<(typeof limitStatuses)[number]> = {
  legal: 'Law',
  indicative: 'Indicative: states make law of it',
  recommendation: 'Recommendation',
  guidance: 'Guidance',
  'not-in-force': 'Not in force',
};
