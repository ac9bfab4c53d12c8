/** Texts for readings pasted from a scale's own output. */
import { marked } from './notation.ts';

export const scaleLog = {
  title: 'From the scale’s log',
  where: 'Lines from a scale’s log can be pasted into the reading.',
  paste: 'Lines as the scale sent them',
  hint: 'One reading a line, such as “ST,GS,+  12.345 g”. Nothing is taken until you choose a line.',
  list: 'Lines read',
  take: (reading: string) => `Take ${marked(reading)}`,
  taken: 'taken',
  unflagged: 'the scale did not tell whether it stood still',
  stays:
    'The entry keeps the reading; the pasted lines stay in this draft only and go with it. Where the line itself matters, keep a picture or a document with the entry.',
  refused: {
    moving: 'Not taken: the scale was still moving. Wait until it rests and send it again.',
    overload: 'Not taken: the scale was overloaded. Use a larger one.',
    tare: 'Not taken: this is the tare the scale held, not a reading.',
    below: 'Not taken: the reading is below nothing. Zero the scale and weigh again.',
    comma:
      'Not taken: it has a comma, and this site writes points: it could be thousands. Type the reading as the display shows it.',
    unit: 'Not taken: its unit is none that is known here, or could mean two. Set the scale to grams, or type the reading with its unit.',
    'no-unit': 'Not taken: it carries no unit. Type the reading with its unit.',
    'not-read': 'Not taken: this is no reading of a form known here. Type it.',
  },
} as const;
