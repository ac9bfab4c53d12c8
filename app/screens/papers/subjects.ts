/** What each paper can be about in this book, newest first, named as a person would look for it; and what its file is called. */
import { type PaperName, paperNames } from '../../contract.ts';
import { airDays, airDaysOfRun } from '../../core/book/air-days.ts';
import { barPieces } from '../../core/book/bar-pieces.ts';
import type { Book } from '../../core/book/book.ts';
import type { Hidden } from '../../core/book/may-see.ts';
import { latest, nameOf } from '../../core/book/registers.ts';
import { formKinds } from '../../core/kinds/by-hand.ts';
import type { Kind } from '../../core/kinds/index.ts';
import { dayOf } from '../../core/time.ts';
import { dayText } from '../../words/dates.ts';
import { entryName, nameIn } from '../../words/daybook-naming.ts';
import { kindNames } from '../../words/labels.ts';
import { labelsPaper } from '../../words/papers-labels.ts';
import { papersRoom } from '../../words/screens-papers.ts';

export interface Subject {
  readonly value: string;
  readonly label: string;
}

/** Papers over a period. */
export const overPeriod: ReadonlySet<PaperName> = new Set(['mercury-account', 'mercury-register']);
/** Papers of a day: what stands at its end. */
export const ofDay: ReadonlySet<PaperName> = new Set(['count-sheet']);
const aboutNothing: ReadonlySet<PaperName> = new Set(['blank-forms', 'wall-sheet', 'labels']);
/** Papers about one thing: it has to be chosen. */
export const needsSubject = (paper: PaperName): boolean =>
  !overPeriod.has(paper) && !ofDay.has(paper) && !aboutNothing.has(paper);

export const isPaper = (name: string | undefined): name is PaperName => paperNames.some((paper) => paper === name);

const labelled = (book: Book, id: string, more: string): Subject => ({
  value: id,
  label: more === '' ? entryName(book, id) : `${entryName(book, id)}, ${more}`,
});

/** Days of places, by a reading of each, and runs that a reading of a place names. Readings at a person are on their own paper. */
function airSubjects(book: Book): Subject[] {
  const days = airDays(book).filter((day) => day.subject.sample !== 'personal');
  const ofPlaces = days.flatMap(({ subject, day, rows, spots }): Subject[] => {
    const first = rows[0] ?? spots[0];
    return first ? [{ value: first.id, label: `${dayText(day)}, ${subject.of}` }] : [];
  });
  const runs = book.runs.filter((run) =>
    airDaysOfRun(
      book,
      run.charges.map(({ id }) => id),
    ).some((day) => day.subject.sample !== 'personal'),
  );
  return [...ofPlaces.reverse(), ...runs.map((run) => labelled(book, run.id, '')).reverse()];
}

/** Days of people, by a reading of each, and people with more than one such day. Who may see them is for the caller to know. */
function personalSubjects(book: Book): Subject[] {
  const days = airDays(book).filter(({ subject }) => subject.sample === 'personal');
  const name = (id: string) => nameIn(book, 'person', id, '');
  const people = [...new Set(days.map(({ subject }) => subject.of))].filter(
    (id) => days.filter(({ subject }) => subject.of === id).length > 1,
  );
  return [
    ...people.map((id) => ({ value: id, label: papersRoom.allDays(name(id)) })),
    ...days.toReversed().flatMap(({ subject, day, rows, spots }): Subject[] => {
      const first = rows[0] ?? spots[0];
      return first ? [{ value: first.id, label: `${dayText(day)}, ${name(subject.of)}` }] : [];
    }),
  ];
}

/** Papers that not everybody may see, and what they tell. */
export const withheldPapers: Partial<Record<PaperName, Hidden>> = { 'personal-air-record': 'personal-air' };

/** What a paper can be about; nothing for a paper that is about the whole book. */
export function subjectsOf(book: Book, paper: PaperName): readonly Subject[] {
  const { current } = book;
  switch (paper) {
    case 'mercury-account':
    case 'count-sheet':
    case 'wall-sheet':
      return [];
    case 'air-record':
      return airSubjects(book);
    case 'personal-air-record':
      return personalSubjects(book);
    case 'open-day-sheet':
      return current
        .of('open-day')
        .map(({ id, body }) => labelled(book, id, body.areas))
        .reverse();
    case 'labels':
      return [
        { value: 'lots', label: labelsPaper.lots },
        { value: 'vessels', label: labelsPaper.vessels },
        ...[...book.lots.all.values()].flatMap(({ id, label, fate }) => (fate === 'in-safe' ? [{ value: id, label }] : [])),
        ...[...book.registers.vessel.values()].map((thing) => ({ value: thing.id, label: nameOf(latest(thing).body) })),
      ];
    case 'blank-forms':
      return formKinds.map((kind) => ({ value: kind, label: kindNames[kind] }));
    case 'mercury-register':
      return [...book.registers.vessel.values()].map((thing) => ({ value: thing.id, label: nameOf(latest(thing).body) }));
    case 'run-sheet':
      return book.runs.map((run) => labelled(book, run.id, '')).reverse();
    case 'retort-tag':
      return current
        .of('charge')
        .flatMap(({ id }) => (book.charges.all.has(id) ? [labelled(book, id, '')] : []))
        .reverse();
    case 'melt-sheet':
      return current
        .of('melt')
        .map(({ id, body }) => labelled(book, id, body.bars.map(({ label }) => label).join(', ')))
        .reverse();
    case 'bar-record':
      return [...barPieces(current).values()].map(({ id, label }) => ({ value: id, label })).reverse();
    case 'parcel-return':
      return [...book.registers.parcel.values()].map((thing) => ({ value: thing.id, label: nameOf(latest(thing).body) }));
    case 'transfer-sheet':
      return current
        .of('transfer')
        .map(({ id }) => labelled(book, id, ''))
        .reverse();
    case 'incident-sheet':
      return [...current.of('incident'), ...current.of('spill')]
        .sort((a, b) => (a.happened < b.happened ? 1 : -1))
        .map(({ id, body }) => labelled(book, id, body.where ?? ''));
  }
}

const ofEntry: Partial<Record<Kind, PaperName>> = {
  melt: 'melt-sheet',
  transfer: 'transfer-sheet',
  incident: 'incident-sheet',
  spill: 'incident-sheet',
  'open-day': 'open-day-sheet',
  charge: 'retort-tag',
  vessel: 'mercury-register',
  parcel: 'parcel-return',
};

/** The paper of an entry of this kind, if there is one. */
export const paperOf = (kind: Kind): PaperName | undefined => ofEntry[kind];

/** What a paper about this is called on its file besides its day; empty where the day says enough, or where a person's name would stand there. */
function calledOnFile(book: Book, paper: PaperName, id: string): string {
  const body = book.current.byId.get(id)?.body as { party?: string; where?: string; areas?: string; place?: string } | undefined;
  switch (paper) {
    case 'run-sheet':
    case 'retort-tag':
      return nameIn(book, 'retort', book.charges.all.get(id)?.retort ?? '', '');
    case 'melt-sheet':
      return [...barPieces(book.current).values()]
        .filter((piece) => piece.id.startsWith(`${id}/`))
        .map(({ label }) => label)
        .join(' ');
    case 'transfer-sheet':
      return body?.party ?? '';
    case 'incident-sheet':
      return body?.where ?? '';
    case 'open-day-sheet':
      return body?.areas ?? '';
    case 'air-record':
      return body?.place ?? '';
    case 'personal-air-record':
      return '';
    default:
      return subjectsOf(book, paper).find(({ value }) => value === id)?.label ?? '';
  }
}

/** Letters of a file's name before ".pdf", and its bytes: with the folders around it Windows takes some 260 letters, others take 255 bytes for a name. */
const mostOfName = 100;
const mostBytes = 240;

/** The beginning of a name that file systems take, no letter cut in two. */
function beginning(name: string): string {
  const letters = [...name.slice(0, mostOfName)];
  if (/[\ud800-\udbff]$/.test(letters.at(-1) ?? '')) letters.pop();
  while (new TextEncoder().encode(letters.join('')).length > mostBytes) letters.pop();
  return letters.join('').replace(/-+$/, '');
}

/**
 * "melt-sheet-2026-03-14-B-7.pdf", "mercury-account-2026-01-01-2026-03-31.pdf": kind, day and what it is about. Letters, digits and hyphens only, which every
 * file system takes; the kind before them keeps it from being a name Windows holds for a device.
 */
export const fileName = (paper: PaperName, ...about: readonly string[]): string =>
  `${beginning(
    [paper, ...about]
      .map((part) =>
        part
          .normalize('NFC')
          .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
          .replace(/^-+|-+$/g, ''),
      )
      .filter((part) => part !== '')
      .join('-'),
  )}.pdf`;

/** The file of a paper about an entry or a thing of it (`melt/1`): its day, and what it is called. A register's papers bear no day of their own. */
export function fileAbout(book: Book, paper: PaperName, id: string, ...days: readonly string[]): string {
  const entry = book.current.byId.get(id) ?? book.current.byId.get(id.split('/')[0] ?? '');
  const registered = paper === 'mercury-register' || paper === 'parcel-return' || paper === 'labels';
  const day = entry && !registered ? dayOf(entry.happened) : '';
  return fileName(paper, day, id === '' ? '' : calledOnFile(book, paper, id), ...days);
}
