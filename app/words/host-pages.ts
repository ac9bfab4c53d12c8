/** The plain pages a browser shows when it came to the host the wrong way: what happened, and what to do next. */

export interface PlainPage {
  readonly title: string;
  /** What happened. */
  readonly says: readonly string[];
  /** What to do, step by step. */
  readonly next: readonly [string, ...string[]];
}

const kept = 'Nothing that was kept is lost by that, and what was being typed is there again.';
const again = `For a new address, stop the program where it was started (Ctrl-C there) and start it again. ${kept}`;

export const toDo = { of: 'Retort Daybook', heading: 'What to do' } as const;

export const pages = {
  'not-here': {
    title: 'There is nothing here',
    says: ['No page or file has this address.'],
    next: ['Go back to the daybook’s first page.'],
  },
  'not-built': {
    title: 'The window has not been built',
    says: ['The program runs, but the files of its window are missing.'],
    next: ['Stop the program (Ctrl-C where it was started).', 'Run “npm run build”.', 'Start it again.'],
  },
  'wrong-method': {
    title: 'Not a way to ask',
    says: ['This address answers only to what the daybook’s own window asks.'],
    next: ['Go back to the window of the daybook.'],
  },
  'no-key': {
    title: 'This address needs its key',
    says: ['The daybook opens only for the browser that was given its one-time address. This keeps others on this machine out.'],
    next: ['Use the whole address the program printed when it started, with the key at its end.', again],
  },
  'key-used': {
    title: 'This address has been used already',
    says: [
      'A one-time address opens the daybook once, in one browser. It was opened before, or the program has been started anew since.',
      'The record is as it was.',
    ],
    next: ['Go back to the window or tab that it opened, if that is still there.', again],
  },
  'wrong-host': {
    title: 'Not an address of this program',
    says: ['The daybook answers only at the address it printed, letter for letter.'],
    next: ['Use that address, from its “http” to the end of its key.', again],
  },
  'bad-path': {
    title: 'This address cannot be read',
    says: ['Nothing of the daybook has an address like this.'],
    next: ['Go back to the daybook’s first page.'],
  },
} as const satisfies Record<string, PlainPage>;

export type PageName = keyof typeof pages;
