/** Words for what a reckoning refuses. */
import type { ProblemTexts } from './problems.ts';

export const reckoningProblems: ProblemTexts = {
  topic: (d) => `There is no reckoning called “${d.name}”: choose one of ${d.topics}.`,
  'below-zero': () => 'This cannot be below zero: check the sign.',
  'u-below-zero': () => 'A standard uncertainty cannot be below zero: give its size, or leave it out if it is not known.',
  'fineness-range': () =>
    'Fineness is in parts per thousand and runs from 0 to 1000: a figure in per cent is multiplied by 10, carats by 1000/24.',
  'not-liquid': (d) =>
    `Mercury is a liquid only from ${d.from} to ${d.to} °C, so this temperature cannot belong to a measured volume: read it again.`,
  'certificate-load': () =>
    'A certificate’s uncertainty says nothing without the load it was found at: give certificate_at, or leave certificate_U out.',
  'charge-of-nothing': () => 'The charge weighs nothing, so no run can be judged: weigh in what went into the retort.',
  'no-firing': () => 'A run needs at least one firing: give the sponge and the mercury of each.',
  'sponge-over-charge': () =>
    'The sponge is heavier than the whole charge, which a retort cannot do: check both weights and their units, and whether older metal was added.',
  'decimal-text': (d) => `“${d.read}” is not plain decimal text: write digits with at most one point and no exponent or comma.`,
  places: (d) => `Places are a whole number from 0 to ${d.most}.`,
  'places-and-step': () => 'Both places and a step are given, and they could contradict each other: keep one of them.',
  'places-or-step': () => 'Nothing says what to round to: give either places or a step.',
};
