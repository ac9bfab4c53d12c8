/** The plain pages a browser shows when it came to the host the wrong way: what happened, and what to do. */

export interface PlainPage {
  readonly title: string;
  readonly lines: readonly string[];
}

const again =
  'To get a new address, stop the program where it was started (Ctrl-C) and start it again. Nothing that was kept is lost by that.';

export const pages = {
  'not-here': {
    title: 'There is nothing here',
    lines: ['No page or file has this address.', 'Go back to the daybook’s first page.'],
  },
  'not-built': {
    title: 'The window has not been built',
    lines: ['The program runs, but the files of its window are missing.', 'Stop it, run “npm run build”, and start it again.'],
  },
  'wrong-method': { title: 'Not a way to ask', lines: ['This address answers only to what the daybook’s own window asks.'] },
  'no-key': {
    title: 'This address needs its key',
    lines: [
      'The daybook opens only for the browser that was given its one-time address.',
      'Use the whole address the program printed when it started, with the key at its end.',
      again,
    ],
  },
  'key-used': {
    title: 'This address has been used already',
    lines: [
      'A one-time address opens the daybook once, in one browser.',
      'Go back to the window that it opened, if it is still there.',
      again,
    ],
  },
  'wrong-host': {
    title: 'Not an address of this program',
    lines: ['The daybook answers only at the address it printed, letter for letter.', again],
  },
  'bad-path': { title: 'This address cannot be read', lines: ['Nothing of the daybook has an address like this.'] },
} as const satisfies Record<string, PlainPage>;

export type PageName = keyof typeof pages;
