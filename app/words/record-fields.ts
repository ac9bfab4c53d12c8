/** What the fields of an entry are called where an old and a new reading stand side by side. A field without a word is shown by its name. */

const words: Readonly<Record<string, string>> = {
  accuracy: 'accuracy class',
  answer: 'answer',
  at: 'at',
  by: 'by',
  certificate: 'certificate',
  charge: 'charge',
  check: 'check',
  checks: 'check',
  colour: 'sponge looked',
  d: 'step',
  dry: 'dry',
  due: 'due',
  fill: 'filled',
  finishFrom: 'finishing heat from',
  finishTo: 'finishing heat to',
  firstMercury: 'first mercury',
  fuel: 'fuel',
  gross: 'gross',
  heats: 'heat',
  holds: 'holds',
  how: 'how',
  key: 'key',
  label: 'label',
  lastMercury: 'last mercury',
  lining: 'lining',
  lit: 'lit',
  locked: 'locked up under',
  lot: 'lot',
  lots: 'lot',
  lute: 'lute',
  mass: 'mass',
  maximum: 'maximum',
  measuredC: 'measured, °C',
  mercury: 'mercury',
  note: 'note',
  on: 'on',
  opened: 'opened',
  opening: 'at opening',
  ore: 'ore',
  others: 'besides lots',
  pipeClear: 'pipe clear',
  present: 'present',
  rest: 'rest',
  retort: 'retort',
  rows: 'row',
  s: 'repeatability',
  scale: 'scale',
  seal: 'seal',
  source: 'source',
  sponge: 'sponge',
  state: 'state',
  stoodHours: 'stood, h',
  strained: 'strained mercury',
  take: 'taken',
  tare: 'tare',
  temperatureC: 'temperature, °C',
  type: 'type',
  vessel: 'vessel',
  volume: 'volume',
  water: 'water',
  waterOn: 'water on',
  weight: 'weight',
  what: 'what',
  where: 'where',
};

/** "row 1, weight, gross" from `rows[0].weight.gross`. */
export const fieldText = (path: string): string =>
  path
    .split('.')
    .map((part) => {
      const [, name = part, index] = /^([^[]*)(?:\[(\d+)\])?$/.exec(part) ?? [];
      const word = Object.hasOwn(words, name) ? (words[name] ?? name) : name;
      return index === undefined ? word : `${word} ${Number(index) + 1}`;
    })
    .join(', ');
