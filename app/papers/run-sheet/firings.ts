/** Each firing of the run: the times of its stages, how it was known to have cooled, where the mercury went, how the sponge looked. */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import type { Firing } from '../../core/book/charges.ts';
import type { Run } from '../../core/book/runs.ts';
import { compareMoments, dayOf } from '../../core/time.ts';
import { clockText, momentText } from '../../words/dates.ts';
import { notRecorded, runSheet as words } from '../../words/papers.ts';
import { facts, part, section, sentence, together } from '../ledger.ts';
import { personName, thingName } from '../names.ts';
import { happenedText } from './moments.ts';
import { keptWith, witnessText } from './went-in.ts';

const at = (moment: string | undefined): string => (moment === undefined ? notRecorded : momentText(moment));

function span(from: string | undefined, to: string | undefined): string {
  if (from === undefined && to === undefined) return notRecorded;
  const sameDay = from !== undefined && to !== undefined && dayOf(from) === dayOf(to);
  return words.fromTo(at(from), sameDay ? clockText(to) : at(to));
}

/** A measured temperature, or that none was measured and how long it stood. */
export function openingText({ opening }: Firing['reading']['body']): string {
  if (opening === undefined) return notRecorded;
  return 'measuredC' in opening ? words.measured(String(opening.measuredC)) : words.stood(String(opening.stoodHours));
}

function firingFacts(book: Book, { reading }: Firing): Content[] {
  const { body, entry, happened } = reading;
  const { mercury } = body;
  const colours = body.heats.flatMap((heat) => (heat.colour === undefined ? [] : [heat.colour]));
  const kept = keptWith(entry);
  return facts([
    [words.lit, at(body.lit)],
    [words.firstMercury, at(body.firstMercury)],
    [words.lastMercury, at(body.lastMercury)],
    [words.finish, span(body.finishFrom, body.finishTo)],
    [words.opened, at(body.opened)],
    [words.atOpening, openingText(body)],
    [words.mercuryTo, mercury ? thingName(book, 'vessel', mercury.vessel, happened) : notRecorded],
    [words.mercuryState, mercury?.state === undefined ? notRecorded : words.mercuryStates[mercury.state]],
    [words.colour, colours.length === 0 ? notRecorded : colours.join(', ')],
    [words.luteSeen, body.lute ?? notRecorded],
    [words.fuel, body.fuel ?? notRecorded],
    [words.note, body.note ?? '–'],
    [words.happened, happenedText(reading)],
    [words.recordedBy, words.changedBy(personName(book, entry.by, happened), momentText(entry.written))],
    [words.witness, witnessText(book, entry, happened)],
    ...(kept === '' ? [] : [[words.papersKept, kept] as const]),
  ]);
}

/** The run's firings in order of opening. */
export const firingsOf = (run: Run): readonly Firing[] =>
  [...new Set(run.openings.map((o) => o.firing))].sort((a, b) =>
    compareMoments(a.reading.body.opened ?? a.reading.happened, b.reading.body.opened ?? b.reading.happened),
  );

export function firings(book: Book, run: Run): Content[] {
  const all = firingsOf(run);
  if (all.length === 0) return [section(words.firing), sentence(words.noFiring)];
  return all.flatMap((firing, i) =>
    together([
      ...(i === 0 ? [section(words.firing)] : []),
      ...(all.length > 1 ? [part(words.firingN(i + 1, all.length))] : []),
      ...firingFacts(book, firing),
    ]),
  );
}
