/**
 * The incident sheet, of an incident or a spill: what happened, where, to whom, what was done and who was told; what ran out and what was gathered up;
 * and room to sign. It judges nobody and says of no place that it may be used again.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../core/book/book.ts';
import { lessSum, type Sum } from '../core/book/charges.ts';
import type { Reading } from '../core/book/current.ts';
import { numbersAt, numbersMissing } from '../core/book/site-says.ts';
import { weighedFrom } from '../core/book/weights.ts';
import { bad, good, problem, type Result } from '../core/result.ts';
import { dayNumber, dayOf } from '../core/time.ts';
import { shownText } from '../words/air-figures.ts';
import { dayText, momentText } from '../words/dates.ts';
import { numberUseNames } from '../words/daybook-names-site.ts';
import { notRecorded, runSheet } from '../words/papers.ts';
import { commonWords } from '../words/papers-common.ts';
import { incidentPaper as words } from '../words/papers-incident.ts';
import { spillWords } from '../words/spill.ts';
import { gramsText, uText } from './amounts.ts';
import { doubtsOf, notUnderstoodNaming } from './doubts.ts';
import { aside, facts, ledger, list, part, type Row, section, sentence, together } from './ledger.ts';
import { personName, thingName } from './names.ts';
import { type Definition, type Frame, paper } from './paper.ts';
import { changesOf } from './run-sheet/changes.ts';
import { happenedText } from './run-sheet/moments.ts';
import { readingsTable } from './run-sheet/readings.ts';
import { keptWith, witnessText } from './run-sheet/went-in.ts';
import { standingText } from './standing.ts';
import { weighingsOf } from './weighings.ts';

type Incident = Reading<'incident'>;
type Spill = Reading<'spill'>;

const isSpill = (reading: Incident | Spill): reading is Spill => reading.kind === 'spill';

function particulars(book: Book, reading: Incident | Spill): Content[] {
  const { entry, happened } = reading;
  const kept = keptWith(entry);
  const own: (readonly [string, string])[] = isSpill(reading)
    ? [
        [words.where, reading.body.where],
        [
          words.vessel,
          reading.body.vessel === undefined ? notRecorded : thingName(book, 'vessel', reading.body.vessel, happened),
        ],
        [words.told, reading.body.told ?? notRecorded],
      ]
    : [
        [words.where, reading.body.where ?? notRecorded],
        [words.people, (reading.body.people ?? []).map((id) => personName(book, id, happened)).join(', ') || notRecorded],
        [words.told, reading.body.told ?? notRecorded],
        [words.assessment, reading.body.assessment === undefined ? notRecorded : words.answers[reading.body.assessment]],
      ];
  return together([
    section(words.facts),
    ...facts([
      [words.day, happenedText(reading)],
      ...own,
      [words.by, personName(book, entry.by, happened)],
      [words.witness, witnessText(book, entry, happened)],
      ...(kept === '' ? [] : [[words.papersKept, kept] as const]),
    ]),
  ]);
}

const told = (name: string, text: string | undefined): Content[] => [part(name), sentence(text ?? notRecorded)];

function story(reading: Incident | Spill): Content[] {
  return [
    ...(isSpill(reading)
      ? [
          ...told(words.cleaned, reading.body.cleaned),
          ...(reading.body.note === undefined ? [] : told(words.note, reading.body.note)),
        ]
      : [...told(words.happened, reading.body.what), ...told(words.done, reading.body.done)]),
  ];
}

const line = (text: string, { grams, net, uKnown }: Sum, more: Partial<Row> = {}): Row => ({
  cells: [text, gramsText(grams), uText(net, uKnown)],
  ...more,
});

function spilled(book: Book, { id, body, happened }: Spill): Content[] {
  const weigh = (weight: NonNullable<Spill['body']['lost']>, path: string) =>
    weighedFrom(weight, { entry: id, path, at: happened }, book.registers);
  const lost = body.lost ? weigh(body.lost, 'lost') : null;
  const got = body.recovered ? weigh(body.recovered.weight, 'recovered.weight') : null;
  const into = body.recovered ? thingName(book, 'vessel', body.recovered.vessel, happened) : '';
  const rest = lost && got ? lessSum(lost, got) : lost;
  const rows: Row[] = [
    ...(lost ? [line(words.lost, lost)] : []),
    ...(got ? [line(lost ? words.recovered(into) : words.recoveredAlone(into), got)] : []),
    ...(rest ? [line(words.rest, rest, { sum: true, closing: true })] : []),
  ];
  return [
    section(words.weights),
    ...(rows.length === 0
      ? []
      : ledger(
          [
            { head: words.item, share: 60 },
            { head: words.grams, share: 20, amount: true },
            { head: words.U, share: 20, amount: true },
          ],
          rows,
        )),
    ...(lost ? [] : [sentence(words.noLost)]),
    ...(got ? [] : [sentence(words.noRecovered)]),
    ...(rest && rest.net.ug < 0 ? [sentence(words.overGathered)] : []),
    sentence(words.inside[body.insideIssue]),
  ];
}

/** Days for which readings stand beside it: its own and so many after. */
const daysAfter = 3;

/** Readings of places on those days; what one person breathed goes on its own paper alone. */
function airThen(book: Book, { happened }: Incident | Spill): Content[] {
  const first = dayNumber(dayOf(happened)) ?? 0;
  const rows = book.current.of('air-reading').flatMap(({ body }): Row[] => {
    const days = (dayNumber(dayOf(body.from)) ?? 0) - first;
    return body.sample === 'personal' || days < 0 || days > daysAfter
      ? []
      : [{ cells: [momentText(body.from), body.place ?? notRecorded, shownText(body)] }];
  });
  if (rows.length === 0) return [section(words.air), sentence(words.airNone)];
  return [
    section(words.air),
    aside(words.airNote),
    ...ledger(
      [
        { head: words.when, share: 28 },
        { head: words.place, share: 48 },
        { head: words.shown, share: 24 },
      ],
      rows,
    ),
  ];
}

const byHand = (): Content[] =>
  together([
    section(words.byHand),
    aside(words.byHandNote),
    ...ledger(
      [
        { head: words.question, share: 44 },
        { head: words.answer, share: 56 },
      ],
      words.handRows.map((row) => ({ cells: [row, ''], tall: true })),
    ),
  ]);

/** Numbers as entered by the newest entry; open lines for those looked for first that were not. */
function help(book: Book, at: string): Content[] {
  const entered = numbersAt(book.current, at)?.body.numbers ?? [];
  return [
    section(words.firstAid),
    aside(spillWords.firstAidDefers),
    ...list(spillWords.firstAidList),
    ...together([
      part(words.numbers),
      ...facts([
        ...entered.map((n): [string, string] => [
          n.name === undefined ? numberUseNames[n.for] : `${numberUseNames[n.for]}, ${n.name}`,
          n.number,
        ]),
        ...numbersMissing(book.current, at).map((use): [string, string] => [numberUseNames[use], words.noNumber]),
      ]),
    ]),
  ];
}

function hands(book: Book, reading: Incident | Spill): Content[] {
  const writer = personName(book, reading.entry.by, reading.happened);
  return together([
    section(words.signatures),
    aside(words.signaturesNote),
    ...ledger(
      [
        { head: words.role, share: 26 },
        { head: words.nameHead, share: 34 },
        { head: words.signature, share: 40 },
      ],
      words.roles.map((role, i) => ({ cells: [role, i === 0 ? writer : '', ''], tall: true })),
    ),
  ]);
}

/** The sheet of an incident or a spill. Problems: `paper-no-such` where the book has neither with this id, `paper-not-understood`. */
export function incidentSheet(book: Book, id: string, frame: Frame): Result<Definition> {
  const reading: Incident | Spill | undefined =
    book.current.of('incident').find((r) => r.id === id) ?? book.current.of('spill').find((r) => r.id === id);
  if (!reading) return bad(problem('paper-no-such', 'id', { wanted: 'incident', id }));
  const unread = notUnderstoodNaming(book, [id]);
  if (unread) return bad(problem('paper-not-understood', 'id', { kind: unread.kind, entry: unread.id }));
  const { reservations, remarks } = doubtsOf(book, [reading]);
  const { where } = reading.body;
  const weighings = weighingsOf(book, reading);
  return good(
    paper(frame, {
      name: words.name,
      subject: words.subject(
        isSpill(reading) ? words.spill : words.incident,
        where === undefined ? '' : words.at(where),
        dayText(reading.happened),
      ),
      number: words.number(id),
      standing: standingText(book, reading.happened),
      reservations,
      body: [
        ...particulars(book, reading),
        ...story(reading),
        ...(isSpill(reading) ? spilled(book, reading) : []),
        ...together([section(words.cautions), ...list([...(isSpill(reading) ? words.spillCautions : []), ...words.cautionList])]),
        ...airThen(book, reading),
        ...help(book, frame.newest),
        section(commonWords.remarks),
        ...(remarks.length > 0 ? list(remarks) : [sentence(runSheet.noRemarks)]),
        ...changesOf(book, [reading], [], commonWords.noChanges),
        ...(weighings.length > 0 ? readingsTable(book, weighings) : []),
        ...byHand(),
        ...hands(book, reading),
      ],
    }),
  );
}
