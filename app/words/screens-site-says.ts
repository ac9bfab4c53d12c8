/** Texts of what a site sets for itself: what it asks at each work, when it stops a fire, whom it calls, how long it keeps which records. */
import { marked } from './notation.ts';

const count = (n: number, one: string, many: string): string => `${n} ${n === 1 ? one : many}`;

export const saysWords = {
  title: 'What this site has set',
  since: (day: string, by: string) => `Set on ${day} by ${by}`,
  stands: 'As it stands',
  set: 'Set it',
  change: 'Change',
  earlier: 'As it was set earlier',
  earlierNote: 'Entries keep the list of their own day',
  back: 'Back to Site',
  asks: {
    title: 'What is asked at each work',
    note: 'Checks of runs and other works',
    name: 'Checks at each work',
    says: 'The questions asked at runs, plates, melts, clean-ups, transport and open days: add, leave out, put in your own words.',
    intro:
      'The questions come with the program as general practice. Have them looked over by licensed people, and set what fits this site. They are asked and recorded; an answer lets nobody through.',
    work: 'Work',
    asked: 'Asked',
    changed: 'Set by the site',
    by: 'Looked over by',
    nobody: 'nobody by this book',
    shipped: 'as it comes with the program',
    changes: (added: number, worded: number, leftOut: number) =>
      [
        ...(added > 0 ? [`${added} added`] : []),
        ...(worded > 0 ? [`${worded} in other words`] : []),
        ...(leftOut > 0 ? [`${leftOut} left out`] : []),
      ].join(', '),
    oneNote: 'The list of this site',
    oneIntro:
      'The change is an entry of the daybook and holds from its day on. Older entries keep their answers, in the words they were asked in.',
    question: (n: number) => `Question ${n}`,
    states: { shipped: 'as it comes', worded: 'in the site’s words', added: 'added here', out: 'not asked here' },
    was: (asks: string) => `It comes as: ${asks}`,
    reword: 'Put it in other words',
    asItComes: 'As it comes',
    leaveOut: 'Leave it out',
    askAgain: 'Ask it again',
    takeOut: 'Take it out',
    why: 'Why it is not asked here',
    asksField: 'Question, put so that “yes” is the good answer',
    add: 'Add a question',
    reviewed: 'Looked over by',
    reviewedHint: 'Whoever went through the whole list: a name, or a role and where they come from.',
    noteField: 'Remark',
    when: 'Holds from',
    readBack: (work: string, n: number, changes: string) =>
      `${work}: ${count(n, 'question', 'questions')}${changes === '' ? ', as they come with the program' : `, ${changes}`}`,
    all: 'All works',
  },
  'stop-rules': {
    says: 'Which reading, temperature, wind or people end a firing here. None comes with the program.',
    empty:
      'No stop rule is set. A leak, a blocked pipe, lost cooling water, an alarm or anybody feeling ill end a firing all the same.',
  },
  'site-figures': {
    says: 'Mercury left in sponge, the false alarm of the sequence test, and after how many days a lot in store is told.',
    get empty() {
      return marked(
        'No figure is set, and the program’s own count: 1.25 % of the sponge ± 0.14 %, one false alarm in twenty, lots after 90 days.',
      );
    },
  },
  'site-numbers': {
    says: 'Emergency, poison centre, licensed remover, authority: for the wall, the spill page and the run.',
    empty: 'No number is entered. The program brings none: they differ from place to place.',
  },
  'lead-times': {
    says: 'How long before its day a thing is told of on Today, and how often the stock is counted.',
    empty: 'No lead time is set. Today tells of a thing from 30 days before its day, and of no stock-take.',
  },
  'site-notation': {
    says: 'Decimal comma or point, grams or troy ounces, °C or °F, and how a day is written.',
    empty: 'Nothing is set: decimals have a point, masses are in grams, temperatures in °C, and a day is written 14 March 2026.',
  },
  retention: {
    says: 'How many years which records are kept, and by which rule. Nothing is deleted when a period ends.',
    empty: 'No period is set. The program brings none: ask the authority and the licensed people of your place.',
    kept: 'Kept until',
    keptNote: 'Nothing is deleted',
    nothing:
      'Nothing in this book is deleted, before that day or after it. What may be done with a copy or a printed paper then is for the site and its authority to say.',
    records: 'Records',
    rule: 'By which rule',
    years: 'Years',
    first: 'Oldest here',
    firstUntil: 'It is kept until',
    last: 'Newest here',
    lastUntil: 'That is kept until',
    noneHere: 'none here',
    own: 'not told from the book',
    hidden: 'shown to the safety officer',
  },
} as const;
