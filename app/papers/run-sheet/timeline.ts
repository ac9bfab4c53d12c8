/**
 * Each firing of the run along the clock: the drawing the window shows, in black and white, with what its marks mean, and a table of the same. What one
 * person breathed is not on it.
 */
import type { Content } from 'pdfmake/interfaces';
import type { Book } from '../../core/book/book.ts';
import { fireTimes } from '../../core/book/fire-times.ts';
import type { Run } from '../../core/book/runs.ts';
import { layTimeline, type TimelineDrawn } from '../../drawings/timeline-layout.ts';
import { timelineSvg } from '../../drawings/timeline-svg.ts';
import { momentText } from '../../words/dates.ts';
import { firingDrawn as words } from '../../words/firing-drawn.ts';
import { drawnFiring } from '../../words/firing-timeline.ts';
import { aside, ledger, section, sentence, small, textWidth } from '../ledger.ts';
import type { Frame } from '../paper.ts';
import { printableText } from '../printable.ts';

/** Units of the drawing over the width of the text: its letters come out at seven points. */
const drawingWidth = 900;
/** Points it may be high, so that its legend stands with it. */
const mostHigh = 430;

/** Letters of a row that might not stand on one page. */
const nearlyAPage = 1000;

/** The drawing with every text of it such that the font has its letters: what a picture writes is not reached by the paper's own look at its texts. */
function printed(drawn: TimelineDrawn, canPrint: Frame['canPrint']): TimelineDrawn {
  const safe = (text: string): string => printableText(text, canPrint);
  return {
    ...drawn,
    lanes: drawn.lanes.map((lane) => ({
      ...lane,
      note: safe(lane.note),
      spans: lane.spans.map((span) => ({ ...span, text: safe(span.text) })),
      marks: lane.marks.map((mark) => ({ ...mark, text: safe(mark.text) })),
    })),
    panels: drawn.panels.map((panel) => ({
      ...panel,
      lines: panel.lines.map((line) => ({ ...line, name: safe(line.name) })),
    })),
  };
}

/** Nothing where nothing was fired yet. */
export function firingsAlongTheClock(book: Book, run: Run, { canPrint }: Pick<Frame, 'canPrint'>): Content[] {
  const all = fireTimes(book, run);
  return all.flatMap((times, i) => {
    const { drawn, rows, rules } = drawnFiring(book, times);
    const title = all.length === 1 ? words.title : words.titleOf(i + 1, all.length);
    const day = momentText(times.span?.from ?? times.firing.reading.happened);
    const picture: Content[] = drawn
      ? [
          {
            svg: timelineSvg(layTimeline(printed(drawn, canPrint), drawingWidth), {
              title: words.chart(day),
              font: 'SourceSans3',
              legend: [],
              above: words.above,
            }),
            fit: [textWidth, mostHigh],
            margin: [0, 2, 0, 4],
          },
          small(words.legend.join(' ')),
        ]
      : [sentence(words.noTimes)];
    return [
      {
        stack: [{ ...(section(title) as object), headlineLevel: undefined } as Content, aside(words.note), ...picture],
        unbreakable: true,
      },
      ...rules.map(sentence),
      ...ledger(
        [
          { head: words.columns.when, share: 20 },
          { head: words.columns.what, share: 44 },
          { head: words.columns.said, share: 36 },
        ],
        rows.map(({ when, until, what, said }) => ({ cells: [until === '' ? when : words.fromTo(when, until), what, said] })),
        { breaking: rows.some(({ what, said }) => what.length + said.length > nearlyAPage) },
      ),
    ];
  });
}
