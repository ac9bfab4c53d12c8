/** Sentences of air readings and limits: the figure as shown, and never a verdict. */
import { limitText, shownText } from './air-figures.ts';
import { dayText } from './dates.ts';
import { at, type Lines, parts, restated, small } from './daybook-line-parts.ts';
import { airSampleNames } from './daybook-names-air.ts';

export const airLines: Lines<'air-reading' | 'limit'> = {
  // a person’s own reading: the sentence tells neither who nor how much
  'air-reading': (body, { name, whole }) => {
    if (body.sample === 'personal' && !whole)
      return parts('Mercury in air at one person: shown to the safety officer', body.activity);
    const { sample, person, place, from, to, activity, meter } = body;
    const where = person === undefined ? `${small(airSampleNames[sample])}, ${place ?? ''}` : name('person', person) + at(place);
    return parts(
      `${shownText(body)} mercury in air, ${where}, ${from.slice(11, 16)}${to === undefined ? ', momentary' : ` to ${to.slice(11, 16)}`}`,
      activity,
      meter === undefined ? 'meter not recorded' : name('meter', meter),
    );
  },
  limit: (body) =>
    parts(
      `${body.label}${restated(body.of)}: ${limitText(body)}`,
      body.source === undefined ? undefined : `read in ${body.source}`,
      body.checked ? `checked by ${body.checked.by} on ${dayText(body.checked.on)}` : 'not checked',
      body.picked === 'yes' ? 'picked: days are compared with it' : 'not picked',
    ),
};
