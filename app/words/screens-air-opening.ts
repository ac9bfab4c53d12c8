/** Texts of the planning page on a retort opened too hot. */
import { marked } from './notation.ts';
import { temperatureText } from './temperatures.ts';

export const airOpening = {
  intro:
    'A closed retort that is still warm holds saturated vapour, and lets it out when the lid comes off. The room is one figure; the person at the lid meets another.',
  headspace: 'Free space in the retort',
  temperature: 'Measured temperature of the retort',
  temperatureHint: 'By a thermometer, not by the clock.',
  pressure: 'Air pressure',
  get pressureHint() {
    return marked('Taken as 101.325 kPa where left out.');
  },
  volume: 'Room',
  roomTemperature: 'Temperature of the room',
  changes: 'Air changes an hour',
  changesHint: 'Air supplied in an hour over the room’s volume.',
  mixing: 'Mixing factor',
  mixingHint: '1 is perfect mixing, 10 very poor. Rooms are seldom better than 3.',
  source: 'Still given off afterwards',
  sourceHint: 'The open retort while it is warm, mercury in sight, floors. 0 only if nothing is left.',
  background: 'In the air before',
  backgroundHint: 'From a reading, and taken as what the supplied air brings.',
  target: 'Down to',
  targetHint: 'A figure of your own. None stands here by itself.',
  person: 'The person at the lid meets',
  personSays: (times: string) =>
    `The gas as it comes out, not diluted: ${times} times the figure immediately dangerous to life or health (10 mg/m³, NIOSH).`,
  personBelow: (times: string) =>
    `The gas as it comes out, not diluted: ${times} times 10 mg/m³, the figure immediately dangerous to life or health (NIOSH).`,
  personHow: 'saturated vapour at the temperature of the retort',
  boiling: 'At this temperature the mercury boils: it goes on coming, and the figures below are only the first breath of it.',
  released: 'Mercury let out',
  releasedHow: 'free space · saturated vapour',
  room: 'The room, once mixed',
  roomHow: 'in the air before + mercury let out / volume of the room',
  roomSaturated: 'the room’s air can hold no more; the rest settles as drops',
  roomIsNot: 'The figure of the room is not what the person at the lid breathes.',
  reach: (target: string) => `Down to ${target}`,
  there: 'it is not above the target',
  perfect: (text: string) => `${text} if the air mixed perfectly`,
  never: (settles: string) => `it settles at ${settles}, not below the target`,
  neverNoAir: 'without any air supplied nothing carries it out',
  get cold() {
    return `Let it cool to the temperature around it before it is opened, by measurement. At ${temperatureText(40)} the free space of a small retort holds little, at ${temperatureText(100)} it does not.`;
  },
  assumes: [
    'The free space is saturated and all of it comes out at once. A boiling charge, or mercury in the pipe, gives far more.',
    'The room mixes as the factor says. A cloud near the floor or the face is none of that.',
    'The end of the time is a time to measure again, not a time to go in.',
  ],
} as const;
