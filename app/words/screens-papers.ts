/** Texts of the Papers room: what each paper is for, in one line, and how somebody outside checks the record without this program. */
import type { PaperName } from '../contract.ts';

export interface PaperWords {
  readonly title: string;
  /** What it is for. */
  readonly purpose: string;
  /** What is asked to choose its subject; absent where it has none. */
  readonly subject?: string;
  /** Said where the book has no subject for it yet. */
  readonly none?: string;
}

export const papersRoom = {
  title: 'Papers',
  intro:
    'Every paper repeats what was entered and what follows from it, with the site’s standing, its reservations first, and the end marks it can be held against later. None of them permits anything.',
  papers: {
    'mercury-account': {
      title: 'Mercury account',
      purpose: 'Where the mercury of a period went: what was there, came and went, is there, and is not accounted for.',
    },
    'mercury-register': {
      title: 'Mercury register',
      purpose: 'Container by container: what came in and out, the balance after it, seals, and what a weighing found.',
      subject: 'Container',
      none: 'No container is entered yet.',
    },
    'run-sheet': {
      title: 'Run sheet',
      purpose: 'Everything one retort run rests on, down to each reading.',
      subject: 'Run',
      none: 'Nothing was charged yet.',
    },
    'retort-tag': {
      title: 'Retort tag',
      purpose: 'A small tag that hangs on a charged retort: it holds mercury, what went in and when.',
      subject: 'Charge',
      none: 'Nothing was charged yet.',
    },
    'melt-sheet': {
      title: 'Melt sheet',
      purpose: 'One melt: sponge in, bars out, what shrank, and between what bounds that lies.',
      subject: 'Melt',
      none: 'No melt is written up yet.',
    },
    'bar-record': {
      title: 'Bar record',
      purpose: 'One bar: what it was made of, every assay of it, the fine metal that follows. It certifies nothing.',
      subject: 'Bar',
      none: 'No bar was poured yet.',
    },
    'parcel-return': {
      title: 'Parcel return',
      purpose: 'What one owner’s ore gave: gross and fine, per tonne, alone or allocated, with its recoveries.',
      subject: 'Parcel',
      none: 'No parcel is in the register yet.',
    },
    'transfer-sheet': {
      title: 'Transfer sheet',
      purpose: 'What was handed over or taken in: both weights side by side, papers, and who decides what.',
      subject: 'Transfer',
      none: 'No transfer is written up yet.',
    },
    'incident-sheet': {
      title: 'Incident sheet',
      purpose: 'One incident or spill: what happened, what was done, who was told, with room to sign.',
      subject: 'Incident or spill',
      none: 'No incident and no spill is written up.',
    },
    'air-record': {
      title: 'Air record',
      purpose:
        'The air of a day or of a run: readings as shown, what they allow to be said, and how that stands to limits the site picked. Readings at a person are never on it.',
      subject: 'Day or run',
      none: 'No reading of a place is written up yet.',
    },
    'personal-air-record': {
      title: 'Personal air record',
      purpose:
        'What one person breathed, day by day: for that person and the safety officer. It is shown here to the safety officer alone and goes with no other paper.',
      subject: 'Person or day',
      none: 'No reading at a person is written up yet.',
    },
    'open-day-sheet': {
      title: 'Open-day sheet',
      purpose: 'Visitors by count, where they were, what was covered, and the air there against figures for the public only.',
      subject: 'Open day',
      none: 'No open day is written up yet.',
    },
    'wall-sheet': {
      title: 'Wall sheet',
      purpose: 'For the wall, in large type: what is done at a spill, first aid, this site’s numbers and its stop rules.',
    },
    'count-sheet': {
      title: 'Count sheet',
      purpose: 'A blank form for a stock-take by pencil: every place in walking order, and nothing of what the book says.',
    },
    labels: {
      title: 'Labels',
      purpose:
        'To cut out and fix on lots in the safe and on vessels of mercury: what it is, mass, date, the caution, and a code that leads to its entry when it is read into Find.',
      subject: 'Label for',
    },
    'blank-forms': {
      title: 'Blank forms',
      purpose:
        'Forms to write on by hand at the retort, laid out like the entry forms, with a number to give when they are typed in.',
      subject: 'Form',
    },
  } satisfies Readonly<Record<PaperName, PaperWords>>,
  all: 'All containers',
  allLabels: 'All lots in the safe and all vessels',
  allForms: 'The forms of a working day',
  choose: 'Choose',
  from: 'First day',
  to: 'Last day',
  on: 'Places of this day',
  open: 'Left empty: the whole book.',
  print: (title: string) => `Print the ${title.charAt(0).toLowerCase()}${title.slice(1)}`,
  printing: 'Printing …',
  /** How far it is, and the button that stops it. */
  progress: {
    reading: () => 'Reading the record …',
    setting: () => 'Setting the pages …',
    drawing: (percent: number) => `Drawing the pages: ${percent} %`,
  },
  stop: 'Stop printing',
  save: (name: string) => `Save ${name}`,
  pick: 'Choose first what it is about.',
  allDays: (person: string) => `${person}, every day with readings`,
  /** On the page of an entry. */
  ofEntry: 'Print its sheet',
  ofCharge: 'Print its tag',

  outside: 'For somebody outside',
  outsideNote: 'Auditor, regulator, anyone who does not want to trust this program',
  outsideSays:
    'The record is the folder, not this program. Every entry is one line of plain text; each line carries the mark of the line before it, so that one changed, added or taken out shows, and a cut-off end shows against an end mark kept elsewhere. Copy the folder, and ask these of the command that comes with this program:',
  folder: 'This daybook’s folder',
  commands: [
    { name: 'check', line: 'daybook check FOLDER', does: 'goes through every line, and names the first one that does not fit' },
    {
      name: 'export',
      line: 'daybook export FOLDER --out NEW-FOLDER',
      does: 'writes every kind of entry as a table, the movements of mercury, and a list of the end marks',
    },
    { name: 'account', line: 'daybook account FOLDER', does: 'reckons the mercury account again from the lines alone' },
    { name: 'movements', line: 'daybook movements FOLDER --csv', does: 'lists every movement the account is a sum of' },
  ],
  marks:
    'Compare the end marks that check prints with those at the foot of any paper printed earlier: where they agree for so many entries, nothing before them was changed since.',
} as const;
