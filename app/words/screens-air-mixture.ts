/** Texts of the planning page on several substances in one air. The sum is no verdict: which substances add up is for licensed people. */
import { marked, markName } from './notation.ts';

export const airMixture = {
  intro:
    'At a retort there may be more in the air than mercury: carbon monoxide, acid fume, dust. For substances that add up in what they do to people, each is put over its own limit and the shares are summed; a sum over 1 is over the limit of the mixture. Whether these add up at all is for people licensed for it to say, and so is what follows.',
  substance: (n: number) => `Substance ${n}`,
  of: (n: number, label: string) => `${n}. ${label}`,
  name: 'What it is',
  amount: 'In the air',
  limit: 'Its limit',
  limitHint:
    'Each limit in the same unit and over the same time as the figure beside it. No limit is filled in: take it from its paper.',
  another: 'One more substance',
  fewer: 'Take the last one away',
  get notAmount() {
    return `This is no amount: write digits with at most one ${markName()}, and nothing below zero, such as ${marked('0.5')}.`;
  },
  sum: 'Sum of the shares',
  /** How the exact sum stands to 1, whatever its rounded figure says. */
  sumHow: { '-1': 'under 1, the limit of the mixture', 0: '1, the limit of the mixture', 1: 'over 1, the limit of the mixture' },
  shareHow: (amount: string, limit: string) => `${amount} / ${limit}`,
  assumes: [
    'The substances add up in what they do. Where they do not, each is held against its own limit alone; where one makes another worse, this sum is too low.',
    'Form of the sum: 29 CFR 1910.1000 (d)(2)(i). Other places write it otherwise, or have no such rule.',
    'A figure below the meter’s reach goes in as what the meter can tell at least, not as nothing.',
    'A sum under 1 is a sum under 1. It calls no air fit to breathe.',
  ],
} as const;
