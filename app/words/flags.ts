/** Flags in plain words: a true but awkward fact, and what to do about it. */

import type { Flag, FlagCode } from '../core/book/flags.ts';
import { decimalFromNumber, decimalFromText, zero } from '../core/decimal.ts';
import { shownText } from './air-figures.ts';
import { dayText, momentText } from './dates.ts';
import { exactMass } from './daybook-weights.ts';
import { decimalText, gramText, massUnit } from './figures.ts';
import { marked } from './notation.ts';
import { checkText } from './run-checks.ts';
import { temperatureText } from './temperatures.ts';

type Data = Flag['data'];

const asShown = (d: Data) => ({ shows: String(d.shows), unit: d.unit === 'ug/m3' ? 'ug/m3' : 'mg/m3' }) as const;

const texts: Readonly<Record<FlagCode, (d: Data) => string>> = {
  'lot-not-found': (d) =>
    `“${d.label}” was not found at charging. It stays on the book as missing until it turns up: search, tell the safety officer, and write down what came of it.`,
  'lot-charged-twice': (d) =>
    `“${d.label}” stands in two charges. It can only have gone into one: correct the charge it was not in.`,
  'lot-drift': (d) =>
    `“${d.label}” weighed ${gramText(Number(d.ug), { sign: true })} against its label. ${Number(d.ug) > 0 ? 'A ball does not gain by lying: check the label, look for water, and ask whether two balls were mixed up.' : 'A small loss by drying is usual; this is more: weigh it again and check the label.'}`,
  'lot-unwritten': (d) =>
    `“${d.label}” was charged before its clean-up was written up: write the clean-up, then correct this charge to name its lot.`,
  'part-over-lot': (d) => `The part taken from “${d.label}” weighs more than the whole: one of the two weights is wrong.`,
  'sponge-over-charge': () =>
    'The sponge weighs more than the charge. As read this cannot be: weigh the sponge again, check the units, and ask whether older metal was in the retort.',
  'firing-without-charge': () => 'This firing names no charge yet: write the charge up, then correct the firing to name it.',
  'fired-before-charged': (d) =>
    `The fire was lit at ${d.lit}, before the charge was weighed in at ${d.charged}: one of the two times is wrong. Correct it, or mark the time as about.`,
  'charged-before-made': (d) =>
    `“${d.label}” was charged on ${momentText(String(d.charged))}, before it was made on ${momentText(String(d.made))}: one of the two times is wrong. Correct it, or mark the time as about.`,
  'reference-unknown': () => 'This names something that is not in the book here: it may still be on another desk.',
  'charge-empty': () => 'The charge comes to nothing: no weight was written for what went in.',
  contested: () =>
    'Two corrections of this entry were written side by side. Both are shown, the later one counts: read both and write the one that is right.',
  'outside-standing': () =>
    'This runs against what the site states it does. It is kept as written; restate the standing, or write a note that explains it.',
  'no-standing': () => 'The site had stated no standing when this was done: state what is held and what is done here.',
  'opened-hot': (d) =>
    `Opened at ${temperatureText(d.c ?? '')}, above ${temperatureText(d.limit ?? '')}: the air in a hot retort carries far more vapour than a cold one. Write down who was there and what was done.`,
  'opened-not-measured': (d) =>
    d.hours === undefined
      ? 'No temperature was measured at opening.'
      : `No temperature was measured at opening; it stood ${marked(String(d.hours))} h. Time alone does not tell that a retort is cold.`,
  'mercury-wet': () => 'The mercury was weighed wet: its weight counts water. Dry it and weigh it again.',
  'scale-below-minimum': (d) =>
    `${massUnit() === 'g' ? `${marked(String(d.net))} g` : exactMass(decimalFromText(String(d.net)) ?? zero)} is under the least weight “${d.scale}” can weigh well enough: use a finer scale.`,
  'scale-over-maximum': (d) =>
    `${marked(String(d.gross))} is over the ${marked(String(d.maximum))} that “${d.scale}” can weigh: use a larger scale.`,
  'scale-out-of-date': (d) =>
    `The calibration of “${d.scale}” was due on ${dayText(String(d.due))}: have it checked; readings stay as they are.`,
  'scale-not-named': () => 'No scale was named, so how sure this weight is cannot be said.',
  'certificate-missing': (d) => `“${d.scale}” has no certificate on the book: its readings are unverified.`,
  'u-unknown': () => 'How sure this weight is was not recorded.',
  'over-full': (d) =>
    `The retort was ${Math.round(Number(d.fill) * 100)} % full${d.known === 'reckoned' ? ' by the weight charged and what it holds to the brim' : ''}. Amalgam swells when heated: above ${Math.round(Number(d.limit) * 100)} % it may rise into the pipe.`,
  'check-no': (d) => `“${d.asks ?? checkText(String(d.check))}” was answered no${d.note === '' ? '' : `: ${d.note}`}.`,
  'tare-over-gross': (d) =>
    `The tare (${marked(String(d.tare))}) is more than the gross (${marked(String(d.gross))}): the two may be swapped.`,
  'whole-ore-over-mercury': () =>
    'Whole ore was crushed over mercury. The Minamata Convention on Mercury, annex C, names whole-ore amalgamation among the practices to be eliminated: ask the authority of this site before it is done again.',
  'vessel-empty': (d) =>
    `By the book “${d.vessel}” now holds ${gramText(Number(d.ug), { sign: true })}: more was taken out than was ever put in. That is as it was written: look for a slip in what was taken out, or for a receipt or a return that was not written up.`,
  'out-over-in': (d) =>
    `The parts weigh ${gramText(Number(d.ug))} more than went in: one of the weights is wrong, or something was added that is not written down.`,
  'equal-masses': (d) =>
    `The same ${gramText(Number(d.ug))} went into “${d.vessel}” within three days before: if it is the same mercury written twice, strike one of the two.`,
  'doses-differ': (d) =>
    `${d.count} doses of ${marked(String(d.each))} come to ${gramText(Number(d.byCountUg))}, the scale says ${gramText(Number(d.weighedUg))}: check the dose and its unit.`,
  'bars-over-melt': (d) =>
    `Bars and samples weigh ${gramText(Number(d.ug))} more than sponge and added metal: look for old prills or metal that were added and not written down.`,
  'count-unanswered': (d) =>
    `${d.name === '' ? 'A place' : `“${d.name}”`} could not be counted: ${d.why}. What the book says of it is carried forward.`,
  'place-not-found': (d) =>
    `${d.name === '' ? 'A place that holds mercury by the book' : `“${d.name}”`} was not found at a stock-take${d.note === '' ? '' : `: ${d.note}`}. All that was booked there is not accounted for: search, tell the safety officer, and write down what came of it.`,
  'count-differs': (d) =>
    `“${d.name}” was counted ${gramText(Number(d.ug), { sign: true })} against the book, ${marked(String(d.z))} standard uncertainties: count it again, check its scale and its tare, and look for work that was not written up.`,
  'poured-unweighed': (d) =>
    `“${d.name}” was weighed for the first time, after something went in or out of it that no scale had shown. Its difference of ${gramText(Number(d.ug), { sign: true })} counts as unaccounted for; part of it may be the supplier’s figure, and nobody can tell how much.`,
  'seal-broken': (d) =>
    `The seal of ${d.name === '' ? 'a place' : `“${d.name}”`} was found broken at a stock-take: ask who opened it and when, and keep the seal.`,
  'scale-check-failed': (d) =>
    `“${d.scale}” showed ${marked(String(d.read))} for ${marked(String(d.standard))}: readings since its last good check are in doubt. Nothing is changed; have the scale checked.`,
  'loss-or-disposal': (d) =>
    `Waste went to ${d.party}, and nobody said whether it counts as a disposal or as a loss: it stands as handed over, and may be a loss. Correct the entry to say which.`,
  'bar-left-melted': (d) =>
    `“${d.label}” had left the site by the book and was melted here: look for the entry that brought it back, or for another bar under its number.`,
  'bar-left-twice': (d) =>
    `“${d.label}” was handed over though it had left or been melted before, by the book: strike the entry that is wrong.`,
  'bar-over-1000': (d) =>
    `Gold and silver of “${d.label}” come from two assays and together are over 1000 parts. That cannot be: both are kept as found; assay it again.`,
  'assay-over-1000': () =>
    'Gold, or gold and silver together, come to over 1000 parts. That cannot be: the reading is kept as it stands; check the weighings and the proofs, and assay again.',
  'assay-no-proofs': () =>
    'No proofs were run beside the samples: the gold stands uncorrected, and how sure it is cannot be said.',
  'silver-uncorrected': () =>
    'No silver loss of proofs is written down: the silver stands without what cupelling took, and reads low. Run proofs with silver, or have it titrated.',
  'replicates-apart': (d) =>
    `The replicates lie further apart than the ${marked(String(d.limit))} parts per thousand that the site allows: assay it again.`,
  'density-outside': (d) =>
    d.finding === 'denser-than-gold'
      ? 'By its weights it is denser than gold: check both weighings. No fineness follows.'
      : 'By its weights it is lighter than the second metal named: voids, another metal, or a misreading. No fineness follows.',
  'umpire-needed': (d) =>
    `The two figures for “${d.label}” lie further apart than the splitting limit and no umpire’s figure is written down: nothing is settled yet.`,
  'settled-twice': (d) => `“${d.label}” was settled before: the later settlement counts. Strike the one that is wrong.`,
  'settlement-differs': (d) =>
    `The ${d.party === 'site' ? 'site’s' : d.party === 'other' ? 'other party’s' : 'umpire’s'} figure ${marked(String(d.stated))} is not what its assay comes to, rounded once: read both again.`,
  'silver-umpire-needed': (d) =>
    `The two figures for the silver of “${d.label}” lie further apart than the splitting limit and no umpire’s figure is written down: its silver is not settled yet.`,
  'out-turn-twice': (d) =>
    `What was sent to ${d.party} has an out-turn already: the later one stands beside it. Strike the one that is wrong.`,
  'authority-not-running': (d) =>
    `No authority that the site entered to ${d.act} gold ran on that day. The last one, “${d.name}” ${d.number}, has the last day ${d.expiry}. What is needed is for the authority to say; correct the register or the entry where it is wrong.`,
  'air-idlh': (d) =>
    `${shownText(asShown(d))} is at or above 10 mg/m³, which is immediately dangerous to life or health (NIOSH, 1994). Leave, keep people out, and call for help: whoever was there sees a doctor even if they feel well. Only then ask whether the unit was misread.`,
  'air-no-meter': () => 'No meter is named, so nobody can tell what this figure is worth: correct the entry to name it.',
  'meter-no-calibration': (d) =>
    `“${d.meter}” has no calibration on the book: its figures stand as shown, and nobody can tell what they are worth.`,
  'meter-out-of-date': (d) =>
    `The calibration of “${d.meter}” was due on ${dayText(String(d.due))}: have it calibrated; readings stay as they are.`,
  'air-temperature-odd': (d) =>
    `${temperatureText(d.c ?? '')} was asked about, as it may be the other scale, and stands as written.`,
  'air-counted-once': (d) =>
    `Another reading of the same ${momentText(String(d.from))} to ${momentText(String(d.to))} is kept too: the one that began first counts, and both are shown. Strike the one that is wrong.`,
  'air-above-saturation': (d) =>
    `${shownText(asShown(d))} is more than air of ${temperatureText(d.c ?? '')} holds (${decimalText(decimalFromNumber(Number(d.holds)), 1)} mg/m³): it was asked about and stands as written. Look for a unit a thousandfold off, droplets in the probe, or air from something hot.`,
};

/** The sentence of a flag. */
export const flagText = (flag: Flag): string => texts[flag.code](flag.data);
