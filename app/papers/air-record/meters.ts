/** The meters that readings on a paper were taken with, with their calibration as it stood when they were used. */
import type { Content } from 'pdfmake/interfaces';
import type { AirDay } from '../../core/book/air-days.ts';
import type { Book } from '../../core/book/book.ts';
import { stateAt } from '../../core/book/registers.ts';
import { dayOf } from '../../core/time.ts';
import { dayText } from '../../words/dates.ts';
import { notRecorded, runSheet } from '../../words/papers.ts';
import { airPaper as words } from '../../words/papers-air.ts';
import { ledger, section } from '../ledger.ts';
import { type MetersUsed, rowsOf } from './day.ts';

/** Meters in the order they were first used. */
export const metersUsed = (days: readonly AirDay[]): MetersUsed => [
  ...new Set(days.flatMap((day) => rowsOf(day).flatMap(({ body }) => body.meter ?? []))),
];

function meterRow(book: Book, id: string, used: readonly string[], i: number): string[] {
  const thing = book.registers.meter.get(id);
  const last = used.at(-1);
  if (!thing || last === undefined) return [String(i + 1), runSheet.unknownThing(id), notRecorded, notRecorded];
  const { label, principle, number, owner, calibrated } = stateAt(thing, last).body;
  const late = calibrated?.due !== undefined && calibrated.due < dayOf(last);
  return [
    String(i + 1),
    [label, principle, number].filter((text) => text !== undefined).join(', '),
    owner ?? notRecorded,
    calibrated
      ? [
          words.calibrated(dayText(calibrated.on), calibrated.by ?? ''),
          ...(calibrated.due === undefined ? [] : [words.due(dayText(calibrated.due))]),
          ...(late ? [words.late] : []),
        ].join('; ')
      : notRecorded,
  ];
}

/** Nothing where no reading names a meter. */
export function metersTable(book: Book, days: readonly AirDay[]): Content[] {
  const meters = metersUsed(days);
  if (meters.length === 0) return [];
  const usedAt = (id: string) => days.flatMap((day) => rowsOf(day).flatMap(({ body }) => (body.meter === id ? [body.from] : [])));
  return [
    section(words.meters),
    ...ledger(
      [
        { head: words.no, share: 6 },
        { head: words.meter, share: 36 },
        { head: words.owner, share: 18 },
        { head: words.calibration, share: 40 },
      ],
      meters.map((id, i) => ({ cells: meterRow(book, id, usedAt(id), i) })),
    ),
  ];
}
