/** Words of the desktop's own menu and dialogs: what stands around the window, not in it. */

export const desktopTexts = {
  book: 'Daybook',
  openFolder: 'Open a daybook folder…',
  backupPlace: 'Place for backups…',
  pickPlace: 'Use this place',
  cannotBackUp: 'This folder cannot be the place for backups',
  quit: 'Quit',
  edit: 'Edit',
  view: 'View',
  open: 'Open',
  cannotOpen: 'This folder cannot be opened as a daybook',
  gone: 'The window stopped',
  goneDetail: (reason: string) =>
    `Its process ended (${reason}). What was kept is on disk and is not touched. Drafts are read again when the window is loaded.`,
  goneAgain:
    'The window stopped several times within a minute and is not loaded again. What was kept is on disk. Start the program anew.',
  reload: 'Load the window again',
  hangs: 'The window does not answer',
  hangsDetail: 'Long work may be under way. Loading it again loses only what was typed in the last seconds.',
  wait: 'Wait',
  failed: 'The program failed and has to end',
  failedDetail: (what: string) => `What was kept is on disk; the journal was closed. Please report: ${what}`,
} as const;
