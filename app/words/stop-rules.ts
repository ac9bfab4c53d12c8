/** Words of the site's stop rules, where the fire is watched and on the wall. The site sets them; the program knows no level of its own. */
export const stopWords = {
  title: 'This site stops the fire when',
  none: 'No stop rule is set here. Which reading, temperature or wind ends a firing is for the site and its licensed people to set.',
  set: 'Set the stop rules',
  setBy: (name: string) => `Set by ${name}`,
  since: (day: string) => `in force since ${day}`,
  always:
    'Besides: a leak, a blocked pipe, lost cooling water, an alarm, anybody feeling ill. Heat off, people out, retort left shut.',
} as const;
