/** Names of answers in the lists a site keeps for itself. Each table holds every answer of its list; the types see to it. */
import type { stopThings } from '../core/kinds/check-list.ts';
import type { DueThing, KeptRecord, NumberUse } from '../core/kinds/site-says.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const stopThingNames: NameOf<(typeof stopThings)[number]> = {
  reading: 'Reading of the air',
  temperature: 'Temperature',
  cooling: 'Cooling water',
  wind: 'Wind',
  people: 'People',
  other: 'Something else',
};

export const numberUseNames: NameOf<NumberUse> = {
  emergency: 'Emergency',
  'poison-centre': 'Poison centre',
  remover: 'Licensed remover',
  authority: 'Authority',
  'safety-officer': 'Safety officer',
  other: 'Another',
};

export const keptRecordNames: NameOf<KeptRecord> = {
  air: 'Readings of the air',
  'personal-air': 'Readings at a person',
  'health-dates': 'Dates of health surveillance',
  waste: 'Waste and transport papers',
  incidents: 'Incidents and spills',
  runs: 'Runs and their checks',
  extraction: 'Tests of the extraction',
  other: 'Something else',
};

export const dueThingNames: NameOf<DueThing> = {
  scale: 'Calibration of scales',
  meter: 'Calibration of vapour meters',
  inspection: 'Inspection of retorts',
  'site-check': 'Checks of the place',
  'person-check': 'Checks of a person',
  drum: 'Waste drums',
  authority: 'Authorities and licences',
  'stock-take': 'Stock-take',
};
