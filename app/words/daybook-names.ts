/** Names of the answers in entries of work, as people read them. */
import type { chargeKinds } from '../core/kinds/charge.ts';
import type { cleanUpTypes, LotSource, LotState } from '../core/kinds/clean-up.ts';
import type { spongeColours } from '../core/kinds/firing.ts';
import type { receiptWays } from '../core/kinds/receipt.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const wayNames: NameOf<(typeof receiptWays)[number]> = {
  bought: 'Bought',
  given: 'Given',
  'already-here': 'Already here when the book began',
  'moved-in': 'Moved in from another site',
};

export const cleanUpNames: NameOf<(typeof cleanUpTypes)[number]> = {
  routine: 'Routine',
  mid: 'Middle of the campaign',
  general: 'General',
  final: 'Final',
};

export const lotStateNames: NameOf<LotState> = {
  'scraped-wet': 'Scraped, wet',
  drained: 'Drained',
  squeezed: 'Squeezed',
  dried: 'Dried',
};

export const lotSourceNames: NameOf<LotSource> = {
  'inside-plate': 'Inside plate',
  'outside-plate': 'Outside plate',
  mortar: 'Mortar box',
  trap: 'Trap',
  pan: 'Pan',
  concentrate: 'Concentrate',
  scale: 'Plate scale',
  floor: 'Floor',
  several: 'Several places',
};

export const chargeKindNames: NameOf<(typeof chargeKinds)[number]> = {
  amalgam: 'Amalgam',
  mercury: 'Mercury to be cleaned',
  residues: 'Residues',
};

export const takeNames: NameOf<'whole' | 'part' | 'not-found' | 'unwritten'> = {
  whole: 'The whole lot',
  part: 'Part of a lot',
  'not-found': 'Not found',
  unwritten: 'Clean-up not written up yet',
};

export const otherNames: NameOf<'cake' | 'mercury' | 'residue'> = {
  cake: 'An earlier cake',
  mercury: 'Mercury',
  residue: 'Residue',
};

export const colourNames: NameOf<(typeof spongeColours)[number]> = {
  yellow: 'Yellow',
  grey: 'Grey',
  white: 'White',
  black: 'Black',
};

export const mercuryStateNames: NameOf<'dry' | 'wet' | 'unknown'> = { dry: 'Dry', wet: 'Wet', unknown: 'Not known' };

export const answerNames: NameOf<'yes' | 'no' | 'na'> = { yes: 'Yes', no: 'No', na: 'Does not apply here' };

export const accuracyNames: NameOf<'I' | 'II' | 'III' | 'IIII'> = { I: 'I', II: 'II', III: 'III', IIII: 'IIII' };
