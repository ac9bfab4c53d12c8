/** Texts of the blank forms: what to write by hand where no screen is at hand, so that it can be typed in afterwards. */
import { degreeUnit } from './temperatures.ts';

export const formsPaper = {
  name: 'Blank forms',
  subject: 'To write by hand and type in afterwards',
  one: (kind: string) => `${kind}, to write by hand`,
  number: (serial: string) => `Form ${serial}`,
  how: 'How to use them',
  howTo: [
    'One sheet for one entry, in ink. Strike a mistake through so that it can still be read; write the right figure beside it.',
    'Write figures as the scale shows them, with every digit, and name the unit each time: which ounce, which ton.',
    'What was not looked at stays empty. Empty means “not recorded”; it is never read as “no”.',
    'Type it in the same day, give the form’s number and sheet with the entry, and keep the paper.',
  ],
  names: 'Names in the daybook',
  namesNote: 'Use these, so that whoever types it in knows which scale or vessel is meant.',
  sheet: (kind: string, serial: string) => `${kind} · form ${serial} · sheet ____`,
  when: 'Day and time',
  exact: 'The time is',
  exactWords: ['exact', 'about', 'day only'],
  by: 'Written by',
  witness: 'Seen by',
  typed: 'Typed in on, by',
  more: 'Further, where it applies',
  moreNote: 'Each of these may stay empty.',
  needed: 'needed',
  only: (label: string, names: string) => `only where ${label.toLowerCase()}: ${names}`,
  box: '[  ]',
  checks: { question: 'Question', yes: 'Answer: yes', no: 'no', na: 'does not apply', remark: 'Answered by, Remark' },
  rows: (one: string) => `${one}: one line each`,
  weighed: { scale: 'Scale', gross: 'Gross', tare: 'Tare or vessel', unit: 'Unit' },
  volume: {
    ml: 'or ml',
    get at(): string {
      return `at ${degreeUnit()}`;
    },
  },
  mass: { value: 'Figure', unit: 'Unit' },
  share: '%',
} as const;
