/**
 * Texts of the planning pages of the room Air: what air can hold, how a room fills and clears, a retort opened too hot, a hood, several
 * substances at once. They plan and measure
 * nothing, and say so on every page; no figure here is a verdict on anybody's health.
 */
import { marked, markName } from './notation.ts';

export const airPlan = {
  never: 'never',
  title: 'Planning',
  intro:
    'What paper can say about air before anybody measures it. Each page names what it takes for granted. None of its figures is kept in the book.',
  figure: 'A planning figure, not a measurement.',
  figureSays:
    'What is in the air is known only from a reading. Local rules, and people licensed for this work, decide what is done with either.',
  known: 'What you put in',
  knownNote: 'The figures follow as you type.',
  follows: 'What follows',
  assumes: 'What it takes for granted',
  back: 'To the air room',
  all: 'All planning pages',
  waiting: (labels: readonly string[]) =>
    `The figures follow when these are filled in: ${labels.join('; ')}. Nothing is taken for an empty one.`,
  wrong: 'The figures follow when the marked fields are put right.',
  get notNumber() {
    return `This is not a number: write digits with at most one ${markName()}, such as ${marked('0.5')}.`;
  },
  notAboveZero: 'This has to be above zero: check it.',
  columns: { what: 'What', figure: 'Figure', how: 'How it comes about' },
  pages: {
    vapour: {
      title: 'What air can hold',
      short: 'Vapour',
      says: 'Vapour over mercury and saturated air, by temperature.',
    },
    room: { title: 'A room filling or clearing', short: 'Room', says: 'Build-up, purge, time to a target, or never.' },
    opening: {
      title: 'A retort opened too hot',
      short: 'Hot retort',
      says: 'What the person at the lid meets, and what the room holds after.',
    },
    mixture: {
      title: 'Several substances at once',
      short: 'Mixture',
      says: 'Each over its own limit, and their sum, where they add up.',
    },
    hood: { title: 'A hood at a distance', short: 'Hood', says: 'The air a hood draws to catch what rises farther away.' },
  },
} as const;
