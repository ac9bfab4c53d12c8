/** The drawing of a day's air on a paper: the one the window shows, in black and white, with what its marks mean; the table above it says the same. */
import type { Content } from 'pdfmake/interfaces';
import type { AirDay } from '../../core/book/air-days.ts';
import type { Book } from '../../core/book/book.ts';
import { layAirDay } from '../../drawings/air-day-layout.ts';
import { airDaySvg } from '../../drawings/air-day-svg.ts';
import { drawnAirDay, airDrawnWords as words } from '../../words/air-drawn.ts';
import { marked } from '../../words/notation.ts';
import { part, small, textWidth } from '../ledger.ts';
import type { Frame } from '../paper.ts';
import { printableText } from '../printable.ts';

/** Units of the drawing over the width of the text: its letters come out at seven points. */
const drawingWidth = 900;

/** Nothing where the day has no length to be drawn over. */
export function airDrawing(book: Book, day: AirDay, { canPrint }: Pick<Frame, 'canPrint'>): Content[] {
  if (day.lengthMinutes <= 0) return [];
  const { drawn } = drawnAirDay(book, day);
  // what the picture writes is not reached by the paper's own look at its texts
  const lines = drawn.lines.map((line) => ({ ...line, name: printableText(line.name, canPrint) }));
  const layout = layAirDay({ ...drawn, lines }, drawingWidth, marked);
  return [
    {
      stack: [
        { ...(part(words.chart) as object), headlineLevel: undefined } as Content,
        { svg: airDaySvg(layout, { title: words.chart, font: 'SourceSans3' }), fit: [textWidth, 300], margin: [0, 2, 0, 4] },
        small(words.legend.join(' ')),
      ],
      unbreakable: true,
    },
  ];
}
