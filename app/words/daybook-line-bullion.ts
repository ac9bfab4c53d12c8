/** Sentences of assays and settlements: what was found as it was read, and never a fineness that nobody wrote. */
import type { Body } from '../core/kinds/index.ts';
import { type Asked, count, type Lines, parts, small } from './daybook-line-parts.ts';
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

export const bullionLines: Lines<'assay' | 'settlement'> = {
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
};
