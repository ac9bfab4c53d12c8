/** Words for what a reckoning refuses. */
import { marked, notation } from './notation.ts';
import type { ProblemTexts } from './problems.ts';
import { degreesText, temperatureText } from './temperatures.ts';

export const reckoningProblems: ProblemTexts = {
  topic: (d) => `There is no reckoning called “${d.name}”: choose one of ${d.topics}.`,
  'two-product-order': () =>
    'The three assays do not stand in order: the concentrate must be above the feed, the feed above the tail, and none below zero. Look whether two were swapped.',
  'below-zero': () => 'This cannot be below zero: check the sign.',
  'u-below-zero': () => 'A standard uncertainty cannot be below zero: give its size, or leave it out if it is not known.',
  'fineness-range': () =>
    'Fineness is in parts per thousand and runs from 0 to 1000: a figure in per cent is multiplied by 10, carats by 1000/24.',
  'not-liquid': (d) =>
    `Mercury is a liquid only from ${degreesText(d.from ?? '')} to ${temperatureText(d.to ?? '')}, so this temperature cannot belong to a measured volume: read it again.`,
  'certificate-load': () =>
    'A certificate’s uncertainty says nothing without the load it was found at: give certificate_at, or leave certificate_U out.',
  'charge-weighs-nothing': () => 'The charge weighs nothing, so no run can be judged: weigh in what went into the retort.',
  'no-firing': () => 'A run needs at least one firing: give the sponge and the mercury of each.',
  'sponge-over-charge': () =>
    'The sponge is heavier than the whole charge, which a retort cannot do: check both weights and their units, and whether older metal was added.',
  'decimal-text': (d) =>
    notation().decimal === 'comma'
      ? 'This is not plain decimal text: write digits with at most one comma for decimals, no exponent and no point.'
      : `“${d.read}” is not plain decimal text: write digits with at most one point and no exponent or comma.`,
  places: (d) => `Places are a whole number from 0 to ${d.most}.`,
  'places-and-step': () => 'Both places and a step are given, and they could contradict each other: keep one of them.',
  'places-or-step': () => 'Nothing says what to round to: give either places or a step.',

  'between-below-repeat': () =>
    'The scatter between laboratories holds the scatter within one, so it cannot be the smaller: check that the two were not exchanged.',
  'old-number': (d) => `“${d.read}” is not a number as old books print one: write 2, 2.5, 2 1/2 or 2½, as text.`,
  'carat-grains': () => 'A carat of an assay has 4 grains: write grains below 4, and carry the rest into carats.',
  'quarters-twice': () => 'The grains already have a fraction: give the quarters in one place only.',
  'carats-range': () =>
    'Fine gold is 24 carats, and standard is 22: better ends at 2 carats, worse at 22, and carats alone at 24. Check the side and the figures.',
  'old-money': (d) => `“${d.read}” is not pounds, shillings and pence: write £3 17s 10½d, 3 17 10 1/2, 9s 4d or 16d.`,
  'old-money-two': (d) =>
    `“${d.read}” may be pounds and shillings, shillings and pence, or a decimal: write the signs, as in £3 17s or 3s 6d.`,
  'old-money-carry': (d) =>
    `In “${d.read}” the shillings pass 19 or the pence pass 11 beside a larger coin: read the figures again.`,
  'price-of-what': () =>
    'A price needs what it is the price of: an ounce as weighed, a standard ounce (22 carats) or a fine ounce.',
  'fineness-missing': () =>
    'A standard or a fine ounce is counted by fineness: give gold_permille or the assay, or take the price as that of an ounce as weighed.',
  'fineness-twice': () => 'Fineness is given twice and could contradict itself: keep the assay or gold_permille.',
  'fineness-not-asked': () =>
    'An ounce as weighed is counted whatever it holds: take the fineness off, or name a standard or fine ounce.',
  'fineness-of-nothing': () => 'There is a fineness and no weight it belongs to: give the mass, or take the fineness off.',

  'cornet-over-sample': () => 'The gold weighs more than the sample it came from, which no assay can do: check both weights.',
  'vapour-range': (d) =>
    `The vapour of liquid mercury is known from ${degreesText(d.from ?? '')} to ${temperatureText(d.to ?? '')}: check the temperature.`,
  'above-saturation': (d) =>
    `Air at this temperature cannot hold more than ${marked(String(d.saturated))} mg/m³: check the figure, its unit (µg and mg are a thousand apart) and the temperature.`,
  'mixing-below-one': () => 'The mixing factor runs from 1 (perfect) upward: a room cannot mix better than perfectly.',
  'clock-time': () => 'A time is written as 07:00, or as 04:00+13:00 with its offset from Greenwich.',
  'offset-on-all': () =>
    'An offset from Greenwich stands on every time or on none, otherwise hours get lost: add it here or take it off the others.',
  'no-time': () => 'It ends at the moment it began: correct one of the two times.',
  overlap: () => 'This reading overlaps another one, so an hour would count twice: correct the times.',
  'outside-shift': () => 'This reading lies outside the shift: correct its times or the shift’s.',
  'over-a-day': () => 'This takes more than 24 hours: check the days and times, or split it into two days.',
  'max-below-mean': () => 'The highest value is below the mean of the same reading: check both.',
  'low-above-high': () => 'The lower figure is above the higher one: check both.',
  'group-not-given': (d) =>
    `No shared uncertainty is given for the group “${d.name}”: add it under groups, or take the group off this item.`,
  'seal-unequal': (d) =>
    `The seal “${d.seal}” stands with two different weights, and an unbroken seal cannot change its weight: correct one, or treat the flask as opened.`,
  'chance-range': () => 'The chance of a false alarm lies between 0 and 1, without the ends.',
  'how-many': (d) => `There should be ${d.wanted} values here, and there are ${d.got}: one for each, in the same order.`,
  'no-periods': () => 'There is no period to look at: give at least one difference.',
  'not-positive-definite': () =>
    'With these uncertainties some sum of the periods would be known without any error at all, so no test can be made: give every stock or every throughput an uncertainty above zero.',
  'name-not-given': (d) => `There is no reading called “${d.name}”: check the spelling against names.`,
  'name-twice': (d) => `“${d.name}” names two readings: give each its own name.`,
  'no-readings-named': () => 'There is nothing to reconcile: name at least one reading.',
  'u-zero': () => 'A reading without any uncertainty cannot be weighed against the others: give its standard uncertainty.',
  'no-constraint': () => 'Nothing says how the readings should agree: give at least one constraint.',
  'empty-constraint': () => 'This constraint holds for any readings: give at least one coefficient that is not zero.',
  'not-resolvable': () => 'These constraints are too nearly the same to be told apart: leave one of them out.',
};
