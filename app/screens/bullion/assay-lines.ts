/**
 * One assay laid open: every weighing as read, the correction, each replicate, each term of the uncertainty, and in words what the result cannot be. All
 * figures are the core's; nothing is reckoned twice here. Source: methods.md 5.2 to 5.5.
 */
import type { AssayRead, Fineness } from '../../core/book/assays.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import type { Ratio } from '../../core/ratio.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { otherMetalNames, samplingNames } from '../../words/daybook-names-bullion.ts';
import { massAsRead } from '../../words/daybook-weights.ts';
import { decimalText } from '../../words/figures.ts';
import { commonWords } from '../../words/papers-common.ts';
import { assayWords as words } from '../../words/screens-bullion-assay.ts';
import { ratioText, uOfParts } from './figures.ts';

const permille = (value: Ratio | null | undefined, places = 3): string => (value ? `${ratioText(value, places)}\u00a0‰` : '');
const milligrams = (value: Ratio): string => `${ratioText({ n: value.n * 1000n, d: value.d }, 4, true)}\u00a0mg`;
const line = (sort: WorkingLine['sort'], text: string, figure = ''): WorkingLine => ({ sort, text, figure });

/** What a source of error is called: the last part of its name. */
export function termName(source: string): string {
  const [kind, , ...rest] = source.split(':');
  if (kind === 'sampling') return words.terms.sampling ?? '';
  return words.terms[kind === 'assay' ? rest.join(':') : 'other'] ?? words.terms.other ?? '';
}

const uText = (u: number): string => `${decimalText(decimalFromNumber(Math.abs(u)), 4)}\u00a0‰`;

/** The terms of one metal, each by itself, and their sum. */
function termLines(f: Fineness, total: string): WorkingLine[] {
  return [
    ...[...f.parts].map(([source, u]) => line('note', termName(source), uText(u))),
    ...(f.samplingKnown ? [] : [line('note', words.noSampling)]),
    f.uKnown ? line('result', total, uText(uOfParts(f.parts))) : line('note', words.uNotKnown),
  ];
}

function readings({ reading }: AssayRead): WorkingLine[] {
  const { body } = reading;
  switch (body.method) {
    case 'fire-assay':
      return [
        ...body.replicates.flatMap(({ sample, cornet, bead }, i) => [
          line('reading', words.sample(i + 1, massAsRead(sample), massAsRead(cornet))),
          ...(bead === undefined ? [] : [line('reading', words.sampleBead(i + 1, massAsRead(bead)))]),
        ]),
        ...(body.proofs ?? []).flatMap(({ taken, found, silverLoss }, i) => [
          line('reading', words.proof(i + 1, massAsRead(taken), massAsRead(found))),
          ...(silverLoss === undefined ? [] : [line('reading', words.proofLoss(i + 1), massAsRead(silverLoss))]),
        ]),
      ];
    case 'titration':
      return body.titrations.map(({ sample, volumeMl, normality }, i) =>
        line('reading', words.titration(i + 1, massAsRead(sample), volumeMl, normality)),
      );
    case 'density':
      return [line('reading', words.air(massAsRead(body.air))), line('reading', words.water(massAsRead(body.water)))];
    case 'outside':
      return body.certificate === undefined ? [] : [line('reading', words.certificate(body.certificate))];
  }
}

function worked({ fire, density, reading }: AssayRead): WorkingLine[] {
  const { body } = reading;
  if (fire)
    return [
      ...(fire.delta ? [line('formula', words.delta, milligrams(fire.delta))] : []),
      ...fire.gold.map((g, i) => line('formula', words.each(i + 1), permille(g))),
      ...(fire.range && fire.gold.length > 1 ? [line('formula', words.range, permille(fire.range))] : []),
      ...(body.limit === undefined ? [] : [line('note', words.limit(body.limit))]),
      ...(fire.delta ? [line('formula', words.uncorrected, permille(fire.uncorrectedMean))] : []),
      ...(fire.surcharge ? [line('formula', words.surcharge, `${ratioText(fire.surcharge, 4, true)}\u00a0‰`)] : []),
    ];
  if (density && body.method === 'density')
    return [
      ...(density.density ? [line('formula', words.density, `${ratioText(density.density, 4)}\u00a0g/cm³`)] : []),
      line('note', words.second(commonWords.small(otherMetalNames[body.other]))),
    ];
  return [];
}

/** Everything an assay comes to, line by line. */
export function assayLines(assay: AssayRead): readonly WorkingLine[] {
  const { gold, silver, mercury, fire, reading } = assay;
  const { sampling, method } = reading.body;
  const taken = sampling && [samplingNames[sampling.method], sampling.positions ?? ''].filter((t) => t !== '').join(', ');
  return [
    ...readings(assay),
    ...(taken === undefined ? [] : [line('note', taken)]),
    ...worked(assay),
    line('source', words.method[method]),
    ...(gold ? [line('result', words.gold, permille(gold.permille)), ...termLines(gold, words.total)] : []),
    ...(silver
      ? [
          line('result', fire ? words.silver : words.silverTitrated, permille(silver.permille)),
          ...termLines(silver, words.totalSilver),
        ]
      : []),
    ...(fire?.base ? [line('result', words.base, permille(fire.base))] : []),
    ...(mercury ? [line('result', words.mercury, permille(mercury.permille))] : []),
  ];
}

/** What the result cannot be or does not say, in words. */
export function assayDoubts({ over1000, apart, class: known, fire, density, reading }: AssayRead): readonly string[] {
  const { problems } = words;
  return [
    ...(over1000 ? [problems.over] : []),
    ...(apart === true ? [problems.apart(reading.body.limit ?? '')] : []),
    ...(known === 'unproofed' ? [problems.noProofs] : []),
    ...(fire?.findings.includes('no-silver-loss') ? [problems.noLoss] : []),
    ...(density?.findings ?? []).map((f) => (f === 'denser-than-gold' ? problems.denser : problems.lighter)),
    ...(known === 'indicative' ? [words.indicativeSays] : []),
  ];
}
