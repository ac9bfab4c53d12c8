/**
 * What a retort run's numbers say, what usually lies behind them in the order to look, and what to weigh or check next. Written from practice.md
 * section 3; never a verdict on safety, and a gap is never called vapour.
 */
import type { FindingCode } from '../core/run.ts';
import { marked } from './notation.ts';

export interface FindingWords {
  /** What the numbers say. */
  readonly says: string;
  /** Likely causes, the likeliest first. */
  readonly causes: readonly string[];
  /** What to weigh or look at next, in order. */
  readonly next: readonly string[];
}

/** Causes and steps that some entries rule out. */
const water = {
  unweighed: 'Water in the charge that nobody weighed.',
  wetCharge: 'A wet charge whose water was not weighed.',
  inMercury: 'Water weighed with the mercury.',
  dryMercury: 'Dry the mercury and weigh it again.',
  wetAmalgam: 'The amalgam was wet or squeezed less than usual.',
  anyWet: 'Wet amalgam, or a wet lining or lute.',
  dryAmalgam: 'Dry the amalgam and weigh it again before the next charging.',
} as const;

/** Words of a finding by its code alone. Where the run is at hand, `findingFor` leaves out what its entries rule out. */
export const findingWords: Readonly<Record<FindingCode, FindingWords>> = {
  closes: {
    says: 'What came out weighs as much as what went in, within the uncertainty of the weighings.',
    causes: ['Nothing is missing that these scales could show; a scale cannot show what is in the air.'],
    next: [
      'Look at the sponge ratio as well: an under-fired charge closes too.',
      'Take an air reading as the site’s own rules have it.',
    ],
  },
  'within-band': {
    says: 'A little less came out than went in, no more than the band set for a run.',
    causes: [
      'Mercury held up in the condenser and its pipe.',
      water.unweighed,
      'Drops left in the receiver, on cloths or on gloves.',
    ],
    next: [
      'Brush pipe and condenser out and weigh what comes, or look at several runs together.',
      'Write a brushing out down in the register: from then on a gap can be put to the condenser’s book.',
    ],
  },
  'short-of-mercury': {
    says: 'Mercury is missing: the gap is larger than the band for a run, and larger than the weighings can explain as far as their uncertainty is known.',
    get causes() {
      return [
        'A leak at the lute or the lid, when the sponge ratio is as usual.',
        'More held up in the condenser or its pipe than before, or a pipe partly blocked.',
        water.wetCharge,
        'A ball missing from the charge, or one weighed in twice.',
        marked('A unit slip: troy against avoirdupois ounces are 1.097 apart.'),
      ];
    },
    next: [
      'Keep people away and take an air reading before anything is moved; follow the site’s own rules.',
      'Look for stain at lid and lute, with the retort cold.',
      'Weigh the receiver, the cloths and what can be brushed out of pipe and condenser.',
      'Hold each ball’s label against its weight at charging.',
      'Weigh sponge and mercury again on another scale.',
    ],
  },
  'more-out-than-in': {
    says: 'More came out than went in. That cannot be: a weight is wrong, or something from before came out with it.',
    causes: [
      water.inMercury,
      'The condenser gave up what it held from an earlier run.',
      'Older mercury was already in the receiver, or the tare is another vessel’s.',
      'Older metal was added to the charge and not written down.',
    ],
    next: [
      water.dryMercury,
      'Check the receiver’s tare.',
      'Judge this run together with those since the condenser was last brushed out.',
    ],
  },
  'heavy-sponge': {
    says: 'The sponge is heavier than this source usually leaves.',
    causes: [
      'It was not fired to the end, when the run closes: the sponge still holds mercury.',
      'Base metal in it (iron, copper, lead), when the cake is black or heavy after a second firing.',
      'Richer amalgam than usual: coarse gold, or squeezed harder or warm.',
    ],
    next: [
      'Treat the sponge as still holding mercury: do not melt it before a second firing in the closed retort.',
      'Note the colour of the cake and weigh it after the second firing.',
      'Hold the melt’s shrinkage and the base in the assay against it.',
    ],
  },
  'light-sponge': {
    says: 'The sponge is lighter than this source usually leaves.',
    causes: [
      water.wetAmalgam,
      'Gold was carried into pipe and condenser: fired too fast, or filled too high.',
      'Poorer amalgam than usual: fine gold, or much silver.',
      'Part of the sponge was left in the retort or not weighed.',
    ],
    next: [
      'Look into retort and pipe, once cold, for metal that rose or stuck.',
      'Strain the mercury and weigh what stays in the cloth.',
      'Compare the amount of mercury strained off this amalgam with earlier lots.',
    ],
  },
  'water-not-known': {
    says: 'Not all the water that came over was weighed, so the gap is mercury and water together and cannot be told apart.',
    causes: [water.anyWet],
    next: ['Weigh the water in the receiver apart from the mercury.', water.dryAmalgam],
  },
};

/** What the entries of a run say about water; true only where every charge or firing of it says so. */
export interface KnownOfRun {
  /** The charge was answered dry when weighed. */
  readonly dry: boolean;
  /** The water of every firing was weighed, or said to be none. */
  readonly waterWeighed: boolean;
  /** The mercury was weighed dry. */
  readonly mercuryDry: boolean;
  readonly firings: number;
}

/** Every text that an entry rules out, and what stands in its place; null: it is left out. */
const ruledOut = (known: KnownOfRun): ReadonlyMap<string, string | null> =>
  new Map<string, string | null>([
    ...(known.waterWeighed || known.dry ? [[water.wetCharge, null] as const] : []),
    ...(known.waterWeighed ? [[water.unweighed, null] as const] : []),
    ...(known.dry && !known.waterWeighed
      ? [[water.unweighed, 'Water that nobody weighed: the amalgam was dry, so out of the lining or the lute.'] as const]
      : []),
    ...(known.mercuryDry
      ? [[water.inMercury, null] as const, [water.dryMercury, 'Weigh the mercury again, on another scale.'] as const]
      : []),
    ...(known.dry
      ? [
          [water.wetAmalgam, 'The amalgam was squeezed less than usual.'] as const,
          [water.dryAmalgam, null] as const,
          [water.anyWet, 'A wet lining or lute: the amalgam was dry when weighed.'] as const,
        ]
      : []),
  ]);

/** The words of a finding for a run of which this is known: causes that its own entries rule out are left out. */
export function findingFor(code: FindingCode, known: KnownOfRun): FindingWords {
  const { says, causes, next } = findingWords[code];
  const out = ruledOut(known);
  const standing = (texts: readonly string[]) =>
    texts.flatMap((text) => {
      const instead = out.get(text);
      return instead === null ? [] : [instead ?? text];
    });
  const one = code === 'water-not-known' && known.firings === 1;
  return {
    says: one ? says.replace('Not all the water that came over was weighed', 'The water that came over was not weighed') : says,
    causes: standing(causes),
    next: standing(next),
  };
}
