/** Where the mercury went, as a page of a paper: drawn to scale and readable in black and white, and the same bands as a table. */
import type { Content } from 'pdfmake/interfaces';
import type { Period } from '../core/book/account.ts';
import type { Book } from '../core/book/book.ts';
import { type Flow, flowOf } from '../core/book/flow.ts';
import { layFlow } from '../drawings/flow-layout.ts';
import { flowSvg } from '../drawings/flow-svg.ts';
import { drawnFlow, flowEnds, flowShare, stayedSentence, stillName, stillSentence, flowWords as words } from '../words/flow.ts';
import { ugText, uText } from './amounts.ts';
import { ledger, section, sentence, small, textWidth } from './ledger.ts';

/** Units of the drawing over the width of the text: its letters come out at about seven points. */
const drawingWidth = 900;
/** Points the drawing may be high, so that it stands on one page with its heading. */
const mostHigh = 520;

/** The drawing and its table; a sentence where nothing stood or moved. */
export function flowDrawing(book: Book, period: Period): Content[] {
  const flow = flowOf(book, period);
  if (flow.bands.length === 0 && flow.still.length === 0) return [section(words.title), sentence(words.none)];
  if (flow.bands.length === 0)
    return [section(words.title), sentence(words.nothingMoved), sentence(stillSentence(flow)), ...table(flow)];
  const { places, runs } = drawnFlow(flow);
  const layout = layFlow(places, runs, drawingWidth);
  const thin = layout.runs.filter((run) => run.thin).length;
  const tones = new Set(runs.map(({ tone }) => tone));
  const means = (['plain', 'loss', 'gain', 'round'] as const).filter((tone) => tones.has(tone));
  return [
    {
      stack: [
        { ...(section(words.title) as object), headlineLevel: undefined } as Content,
        small(words.drawing),
        {
          svg: flowSvg(layout, { title: words.drawing, font: 'SourceSans3', scale: words.scale }),
          fit: [textWidth, mostHigh],
          margin: [0, 2, 0, 6],
        },
      ],
      // what stands together and is higher than a page would be left out without a word
      unbreakable: true,
    },
    small(`${words.fillings}: ${means.map((tone) => words.legendPrinted[tone]).join('; ')}.`),
    ...(thin > 0 ? [small(words.thin(thin))] : []),
    ...(flow.stayed.length > 0 ? [sentence(stayedSentence(flow))] : []),
    ...(flow.still.length > 0 ? [sentence(stillSentence(flow))] : []),
    small(words.net),
    ...table(flow),
  ];
}

/** Every band, and what stood still. */
const table = (flow: Flow): Content[] =>
  ledger(
    [
      { head: words.from, share: 26 },
      { head: words.to, share: 28 },
      { head: words.grams, share: 13, amount: true },
      { head: words.U, share: 13, amount: true },
      { head: words.shareOf, share: 9, amount: true },
      { head: words.count, share: 11 },
    ],
    [
      ...flow.bands.map((band) => {
        const entries = words.entries(new Set(band.movements.map((m) => m.entry)).size);
        return {
          cells: [
            ...flowEnds(flow, band),
            ugText(band.mercury.ug, 2),
            uText(band.mercury, true),
            flowShare(band.mercury.ug, flow.throughUg),
            band.balance ? words.balanceOf(entries) : entries,
          ],
        };
      }),
      ...flow.still.map((still) => ({
        cells: [
          stillName(still),
          words.still,
          ugText(still.mercury.ug, 2),
          uText(still.mercury, true),
          '',
          words.stillPlaces(still.places.length),
        ],
      })),
    ],
  );
