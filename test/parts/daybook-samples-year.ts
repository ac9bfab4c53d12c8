/** A body of every kind of the working year with every field of it answered somewhere. */
import type { Body, Kind } from '../../app/core/kinds/index.ts';

const scale = 'bench-scale';
const bottle = 'bottle';
const read = (gross: string) => ({ how: 'scale' as const, scale, gross });

const made: Body<'squeeze'>['made'] = [
  { key: '1', label: 'S 1', weight: read('178 g'), state: 'squeezed', source: 'outside-plate', seal: 'S 4' },
  { key: '2', label: 'S 2', weight: { how: 'scale', scale, gross: '90.50 g', tare: '12.00 g' } },
];
const strained = { weight: read('968.0 g'), vessel: bottle };
const estimate = { mass: '0 g', method: 'area', sharedU: 0.1, ownU: 0.25 };

type YearKind = Exclude<
  Kind,
  | 'standing'
  | 'person'
  | 'scale'
  | 'vessel'
  | 'retort'
  | 'receipt'
  | 'clean-up'
  | 'charge'
  | 'firing'
  | 'closing'
  | 'note'
  | 'assay'
  | 'settlement'
  | 'air-reading'
  | 'limit'
  | 'bar-kept'
  | 'out-turn'
  | 'correction'
  | 'strike'
>;

export const yearSamples: { readonly [K in YearKind]: readonly Body<K>[] } = {
  battery: [
    { of: 'battery-one', label: 'Battery one', stamps: 5, place: 'lower floor', note: 'camshaft new', out: '2026-03-01' },
  ],
  plate: [
    {
      of: 'plate-one',
      label: 'Plate one',
      battery: 'battery-one',
      order: 2,
      metal: 'silvered-copper',
      lengthM: 1.25,
      widthM: 0.6,
      set: '2026-01-04',
      note: 'worn',
      out: '2026-03-01',
    },
  ],
  meter: [
    {
      of: 'meter-one',
      label: 'Meter one',
      principle: 'gold film',
      number: 'M 7',
      owner: 'the museum',
      calibrated: { on: '2026-01-04', due: '2027-01-04', by: 'a laboratory' },
      note: 'lent',
      out: '2026-03-01',
    },
  ],
  parcel: [
    { of: 'parcel-one', label: 'Parcel one', owner: 'a neighbour', ore: { mass: '12.5 long-ton', u: 0.03 }, note: 'quartz' },
  ],
  authority: [
    {
      of: 'authority-one',
      name: 'Consent',
      number: '7/26',
      body: 'the district office',
      covers: 'one plate',
      gold: ['possess', 'melt', 'sell'],
      from: '2026-01-01',
      expiry: '2026-12-31',
      out: '2026-03-01',
    },
    { name: 'Consent', number: '8/26', body: 'the district office', covers: 'storage', expiry: 'none stated' },
  ],
  crushing: [
    {
      battery: 'battery-one',
      feed: 'concentrate',
      mercuryFed: 'plates',
      ore: { mass: '3.2 t', by: 'tally', u: 0.05 },
      parcel: 'parcel-one',
      stamps: 5,
      dropsAMinute: 72.5,
      hours: 6.5,
      note: 'screen torn',
    },
  ],
  issue: [
    {
      vessel: bottle,
      to: 'plates',
      weight: read('62.40 g'),
      battery: 'battery-one',
      doses: { count: 4, each: '2 dwt' },
      plate: 'plate-one',
      condition: 'dry',
      note: 'after rain',
    },
    { vessel: bottle, to: 'vessel', into: 'flask-two', weight: { how: 'volume', volume: '42.8 ml', temperatureC: 19.5 } },
  ],
  return: [{ vessel: bottle, from: 'trap', weight: read('12.2 g'), how: 'drained', battery: 'battery-one' }],
  cleaning: [
    {
      lots: ['march-clean/4', 'march-clean/7'],
      dirty: { weight: read('300 g'), from: 'pan' },
      added: { weight: read('900.0 g'), vessel: bottle },
      made,
      strained,
      skimmings: { weight: read('42 g'), label: 'K 1' },
      iron: { weight: read('3 g'), label: 'I 1' },
      checks: [{ check: 'closed-retort', answer: 'no', by: 'keeper-1', note: 'in the stove' }],
      note: 'blotted dry',
    },
  ],
  squeeze: [{ lots: ['march-clean/4'], made, strained, through: 'canvas', note: 'twice' }],
  'plate-work': [
    {
      plate: 'plate-one',
      what: 'stripped',
      held: { ...estimate, mass: '120 g' },
      holds: estimate,
      applied: { weight: read('10 g'), vessel: bottle },
      made,
      silver: '2 ozt',
      checks: [{ check: 'plate-cold', answer: 'yes', by: 'keeper-1', note: 'as seen' }],
      note: 'scraped hot',
    },
  ],
  unmake: [{ charge: 'charge-1', why: 'the lid was cracked' }],
  melt: [
    {
      sponges: [{ charge: 'charge-1', weight: read('364.0 g') }, { charge: 'charge-2' }],
      added: [{ key: '1', label: 'old prills', weight: read('2.4 g'), bar: 'melt-old/1', prills: 'melt-old' }],
      slags: [{ melt: 'melt-old', weight: read('18 g') }],
      flux: 'borax and soda',
      bars: [{ key: '2', label: 'Bar 7', weight: read('361.9 g') }],
      samples: [{ key: '3', label: 'dip', weight: read('1.2 g') }],
      prills: read('0.9 g'),
      slag: read('41 g'),
      checks: [{ check: 'place', answer: 'no', by: 'keeper-1', note: 'in the yard' }],
      note: 'one pot',
    },
  ],
  transfer: [
    {
      way: 'out',
      what: 'waste',
      party: 'a licensed carrier',
      vessel: 'drum-one',
      weight: read('12.0 kg'),
      share: { value: 0.03, u: 0.01, basis: 'a laboratory' },
      purpose: 'disposal',
      counts: 'disposal',
      document: 'N 4',
      carrier: 'a haulier',
      seal: 'S 9',
      theirs: { weight: { how: 'stated', mass: '12.1 kg', u: '0.1 kg' }, on: '2026-03-09', document: 'W 4' },
      checks: [{ check: 'who-may-carry', answer: 'no', by: 'keeper-1', note: 'permit not shown' }],
      note: 'one drum',
    },
    { way: 'in', what: 'amalgam', party: 'a neighbour', lot: 'march-clean/4' },
    { way: 'out', what: 'sponge', party: 'a refiner', charge: 'charge-1', counts: 'loss' },
    { way: 'out', what: 'bar', party: 'a buyer', bar: 'melt-one/2' },
    { way: 'out', what: 'plate', party: 'a museum', plate: 'plate-one' },
  ],
  waste: [
    {
      drum: 'drum-one',
      what: 'sweepings',
      weight: read('2.3 kg'),
      share: { value: 0.0125, u: 0.005, basis: 'an estimate' },
      from: 'vessel',
      vessel: bottle,
      code: '06 04 04',
      started: '2026-02-01',
      due: '2026-12-01',
      note: 'wet',
    },
  ],
  spill: [
    {
      where: 'the bench',
      lost: read('55 g'),
      vessel: bottle,
      recovered: { weight: read('40.0 g'), vessel: 'flask-two' },
      insideIssue: 'no',
      cleaned: 'by the site’s own sheet',
      told: 'the safety officer',
      note: 'a cracked bottle',
    },
  ],
  found: [
    {
      where: 'under the floor',
      what: 'residue',
      weight: read('1200 g'),
      vessel: 'drum-one',
      share: { value: 0.2, u: 0.05, basis: 'washed sample' },
      checks: [{ check: 'damped', answer: 'na', by: 'keeper-1', note: 'as seen' }],
      note: 'with rust',
    },
  ],
  incident: [
    {
      what: 'Smoke at the lute.\nThe fire was drawn.',
      where: 'retort house',
      people: ['keeper-1'],
      done: 'The door was opened.',
      told: 'the owner',
      assessment: 'na',
    },
  ],
  'open-day': [
    {
      visitors: 42,
      children: 9,
      areas: 'yard and mill',
      covered: 'plates',
      guides: ['keeper-1', 'helper-1'],
      checks: [{ check: 'told-first', answer: 'yes', by: 'keeper-1', note: 'as seen' }],
      note: 'dry day',
    },
  ],
  'scale-check': [{ scale, standard: '100 g', read: '100.03 g', passed: 'yes', limit: '0.05 g', note: 'before work' }],
  'check-due': [
    { what: 'respirator-fit', person: 'keeper-1', done: 'no', next: '2026-04-01', note: 'mask too old' },
    { what: 'extinguisher', done: 'yes' },
  ],
  'check-list': [
    {
      work: 'run-before',
      added: [{ check: 'gate-shut', asks: 'Gate to the lane shut and the board hung out' }],
      worded: [{ check: 'fire', asks: 'Both extinguishers at the door' }],
      leftOut: [{ check: 'no-food', why: 'asked at the gate' }],
      reviewed: 'a hygienist of the region',
      note: 'after the spring meeting',
    },
    { work: 'visitors' },
  ],
  'stop-rules': [
    {
      rules: [
        { of: 'reading', when: 'above 0.02 mg/m³ where people breathe', act: 'fire out, everybody out' },
        { of: 'wind', when: 'from the road' },
      ],
      setBy: 'keeper-1',
      note: 'until the hood is tried',
    },
    { rules: [] },
  ],
  'site-figures': [
    {
      falseAlarm: { value: 0.01, why: 'decided by the owner' },
      residualShare: { middle: 0.0115, u: 0.002, why: 'five assays of sponge' },
      lotDays: { value: 60, why: 'decided by the owner' },
      note: 'before the year is counted',
    },
    { lotDays: { value: 30, why: 'a small safe' } },
  ],
  'site-notation': [
    { decimal: 'comma', masses: 'troy', temperature: 'fahrenheit', days: 'd.m.y', note: 'as the older books have it' },
    { decimal: 'point', masses: 'grams', temperature: 'celsius', days: 'words' },
  ],
  'site-numbers': [
    {
      numbers: [
        { for: 'poison-centre', number: '000 100 200', name: 'day and night' },
        { for: 'remover', number: '000 300 400' },
      ],
      note: 'tried by telephone',
    },
    { numbers: [] },
  ],
  retention: [
    {
      periods: [{ records: 'air', which: 'retort house', years: 40, source: 'as the owner read it' }],
      note: 'asked again in 2027',
    },
    { periods: [] },
  ],
  'lead-times': [{ leads: [{ of: 'scale', days: 60 }], countEvery: 90, note: 'after the audit' }, { leads: [] }],
  'stock-take': [
    {
      lines: [
        { how: 'sealed', place: 'vessel:flask-one', seal: 'S 1' },
        { how: 'weighed', place: 'vessel:bottle', weight: read('1842.0 g') },
        { how: 'estimated', place: 'circuit:plates', estimate },
        { how: 'unanswered', place: 'circuit:trap', why: 'under water' },
      ],
      note: 'end of quarter',
    },
    {
      scope: 'whole',
      lines: [
        { how: 'weighed', place: 'vessel:flask-one', weight: read('1842.0 g'), sealBroken: 'yes', newSeal: 'S 2' },
        { how: 'seen', place: 'circuit:plates' },
        { how: 'not-found', place: 'circuit:trap', note: 'yard searched' },
      ],
    },
  ],
};
