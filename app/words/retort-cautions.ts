/**
 * Cautions of the run page, each in the place where it matters. They are general practice after safety.md 5.2 to 5.4, not a work instruction, and
 * call nothing safe; each block is headed by what it defers to. Numbers: 40 °C is a judgement (safety.md 5.4, W12), half to two thirds is common
 * practice (practice.md 11).
 */

import { marked } from './notation.ts';
import { temperatureText } from './temperatures.ts';

/** Heads every block of cautions. */
export const defersTo = 'Local rules and licensed people come first';

export const runCautions = {
  clearing:
    'This book records retorting in a closed retort by trained people. It does not teach it, and open burning or whole-ore work is no part of it.',
  charge: [
    'A retort filled too high lets amalgam rise into the pipe: half to two thirds is usual.',
    'Water, oil or a sealed object in the charge can burst a hot retort.',
    'Amalgam gives off mercury at room temperature: work under a hood or outdoors, with gloves made for it.',
  ],
  before: [
    'Never heat a retort whose pipe has not been proved clear from end to end.',
    'Keep the end of the pipe at or just above the receiver’s water. Deep under it, cooling draws water back into the hot retort, and it bursts in steam.',
    'Cooling water runs before the fire is lit.',
    'Nobody who is pregnant, nursing or under age, and no visitor, in the area.',
    'A dust mask does not hold back mercury vapour.',
  ],
  during: [
    'Mercury vapour has no smell and no colour: only a meter tells.',
    'Stop the heat on a leak, a blocked pipe, lost cooling water, an alarm, or anyone feeling ill; then leave and let it cool shut.',
    'Do not open, strike or move it while it is hot.',
    'When the heat is cut, see that the pipe cannot draw water back.',
  ],
  get opening() {
    return [
      `Let it cool shut, with the cooling water on, to the temperature of the air around it; take ${temperatureText(40)} at the metal as the most, by measurement and not by the clock.`,
      'Read the air at the seal before the lute is broken, and again as it is opened. Stand clear, under a hood or outdoors.',
    ];
  },
  after: [
    'The sponge still holds mercury, even when it looks clean. Melting it drives that off: it needs a furnace whose fume is captured.',
    'Condenser, pipe, wash water and cloths count as mercury waste until tested.',
    'Work clothes stay on site; hands and face are washed before anyone eats, drinks or goes home.',
  ],
  get balance() {
    return marked(
      'Scales do not tell about the air. 2.5 mg of mercury fills 100 m³ to 0.025 mg/m³, and no weighing here would show it: a run that closes says nothing about what was breathed.',
    );
  },
} as const;
