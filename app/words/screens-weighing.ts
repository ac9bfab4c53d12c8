/** Texts of the weighing field. */
import { marked } from './notation.ts';
import { temperatureText } from './temperatures.ts';

export const weighing = {
  how: 'How do you know it?',
  otherWay: 'Not weighed here?',
  howOf: { scale: 'Weighed', volume: 'By volume', stated: 'Stated by somebody else' },
  scale: 'Scale',
  noScale: 'scale not recorded',
  noScales: 'No scale is in the register yet. A weight without its scale is kept, but how sure it is cannot be said.',
  addScale: 'Enter a scale',
  gross: 'Reading',
  grossWithTare: 'Gross',
  tareHow: 'Tare',
  tareOf: { none: 'Scale was zeroed', reading: 'Weighed empty', vessel: 'A vessel of the register' },
  tare: 'Tare',
  vessel: 'Vessel',
  vesselTare: (label: string, tare: string) => `${label}, empty ${marked(tare)}`,
  vesselNoTare: (label: string) => `${label}, never weighed empty`,
  volume: 'Volume',
  volumeUnit: 'Unit of the volume',
  volumeUnits: {
    ml: 'ml',
    l: 'l',
    'fl-oz-imp': 'fl-oz-imp (imperial fluid ounce)',
    'fl-oz-us': 'fl-oz-us (United States fluid ounce)',
  },
  volumeU: 'Standard uncertainty of the volume',
  temperature: 'Temperature of the mercury',
  temperatureU: 'Standard uncertainty of the temperature',
  stated: 'Mass as stated',
  statedU: 'Its standard uncertainty',
  statedBy: 'Stated by',
  net: 'Net',
  noNet: 'appears when the reading is in',
  uNotKnown: 'uncertainty not known',
  expanded: 'The figure after ± is the expanded uncertainty, twice the standard one (k = 2).',
  wGross: (text: string) => `Gross ${marked(text)}`,
  wReading: (text: string) => `Reading ${marked(text)}, scale zeroed`,
  wTare: (text: string) => `Tare ${marked(text)}`,
  wScale: (label: string, d: string) => `${label}, reads to ${marked(d)}`,
  wCertificate: (number: string | undefined, U: string, at: string) =>
    `Certificate${number ? ` ${number}` : ''}: U ${marked(U)} at ${marked(at)}`,
  get wScatter() {
    return marked(
      'Scatter of the readings (at least 0.41 of the division where less or none was found), division and linearity (standard)',
    );
  },
  wSpan: 'Span error from the certificate, shared by all readings until the next calibration (standard)',
  wUnverified: 'No certificate: the error allowed to a scale of its class in service (standard)',
  wUnknown: 'No scale, or neither certificate nor class on the book: the uncertainty is not known',
  wNet: 'Net, and expanded uncertainty (k = 2)',
  wVolume: (text: string, t: number) => `${marked(text)} at ${temperatureText(t)}`,
  wStated: (text: string, by: string) => `${marked(text)}, stated by ${by}`,
  wSomebody: 'somebody not named',
  wMethodWeighing: 'Uncertainty of a weighing: JCGM 100:2008, F.2.2.1 and 4.3',
  wMethodVolume: 'Density of mercury: Bigg 1964, Beattie and others 1941',
  slip: {
    ounces: (factor: string, what: string) =>
      `This is ${factor} times ${what}, or its inverse: troy and avoirdupois ounces are ${marked('1.097')} apart. Which ounce does the scale read?`,
    pounds: (factor: string, what: string) =>
      `This is ${factor} times ${what}, or its inverse: avoirdupois and troy pounds are ${marked('1.215')} apart. Which pound was read?`,
    tons: (factor: string, what: string) =>
      `This is ${factor} times ${what}, or its inverse: long and short tons are ${marked('1.12')} apart. Which ton was meant?`,
    fluid: (factor: string, what: string) =>
      `This is ${factor} times ${what}, or its inverse: a fluid ounce of mercury weighs about ${marked('12.4')} troy ounces. Was a volume taken for a weight?`,
  },
} as const;
