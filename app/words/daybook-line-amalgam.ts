/** Sentences of cleaning, squeezing, plate work, a charge taken apart and a melt. */
import type { Weight } from '../core/shapes.ts';
import { type Asked, count, type Lines, list, lotsText, parts, small } from './daybook-line-parts.ts';
import { circuitNames, plateDoingNames } from './daybook-names-year.ts';
import { massAsRead } from './daybook-weights.ts';

type Kinds = 'cleaning' | 'squeeze' | 'plate-work' | 'unmake' | 'melt';

const named = (lots: readonly string[], { name }: Asked): string =>
  lots.length > 4 ? count(lots.length, 'lot', 'lots') : list(lots.map((id) => name('lot', id)));

type Strained = { readonly weight: Weight; readonly vessel: string } | undefined;
const strainedText = (strained: Strained, { name, net }: Asked) =>
  strained && `mercury strained off ${net(strained.weight)} into ${name('vessel', strained.vessel)}`;

export const amalgamLines: Lines<Kinds> = {
  cleaning: ({ lots = [], dirty, added, made, strained, skimmings, iron }, asked) => {
    const { name, net } = asked;
    const inside = [
      lots.length === 0 ? '' : named(lots, asked),
      dirty ? `${net(dirty.weight)} from ${small(circuitNames[dirty.from])}` : '',
    ].filter((t) => t !== '');
    return parts(
      `Amalgam cleaned${inside.length === 0 ? '' : `: ${list(inside)}`}${
        added ? `, with ${net(added.weight)} of mercury from ${name('vessel', added.vessel)}` : ''
      }`,
      made.length === 0 ? 'no lot made' : lotsText(made, net),
      strainedText(strained, asked),
      skimmings && `skimmings ${net(skimmings.weight)}`,
      iron && `magnet iron ${net(iron.weight)}`,
    );
  },
  squeeze: ({ lots, made, strained, through }, asked) =>
    parts(
      `${named(lots, asked)} squeezed${through === undefined ? '' : ` through ${through}`}: ${lotsText(made, asked.net)}`,
      strainedText(strained, asked),
    ),
  'plate-work': ({ plate, what, held, holds, applied, made = [] }, { name, net }) =>
    parts(
      `${name('plate', plate)} ${small(plateDoingNames[what])}`,
      applied && `${net(applied.weight)} of mercury put on from ${name('vessel', applied.vessel)}`,
      made.length > 0 && lotsText(made, net),
      held && `thought to have held ${massAsRead(held.mass)} (${held.method})`,
      holds && `thought to hold ${massAsRead(holds.mass)} now (${holds.method})`,
    ),
  unmake: ({ charge, why }, { name }) => `${name('charge', charge)} taken apart before it was fired: ${why}`,
  melt: ({ sponges, added = [], slags = [], bars, samples = [], prills, slag }, { name, net }) => {
    const [only] = sponges;
    const sponge =
      sponges.length === 0
        ? ''
        : only && sponges.length === 1
          ? `sponge (${name('charge', only.charge)})`
          : `sponge of ${sponges.length} charges`;
    const metal = added.length === 0 ? '' : `${net(...added.map((a) => a.weight))} of added metal`;
    return parts(
      `Melted: ${list([sponge, metal, slags.length === 0 ? '' : 'old slag'].filter((t) => t !== ''))}`,
      bars.length === 0
        ? 'no bar poured'
        : `${count(bars.length, 'bar', 'bars')}${bars.length > 4 ? '' : ` (${bars.map((b) => b.label).join(', ')})`}, ${net(...bars.map((b) => b.weight))}`,
      samples.length > 0 && `${count(samples.length, 'sample', 'samples')}, ${net(...samples.map((s) => s.weight))}`,
      prills && `prills ${net(prills)}`,
      slag && `slag ${net(slag)}`,
    );
  },
};
