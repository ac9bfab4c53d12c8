/**
 * One day's air on a paper: each reading exactly as shown with what was round it, time nobody read, what the readings allow to be said, and how that
 * stands to limits the site picked for these people. Never a planning figure. What one person breathed goes on that person's own paper: whoever else calls it
 * leaves those days out.
 */

import type { Content } from 'pdfmake/interfaces';
import type { AirDay, AirRow } from '../../core/book/air-days.ts';
import { peopleOf, verdictsOf } from '../../core/book/air-verdicts.ts';
import type { Book } from '../../core/book/book.ts';
import { toDouble } from '../../core/ratio.ts';
import { minutesOf } from '../../core/time.ts';
import { airGaps } from '../../words/air-drawn.ts';
import { limitText, shownText } from '../../words/air-figures.ts';
import { givenText, minutesText, rangeText } from '../../words/air-planned.ts';
import { clockText, dayText } from '../../words/dates.ts';
import { airHeightNames, airModeNames, airUnitSigns, onOffNames, openShutNames } from '../../words/daybook-names-air.ts';
import { marked } from '../../words/notation.ts';
import { notRecorded } from '../../words/papers.ts';
import { airPaper as words } from '../../words/papers-air.ts';
import { airFindingWords, airHowWords, airRoom, airVerdictWords } from '../../words/screens-air.ts';
import { degreesText } from '../../words/temperatures.ts';
import { aside, ledger, list, part, section, sentence } from '../ledger.ts';
import { personName, thingName } from '../names.ts';
import type { Frame } from '../paper.ts';
import { airDrawing } from './drawing.ts';

/** Meters by their id, in the order they are numbered on the paper. */
export type MetersUsed = readonly string[];

export const rowsOf = (day: AirDay): readonly AirRow[] =>
  [...day.rows, ...day.spots].toSorted((a, b) => (minutesOf(a.body.from) ?? 0) - (minutesOf(b.body.from) ?? 0));

const small = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
const or = (text: string | undefined): string => text ?? notRecorded;

function readings(day: AirDay, meters: MetersUsed, charges: readonly string[]): Content[] {
  return [
    part(words.readings),
    aside(words.readingsNote),
    ...ledger(
      [
        { head: words.no, share: 5 },
        { head: words.time, share: 15 },
        { head: words.shown, share: 16 },
        { head: words.most, share: 14 },
        { head: words.zero, share: 16 },
        { head: words.where, share: 27 },
        { head: words.meterNo, share: 7 },
      ],
      rowsOf(day).map(({ body }, i) => ({
        cells: [
          String(i + 1),
          `${clockText(body.from)}, ${body.to === undefined ? airRoom.day.spots : clockText(body.to)}`,
          shownText(body),
          body.max === undefined ? notRecorded : `${marked(body.max)}\u00a0${airUnitSigns[body.unit]}`,
          marked(`${or(body.zero?.before)}; ${or(body.zero?.after)}`),
          [
            body.sample === 'personal' ? (body.place ?? '') : '',
            body.height === undefined ? '' : airHeightNames[body.height],
            body.distanceM === undefined ? '' : words.distance(marked(String(body.distanceM))),
            body.activity ?? '',
            body.run !== undefined && charges.includes(body.run) ? words.thisRun : '',
          ]
            .filter((text) => text !== '')
            .join('; ') || notRecorded,
          body.meter === undefined ? '–' : String(meters.indexOf(body.meter) + 1),
        ],
      })),
    ),
  ];
}

const conditions = (book: Book, day: AirDay): Content[] => [
  part(words.conditions),
  ...ledger(
    [
      { head: words.no, share: 5 },
      { head: words.air, share: 17 },
      { head: words.fans, share: 26 },
      { head: words.mode, share: 20 },
      { head: words.sampler, share: 16 },
      { head: words.note, share: 16 },
    ],
    rowsOf(day).map(({ body, reading }, i) => ({
      cells: [
        String(i + 1),
        `${body.temperatureC === undefined ? notRecorded : degreesText(body.temperatureC)}; ${body.pressureKpa === undefined ? notRecorded : marked(String(body.pressureKpa))}`,
        [
          or(body.fans && small(onOffNames[body.fans])),
          or(body.hood && small(onOffNames[body.hood])),
          or(body.doors && small(openShutNames[body.doors])),
        ].join('; '),
        [
          body.mode === undefined ? notRecorded : small(airModeNames[body.mode]),
          ...(body.normalised === undefined ? [] : [body.normalised === 'yes' ? words.byMeter : words.notByMeter]),
        ].join('; '),
        body.sampler === undefined ? notRecorded : personName(book, body.sampler, reading.happened),
        body.note ?? '',
      ],
    })),
  ),
];

function figures(day: AirDay): Content[] {
  const { day: said } = airRoom;
  const { exposure } = day;
  const lines = [
    { what: said.twa, range: exposure.twa8h },
    { what: said.mean, range: exposure.meanSampled },
    { what: said.quarter, range: exposure.highest15min },
    { what: said.moment, range: exposure.ceiling },
    ...(day.lengthMinutes > 480
      ? [
          { what: said.worst, range: day.worst8h },
          { what: said.shiftMean, range: day.shiftMean },
        ]
      : []),
  ];
  return [
    part(said.figures),
    ...ledger(
      [
        { head: said.figure, share: 45 },
        { head: said.value, share: 55 },
      ],
      lines.map(({ what, range }) => ({ cells: [what, rangeText(range) ?? said.unknown] })),
    ),
    ...list([
      said.sampled(minutesText(exposure.sampledMinutes), minutesText(exposure.unsampledMinutes)),
      ...exposure.findings.map((finding) => airFindingWords[finding]),
      ...(day.uncounted.length > 0 ? [words.uncounted(day.uncounted.length)] : []),
    ]),
  ];
}

function verdicts(book: Book, day: AirDay): Content[] {
  const { day: said } = airRoom;
  const found = verdictsOf(book, day);
  const notes = peopleOf(day) === 'public' ? [aside(said.publicOnly)] : [];
  if (found.length === 0) return [part(said.verdicts), ...notes, sentence(said.noLimit)];
  const limits = [...new Map(found.map(({ limit }) => [limit.id, limit.body])).values()];
  return [
    part(said.verdicts),
    ...notes,
    ...ledger(
      [
        { head: said.limit, share: 30 },
        { head: said.how, share: 24 },
        { head: said.range, share: 24 },
        { head: said.verdict, share: 22 },
      ],
      found.map((v) => ({
        cells: [
          `${v.limit.body.label}: ${givenText(toDouble(v.limitMgM3))}`,
          airHowWords[v.how],
          rangeText(v.range) ?? said.unknown,
          airVerdictWords[v.verdict],
        ],
        strong: v.verdict === 'above',
      })),
    ),
    part(words.limits),
    ...ledger(
      [
        { head: words.limit, share: 50 },
        { head: words.source, share: 50 },
      ],
      limits.map((limit) => ({
        cells: [
          `${limit.label}: ${limitText(limit)}`,
          [
            or(limit.source),
            ...(limit.checked ? [words.looked(limit.checked.by, dayText(limit.checked.on))] : []),
            ...(limit.conflict === undefined ? [] : [words.conflict(limit.conflict)]),
          ].join('; '),
        ],
      })),
    ),
  ];
}

/** The place's name, or the person's. */
const nameOf = (book: Book, { subject, from }: AirDay): string =>
  subject.sample === 'personal' ? thingName(book, 'person', subject.of, from) : subject.of;

/** The passage of a day. `charges`: those whose readings are marked as of the run. */
export function airDayPassage(
  book: Book,
  day: AirDay,
  frame: Frame,
  meters: MetersUsed,
  charges: readonly string[] = [],
): Content[] {
  const gaps = airGaps(day).map(({ from, to, long }) => words.gap(from, to, long));
  const { day: said } = airRoom;
  return [
    section(`${nameOf(book, day)}, ${airRoom.samples[day.subject.sample]}, ${dayText(day.day)}`),
    sentence((day.shiftRecorded ? said.shift : said.noShift)(clockText(day.from), clockText(day.to))),
    ...readings(day, meters, charges),
    ...conditions(book, day),
    ...airDrawing(book, day, frame),
    part(words.gaps),
    ...(gaps.length > 0 ? list(gaps) : [sentence(words.noGaps)]),
    ...figures(day),
    ...verdicts(book, day),
  ];
}
