/** Texts around every room: the head of the page, the index of rooms, the start page, notices about the record itself. */
import { en } from './en.ts';
import { glossaryWords } from './glossary.ts';
import { findWords } from './screens-find.ts';
import { workingsWords } from './workings.ts';

export const shell = {
  /** One way a forked desk goes on, none of them chosen. */
  branch: (lines: number, endMark: string) =>
    `One way on: ${lines === 1 ? '1 line' : `${lines} lines`}, end mark ${endMark.slice(0, 16)}…`,
  branchLine: (n: number, kind: string, when: string, id: string) =>
    [`line ${n}`, kind, when, id].filter((part) => part !== '').join(', '),
  branchMore: (lines: number) => `and ${lines === 1 ? '1 more line' : `${lines} more lines`}`,
  skip: 'Skip to the page',
  index: 'Rooms',
  rooms: {
    today: 'Today',
    daybook: 'Daybook',
    mercury: 'Mercury',
    retort: 'Retort',
    bullion: 'Bullion',
    air: 'Air',
    site: 'Site',
    papers: 'Papers',
    find: findWords.title,
    words: glossaryWords.title,
    workings: workingsWords.title,
  },
  title: (room: string, site: string) => `${room} · ${site} · ${en.program}`,
  standing: 'Standing',
  standingWholeSays: 'Show the whole standing',
  standingQuestion: 'What is this site’s standing?',
  standingAnswer: 'State it',
  writing: 'Writing',
  writingNobody: 'nobody named',
  writingChange: 'Change who is writing',
  writingTitle: 'Who is writing?',
  writingSays: 'The name goes with every entry from now on. It is the book’s word and no lock.',
  writingHeld:
    'Whoever has a passphrase writes only after opening the window with it: lock it, below the index, and open it as them.',
  writingNone: 'Nobody is in the register yet. The first entry of a person may be written by that person.',
  writingRegister: 'Enter a person',
  writingNobodyChoice: 'Nobody named',
  light: 'Light',
  lightOf: { auto: 'As the machine', light: 'Day', dark: 'Retort house' },
  close: 'Close this daybook',
  lastKept: (n: number, endMark: string) => `Kept · entry ${n} · end mark ${endMark.slice(0, 4)}…`,
  endMark: (n: number, endMark: string) =>
    `${n === 1 ? '1 entry' : `${n} entries`} on this desk · end mark ${endMark.slice(0, 4)}…`,
  noEntries: 'No entry on this desk yet',
  opening: 'Opening the daybook …',
  waiting: 'Asking the program behind this window …',
  again: 'Ask again',
  noRoom: 'There is no such page',
  noRoomSays: 'The address leads nowhere in this daybook. Choose a room from the index.',
  start: {
    title: 'Which daybook?',
    intro:
      'A daybook is a folder on this machine: the record of mercury and bullion at one site, kept by its own people. It leaves this machine only when somebody copies it.',
    recent: 'Opened before',
    open: 'Open',
    missing: 'not found where it was',
    none: 'None was opened on this machine yet.',
    make: 'Make a new one',
    name: 'Name of the site',
    nameHint: (folder: string) => `A folder of this name is made in ${folder}.`,
    nameMissing: 'Write the name of the site first.',
    begin: 'Make the daybook',
    sample: 'To look around first',
    sampleSays:
      'An invented site with eighteen months of entries. Nothing in it is real, and nothing done in it touches another daybook.',
    openSample: 'Open the sample site',
  },
  elsewhere: 'This window only reads: another window of this browser writes this daybook.',
  elsewhereSays: 'Go on there, or close it: this one then takes over by itself.',
  silent: 'The program behind this page does not answer.',
  silentSays: 'What is typed is kept as a draft in this browser. Start the program again and open the address it prints.',
  silentTitle: 'The program behind this page does not answer',
  silentKept:
    'Nothing was kept. What was typed is kept as a draft in this browser. Start the program again and open the address it prints: the draft waits there.',
  silentLost:
    'Nothing was kept, and the browser cannot remember drafts just now: copy what was typed before this window is closed. Then start the program again and open the address it prints.',
  shut: 'This window is no longer let in and can be closed.',
  shutSays: 'The program was started anew. Open the address it printed: what was typed here waits there as a draft.',
  shutTitle: 'This window is no longer let in',
  shutKept:
    'The program was started anew and gave a new key. Nothing was kept. What was typed is kept as a draft in this browser: open the address the program printed, the draft waits there. This window can be closed.',
  /** Why a button that leads to writing cannot be used. */
  reasons: {
    elsewhere: 'This window only reads: another window of this browser writes this daybook.',
    shut: 'This window is no longer let in: open the address the program printed.',
    locked: 'This daybook is open for reading only.',
    reads: 'Who opened the window is in the register as a reader only.',
  },
  storeProblem: 'Drafts are not remembered',
} as const;
