/**
 * Runs of periods on the account's paper: the counted periods up to its end one after the other, drawn and in a table, and what Page's test says of
 * them. Left out while there are fewer than three. The false alarm is the one chosen with the last closing, else the site's own, else the starting value, and says which.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Period } from '../../core/book/account.ts';
import type { Book } from '../../core/book/book.ts';
import { upToEnd } from '../../core/book/period.ts';
import { leastInRow, periodsInRow, sequenceUpTo } from '../../core/book/periods-in-row.ts';
import { sequenceOf } from '../../core/book/sequence.ts';
import { startingAlarm } from '../../core/book/site-figures.ts';
import { layTrend } from '../../drawings/trend-layout.ts';
import { trendSvg } from '../../drawings/trend-svg.ts';
import { marked } from '../../words/notation.ts';
import { alarmText, drawnTrend, sequenceCells, verdictText, sequenceWords as words } from '../../words/sequence.ts';
import { ledger, section, sentence, small, textWidth } from '../ledger.ts';

/** The table, the drawing and the verdict; nothing where there are fewer than three counted periods. */
export function sequenceSection(book: Book, period: Period): Content[] {
  const chosen = book.current.of('closing').findLast((r) => r.body.falseAlarm !== undefined && upToEnd(r.happened, period))
    ?.body.falseAlarm;
  const set = book.current.of('site-figures').findLast((r) => upToEnd(r.happened, period))?.body.falseAlarm?.value;
  const falseAlarm = chosen ?? set ?? startingAlarm;
  const sequence = sequenceUpTo(sequenceOf(book, { basis: 'as-known-today' }), period, falseAlarm);
  const rows = periodsInRow(book, sequence);
  if (rows.length < leastInRow) return [];
  const { test } = sequence;
  const drawn = drawnTrend(rows, test);
  const layout = layTrend(
    drawn.panels,
    drawn.columns.map((c) => c.name),
    900,
    marked,
  );
  return [
    {
      stack: [
        { ...(section(words.title) as object), headlineLevel: undefined } as Content,
        small(words.intro),
        sentence(verdictText(rows, test)),
        small(
          `${words.chosen(alarmText(falseAlarm), rows.length, sequence.basis)} ${words.alarmFrom(alarmText(falseAlarm), chosen !== undefined ? 'closing' : set !== undefined ? 'site' : 'start')}`,
        ),
        {
          svg: trendSvg(layout, { title: words.chart, font: 'SourceSans3' }),
          fit: [textWidth, 420],
          margin: [0, 4, 0, 6],
        },
        small(words.legend.join(' ')),
      ],
      unbreakable: true,
    },
    ...ledger(
      [
        { head: words.columns.opening, share: 17 },
        { head: words.columns.closing, share: 17 },
        { head: words.columns.difference, share: 16 },
        { head: words.columns.z, share: 6, amount: true },
        { head: words.columns.cumulative, share: 16 },
        { head: words.columns.page, share: 10 },
        { head: words.columns.usual, share: 18 },
      ],
      rows.map((row, i) => {
        const cells = sequenceCells(row, test, i);
        // a day of a long month is broken between its words
        const [opening, closing] = [cells.opening, cells.closing].map((day) => day.replaceAll('\u00a0', ' '));
        return { cells: [opening ?? '', closing ?? '', cells.difference, cells.z, cells.cumulative, cells.page, cells.usual] };
      }),
    ),
    ...words.meansList.map((text) => small(text)),
    small(words.method),
  ];
}
