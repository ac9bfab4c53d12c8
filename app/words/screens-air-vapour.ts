/** Texts of the planning pages on vapour and on a hood. */
import { marked } from './notation.ts';
import { degreesText, degreeUnit, temperatureText } from './temperatures.ts';

export const airVapour = {
  intro:
    'Air over mercury that nobody disturbs takes up vapour until it can hold no more. Saturated air is the most there can be at a temperature; a reading above it points to a wrong unit, drops on the probe, or a warmer source.',
  temperature: 'Temperature of mercury and air',
  get temperatureHint() {
    return degreeUnit() === '°F'
      ? 'Degrees Fahrenheit. 20 on a thermometer in a warm shed is Celsius: 20 °C is 68 °F.'
      : 'Degrees Celsius. 68 on a thermometer in a cool shed is Fahrenheit: 68 °F is 20 °C.';
  },
  pressure: 'Air pressure',
  get pressureHint() {
    return marked('Only the share by volume hangs on it; taken as 101.325 kPa where left out.');
  },
  vapourPressure: 'Vapour pressure',
  get vapourPressureHow() {
    return `Correlation of Huber, Laesecke and Friend, 2006, equation 4; within 1 % from ${degreesText(0)} to ${temperatureText(60)}`;
  },
  saturated: 'Saturated air holds',
  get saturatedHow() {
    return marked('p · M / (R · T), M = 200.592 g/mol');
  },
  share: 'As a share by volume',
  shareHow: 'vapour pressure over air pressure',
  shareNone: 'No share by volume without an air pressure above zero.',
  ofIdlh: 'Against the figure immediately dangerous to life or health',
  ofIdlhHow: '10 mg/m³, NIOSH, revision of 1994: a figure to leave at, never one to work up to',
  times: (text: string) => `${text} times`,
  findings: {
    boiling: 'At this temperature mercury boils: the vapour is not diluted by air at all.',
    'hot-for-room-air': 'This is hotter than any room. Such vapour is met at a retort, not in a room.',
  },
  get assumes() {
    return [
      'Pure liquid mercury, and air that has stood with it long enough. Mercury over amalgam gives off less; this is the upper end.',
      'Older tables stand 6 to 7 % lower than this correlation at room temperature; two good instruments can differ by as much.',
      `It says what air can hold at most, not what any room holds. At ${temperatureText(0)} it is still many times any limit in use: a cold shed is no protection.`,
    ];
  },
} as const;

export const airHood = {
  intro:
    'A hood catches only what is near it. The air it has to draw grows with the square of the distance. A figure to begin the talk with whoever designs the hood, not a design.',
  capture: 'Air speed wanted at the source',
  get captureHint() {
    return marked(
      'Published for vapour rising without speed into quiet air: 0.25 to 0.5 m/s (ACGIH 2009); more where the air moves.',
    );
  },
  distance: 'From the face of the hood to the source',
  area: 'Open face of the hood',
  flanged: 'Has it a flange all round?',
  flangedYes: 'With a flange',
  flangedNo: 'Without',
  flow: 'Air to draw',
  flowHow: (flanged: boolean) => (flanged ? marked('0.75 · v · (10 · x² + A)') : 'v · (10 · x² + A)'),
  perHour: 'The same in an hour',
  cfm: 'The same in cubic feet a minute',
  twice: 'At twice the distance',
  twiceHow: 'the same formula with 2 · x',
  assumes: [
    'The formula is from memory of the common handbooks and holds to about one and a half diameters of the duct.',
    'Still air. Fans, open doors and people walking past carry the vapour off before the hood has it: smoke shows whether it draws.',
    'It says nothing about what is already in the room, nor whether the hood works. One was found at a gold room never put into service, with fans blowing across it.',
  ],
} as const;
