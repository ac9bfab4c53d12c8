/** Names of answers in the entries of the working year. Each table holds every answer of its list; the types see to it. */
import type { plateMetals } from '../core/kinds/battery.ts';
import type { fedPlaces, feeds } from '../core/kinds/crushing.ts';
import type { transferThings } from '../core/kinds/leaving.ts';
import type { CircuitPart } from '../core/kinds/mercury.ts';
import type { plateDoings } from '../core/kinds/plate-work.ts';
import type { checkDueThings } from '../core/kinds/site-life.ts';
import type { CountWay, countScopes } from '../core/kinds/stock-take.ts';

type NameOf<T extends string> = Readonly<Record<T, string>>;

export const plateMetalNames: NameOf<(typeof plateMetals)[number]> = {
  copper: 'Copper',
  'silvered-copper': 'Silvered copper',
  muntz: 'Muntz metal',
  other: 'Another metal',
};

export const feedNames: NameOf<(typeof feeds)[number]> = {
  'whole-ore': 'Whole ore',
  concentrate: 'Concentrate',
  'water-only': 'Water only',
};
export const fedNames: NameOf<(typeof fedPlaces)[number]> = {
  none: 'None',
  plates: 'Onto the plates',
  mortar: 'Into the mortar box',
};
export const oreByNames: NameOf<'tally' | 'weighed'> = { tally: 'By tally', weighed: 'Weighed' };

export const circuitNames: NameOf<CircuitPart> = { mortar: 'Mortar box', plates: 'Plates', pan: 'Pan', trap: 'Traps' };
export const issueNames: NameOf<Exclude<CircuitPart, 'trap'> | 'vessel'> = {
  mortar: 'Mortar box',
  plates: 'Plates',
  pan: 'Pan',
  vessel: 'Another vessel',
};
export const wasteFromNames: NameOf<CircuitPart | 'vessel' | 'floor'> = {
  ...circuitNames,
  vessel: 'A vessel',
  floor: 'Floor and bench',
};

export const plateDoingNames: NameOf<(typeof plateDoings)[number]> = {
  set: 'Set with mercury',
  silvered: 'Silvered',
  scaled: 'Scaled',
  steamed: 'Steamed',
  stripped: 'Stripped',
  'taken-up': 'Taken up',
  sold: 'Sold',
};

export const wayNames: NameOf<'out' | 'in'> = { out: 'Out of this site', in: 'Into this site' };
export const thingNames: NameOf<(typeof transferThings)[number]> = {
  mercury: 'Mercury',
  amalgam: 'Amalgam',
  sponge: 'Sponge',
  bar: 'Bar',
  plate: 'Plate',
  waste: 'Waste or sweepings',
};
export const countsNames: NameOf<'disposal' | 'loss'> = {
  disposal: 'As handed over, with a known content',
  loss: 'As a loss',
};

export const foundNames: NameOf<'mercury' | 'residue'> = { mercury: 'Mercury', residue: 'Residue that holds mercury' };

export const yesNoNames: NameOf<'yes' | 'no'> = { yes: 'Yes', no: 'No' };
export const checkDueNames: NameOf<(typeof checkDueThings)[number]> = {
  'health-surveillance': 'Health surveillance',
  'respirator-fit': 'Fit test of a respirator',
  'extraction-test': 'Test of the extraction',
  extinguisher: 'Fire extinguisher',
  training: 'Training',
  other: 'Another check',
};
export const doneOrNotNames: NameOf<'yes' | 'no'> = { yes: 'Done', no: 'Not done' };

export const countNames: NameOf<CountWay> = {
  sealed: 'Sealed, and the seal stands',
  weighed: 'Weighed',
  estimated: 'Estimated',
  seen: 'There, not touched',
  unanswered: 'Could not be counted',
  empty: 'Empty: looked into',
  'not-found': 'Not found',
};
export const countScopeNames: NameOf<(typeof countScopes)[number]> = {
  whole: 'The whole: every place',
  part: 'A part',
};
