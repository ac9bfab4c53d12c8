/** Sentences of assays and settlements: what was found as it was read, and never a fineness that nobody wrote. */
import type { Body } from '../core/kinds/index.ts';
import { type Asked, count, type Lines, list, parts, small } from './daybook-line-parts.ts';
import { methodNames, otherMetalNames, resultUnitNames, settlementRuleNames, subjectNames } from './daybook-names-bullion.ts';
import { massAsRead } from './daybook-weights.ts';

function which(body: Body<'assay'>, { name }: Asked): string {
  const { bar, charge, parcel, vessel, which: said } = body;
  const named =
    bar !== undefined
      ? name('bar', bar)
      : charge !== undefined
        ? name('charge', charge)
        : parcel !== undefined
          ? name('parcel', parcel)
          : vessel !== undefined
            ? name('vessel', vessel)
            : (said ?? '');
  return named === '' ? '' : ` (${named})`;
}

function found(body: Body<'assay'>): string {
  switch (body.method) {
    case 'fire-assay':
      return `${count(body.replicates.length, 'sample', 'samples')}, ${
        body.proofs === undefined || body.proofs.length === 0 ? 'no proofs' : count(body.proofs.length, 'proof', 'proofs')
      }`;
    case 'titration':
      return count(body.titrations.length, 'titration', 'titrations');
    case 'density':
      return `${massAsRead(body.air)} in air, ${massAsRead(body.water)} in water, the rest taken as ${small(otherMetalNames[body.other])}`;
    case 'outside': {
      const { unit, gold, silver, mercury } = body.result;
      const metals = [
        gold === undefined ? '' : `gold ${gold}`,
        silver === undefined ? '' : `silver ${silver}`,
        mercury === undefined ? '' : `mercury ${mercury}`,
      ].filter((t) => t !== '');
      return `${metals.join(', ')} ${small(resultUnitNames[unit])}`;
    }
  }
}

function metalFound(metal: string, found: Body<'out-turn'>['gold']): string {
  if (found === undefined) return '';
  const { permille, fine } = found;
  const says = [
    permille === undefined ? '' : `${permille} parts per thousand`,
    fine === undefined ? '' : `${massAsRead(fine)} fine`,
  ].filter((t) => t !== '');
  return says.length === 0 ? '' : `${metal} ${says.join(', ')}`;
}

export const bullionLines: Lines<'assay' | 'settlement' | 'bar-kept' | 'out-turn'> = {
  assay: (body, asked) =>
    parts(
      `${subjectNames[body.subject]}${which(body, asked)} assayed: ${small(methodNames[body.method])}`,
      found(body),
      body.laboratory !== undefined && `by ${body.laboratory}`,
      body.method === 'outside' && body.certificate !== undefined && `certificate ${body.certificate}`,
    ),
  settlement: ({ bar, site, other, limit, rule, umpire, contract }, { name }) =>
    parts(
      `${name('bar', bar)} settled: ours ${site}, theirs ${other} parts of gold per thousand, splitting limit ${limit}`,
      umpire === undefined ? 'no umpire' : `umpire ${umpire}`,
      `beyond the limit: ${small(settlementRuleNames[rule])}`,
      contract !== undefined && `contract ${contract}`,
    ),
  // the sentence stands in lists and on papers that anybody may read: it tells no place
  'bar-kept': ({ bar, seal }, { name }) =>
    parts(`${name('bar', bar)} put where it is kept`, seal !== undefined && `seal ${seal}`),
  'out-turn': ({ transfers, received, melted, gold, silver, document }, { name, net }) =>
    parts(
      `Out-turn of ${list(transfers.map((id) => small(name('transfer', id))))}`,
      received !== undefined && `received ${net(received)}`,
      melted !== undefined && `melted ${net(melted)}`,
      metalFound('gold', gold),
      metalFound('silver', silver),
      document !== undefined && `document ${document}`,
    ),
};
