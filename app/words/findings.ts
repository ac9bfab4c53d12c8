/**
 * What a retort run's numbers say, what usually lies behind them in the order to look, and what to weigh or check next. Written from practice.md
 * section 3; never a verdict on safety, and a gap is never called vapour.
 */
import type { FindingCode } from '../core/run.ts';

export interface FindingWords {
  /** What the numbers say. */
  readonly says: string;
  /** Likely causes, the likeliest first. */
  readonly causes: readonly string[];
  /** What to weigh or look at next, in order. */
  readonly next: readonly string[];
}

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
      'Water in the charge that nobody weighed.',
      'Drops left in the receiver, on cloths or on gloves.',
    ],
    next: [
      'Book it against this retort’s condenser and look at several runs together.',
      'Brush the condenser out when its book passes what it has ever given.',
    ],
  },
  'short-of-mercury': {
    says: 'Mercury is missing: the gap is larger than the band for a run, and larger than the weighings can explain as far as their uncertainty is known.',
    causes: [
      'A leak at the lute or the lid, when the sponge ratio is as usual.',
      'More held up in the condenser or its pipe than before, or a pipe partly blocked.',
      'A wet charge whose water was not weighed.',
      'A ball missing from the charge, or one weighed in twice.',
      'A unit slip: troy against avoirdupois ounces are 1.097 apart.',
    ],
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
      'Water weighed with the mercury.',
      'The condenser gave up what it held from an earlier run.',
      'Older mercury was already in the receiver, or the tare is another vessel’s.',
      'Older metal was added to the charge and not written down.',
    ],
    next: [
      'Dry the mercury and weigh it again.',
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
      'The amalgam was wet or squeezed less than usual.',
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
    says: 'The water in at least one firing was not weighed, so the gap is mercury and water together and cannot be told apart.',
    causes: ['Wet amalgam, or a wet lining or lute.'],
    next: [
      'Weigh the water in the receiver apart from the mercury.',
      'Dry the amalgam and weigh it again before the next charging.',
    ],
  },
};
