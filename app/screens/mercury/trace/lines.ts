/** The trace of a movement as lines of a working: readings, scale, certificate, what makes the uncertainty, methods. It tells and reckons nothing. */
import type { Book } from '../../../core/book/book.ts';
import type { Trace, TracedSource, TracedWeight } from '../../../core/book/trace.ts';
import { uOf } from '../../../core/measured.ts';
import type { WorkingLine } from '../../../parts/working-line.ts';
import { dayText } from '../../../words/dates.ts';
import { entryName, writerOf } from '../../../words/daybook-naming.ts';
import { massAsRead, spaced } from '../../../words/daybook-weights.ts';
import { doubtSource } from '../../../words/doubts.ts';
import { gramsOf, massText, percentText, uText, withU } from '../../../words/figures.ts';
import { fieldText } from '../../../words/record-fields.ts';
import { basisFormulas, componentNames, componentSources, kindSources, traceWords as words } from '../../../words/trace.ts';
import { entryHref } from '../../shared/places.ts';

/** Sources told one by one; the others stand in one sum. */
const told = 12;

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** Finest uncertainty that is shown, micrograms. */
const finestUg = 100;
const standard = (ug: number): string =>
  ug < finestUg / 2 ? `u <\u00a0${massText(gramsOf(finestUg), 4)}` : `u ${uText(ug / 1e6)}`;

/** What was read. */
function readLines({ weight, entry }: TracedWeight): WorkingLine[] {
  const href = entryHref(entry);
  switch (weight.how) {
    case 'scale':
      return [
        {
          sort: 'reading',
          text: weight.tare === undefined ? words.reading : words.gross,
          figure: massAsRead(weight.gross),
          href,
        },
        ...(weight.tare === undefined
          ? []
          : [{ sort: 'reading' as const, text: words.tare, figure: massAsRead(weight.tare), href }]),
      ];
    case 'volume':
      return [{ sort: 'reading', text: words.volume(spaced(weight.volume), String(weight.temperatureC)), href }];
    case 'stated':
      return [{ sort: 'reading', text: words.stated(weight.by ?? ''), figure: massAsRead(weight.mass), href }];
  }
}

/** The scale as it stood then, and its certificate: number, days, who entered it. */
function scaleLines(book: Book, { weight, weighed: { scale } }: TracedWeight): WorkingLine[] {
  if (weight.how !== 'scale') return [];
  if (!scale) return [{ sort: 'note', text: words.noScale }];
  const { body, entry, from } = scale;
  const who = writerOf(book, book.current.byId.get(entry)?.entry.by ?? null, from) ?? words.nobody;
  const { certificate } = body;
  return [
    { sort: 'scale', text: words.scale(body.label, massAsRead(body.d)), href: entryHref(entry) },
    { sort: 'scale', text: words.scaleFrom(dayText(from), who) },
    ...(certificate
      ? [
          {
            sort: 'scale' as const,
            text: words.certificate(
              certificate.number ?? '',
              massAsRead(certificate.U),
              String(certificate.k ?? 2),
              massAsRead(certificate.at),
            ),
          },
          { sort: 'scale' as const, text: words.certificateDays(dayText(certificate.on ?? ''), dayText(certificate.due ?? '')) },
        ]
      : [{ sort: 'scale' as const, text: words.noCertificate }]),
  ];
}

/** One weight: its heading, and its lines from the reading to its net and the methods. */
export function weightLines(book: Book, weight: TracedWeight): readonly WorkingLine[] {
  const { components, weighed } = weight;
  const methods = [...new Set(components.map(({ kind }) => componentSources[kind]))];
  return [
    ...readLines(weight),
    ...scaleLines(book, weight),
    ...components.map(({ kind, uUg }): WorkingLine => ({ sort: 'formula', text: componentNames[kind], figure: standard(uUg) })),
    { sort: 'result', text: words.net, figure: withU(weighed.grams, weighed.uKnown ? uOf(weighed.net) / 1e6 : null) },
    ...methods.map((text): WorkingLine => ({ sort: 'source', text })),
  ];
}

/** The readings of several movements, each once: those of the entry itself, and those of others that it rests on. */
export function readingsOf(
  traces: readonly Trace[],
  entry: string,
): { readonly own: readonly TracedWeight[]; readonly others: readonly TracedWeight[] } {
  const all = new Map<string, TracedWeight>();
  for (const { weights } of traces) for (const weight of weights) all.set(`${weight.entry}:${weight.path}`, weight);
  const list = [...all.values()];
  return { own: list.filter((w) => w.entry === entry), others: list.filter((w) => w.entry !== entry) };
}

export const weightTitle = (book: Book, { entry, path }: TracedWeight, own: string): string => {
  const what = capital(fieldText(path));
  return entry === own ? words.weighing(what) : words.ofEntry(words.weighing(what), entryName(book, entry));
};

const shareText = (share: number): string => (share < 0.001 ? words.lessThan : percentText(share, 1));

function sourceLine(book: Book, { kind, name, entry, path, uUg, share }: TracedSource): WorkingLine {
  const what = doubtSource(book, { kind, of: entry ?? name.replace(/^[a-z ]+:/, ''), entry });
  const of = path === '' ? what : `${what}, ${fieldText(path.replace(/:temperature$/, ''))}`;
  return {
    sort: 'formula',
    text: words.source(of, shareText(share)),
    figure: standard(Math.abs(uUg)),
    ...(entry === null ? {} : { href: entryHref(entry) }),
  };
}

/** The amount: how it is known, and what makes its uncertainty. */
export function amountLines(book: Book, { movement, sources }: Trace): readonly WorkingLine[] {
  const { mercury, basis } = movement;
  const rest = sources.slice(told);
  const methods = [...new Set(sources.map(({ kind }) => kindSources[kind]))].filter((text) => text !== '');
  return [
    { sort: 'formula', text: basisFormulas[basis] },
    ...sources.slice(0, told).map((source) => sourceLine(book, source)),
    ...(rest.length === 0
      ? []
      : [
          {
            sort: 'formula' as const,
            text: words.others(rest.length),
            figure: standard(Math.sqrt(rest.reduce((s, { uUg }) => s + uUg ** 2, 0))),
          },
        ]),
    ...(sources.length === 0
      ? [{ sort: 'note' as const, text: words.exact }]
      : [
          {
            sort: 'formula' as const,
            text: words.sum,
            figure: `± ${uText((2 * uOf(mercury)) / 1e6)}`,
          },
        ]),
    {
      sort: 'result',
      text: words.amount,
      figure: withU(gramsOf(Math.round(mercury.ug)), sources.length === 0 ? null : uOf(mercury) / 1e6),
    },
    ...methods.map((text): WorkingLine => ({ sort: 'source', text })),
    ...(sources.length === 0 ? [] : [{ sort: 'source' as const, text: words.sumSource }]),
  ];
}
