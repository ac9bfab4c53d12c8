/** Problems of an entry that cannot be kept: what the record would not bear, and what to do instead. */
import { dayText } from './dates.ts';
import { marked, markName } from './notation.ts';
import type { ProblemTexts } from './problems.ts';
import { airProblems } from './problems-air.ts';
import { closingProblems } from './problems-closing.ts';
import { temperatureText } from './temperatures.ts';
import { things } from './things.ts';

const unnamed: Readonly<Record<string, string>> = {
  circuit: 'part of the circuit',
  lot: 'lot in the safe',
  charge: 'charge in a retort',
  sponge: 'sponge',
  residue: 'lot of residues',
  work: 'cleaning not finished',
  condenser: 'condenser',
};

/** A place by its name, or by what it is. */
const placeName = (kind: unknown, name: unknown): string =>
  name !== undefined && name !== ''
    ? kind === 'circuit'
      ? `In circuit: “${name}”`
      : `“${name}”`
    : `A ${unnamed[String(kind)] ?? 'place'}`;

export const recordProblems: ProblemTexts = {
  'form-number': (d) =>
    `“${d.read}” is not the number of any form printed here: a character is wrong, or left out. Read it again from the sheet, its last character too. If it is the number of another pad, write the pad’s name before it.`,
  'not-an-id': () => 'This is not the number of an entry: pick the entry from the list instead of typing it.',
  'not-a-key': () => 'This row has no proper key: take the row out and add it again.',
  'not-a-kind': () => 'This is not the name of a kind of entry: start the entry again from its room.',
  'unknown-kind': (d) => `This program knows no kind of entry called “${d.kind}”: a newer version may have written it.`,
  'empty-text': () => 'Only blanks were written: write something, or leave it out.',
  unprintable: () => 'There are characters here that cannot be printed: type the text again rather than pasting it.',
  'not-a-day': () => 'This is not a day of the calendar: write it as year-month-day, such as 2026-03-14.',
  'not-a-moment': () => 'This is not a day and time with its offset: pick the day and the time again.',
  'not-a-hash': () => 'This is not an end mark of 64 figures and letters: copy it again, whole.',
  'not-evidence': () => 'This is not the name of a kept picture or document: add the file again.',
  'mass-zero': () => 'This cannot be nothing: write the mass as it was read.',
  'volume-text': () => marked('A volume is a plain number and its unit: ml, l, fl-oz-imp or fl-oz-us, such as 186.0 ml.'),
  'in-the-future': (d) =>
    `${dayText(String(d.read))} has not come yet (today is ${dayText(String(d.today))}): check the year, the month and the day.`,
  'too-early': (d) => `${dayText(String(d.read))} is before ${d.earliest}, earlier than any book of this trade: check the year.`,
  'unknown-id': (d) =>
    `This names a ${things[String(d.wanted)] ?? 'thing'} that is not in this daybook: enter it first, or pick another.`,
  'tare-missing': () => 'A vessel was named but not its weight empty: write the tare down with this weighing.',
  'net-below-nothing': (d) =>
    `The gross (${marked(String(d.gross))}) is less than the tare (${marked(String(d.tare))}), and nothing weighs less than nothing: read the scale again, and see whether the two are swapped. Where an older book says it so, name that book under Further particulars, and it is kept as it stands there.`,
  'due-before': (d) => `It is due on ${dayText(String(d.due))}, before it was done on ${dayText(String(d.on))}: check both days.`,
  'question-twice': (d) => `The question “${d.check}” stands twice in this list, or is both worded anew and left out: keep one.`,
  'key-twice': () => 'Two rows stand under one key: take one out and add it again.',
  'label-taken': (d) =>
    `Another lot in the safe is labelled “${d.label}”: two lots under one label could be mistaken for each other, so give this one its own.`,
  'name-taken': (d) => `“${d.name}” is in this register already: give this one another name, or restate the one that is there.`,
  'lot-used-up': (d) => `“${d.label}” went into a charge before and is used up: pick another lot, or correct that charge first.`,
  'lot-split': (d) =>
    `“${d.label}” was split when a part of it was charged: pick what was left of it, which has a label of its own.`,
  'lot-twice': (d) => `“${d.label}” stands in this charge twice: take one of the rows out.`,
  'charge-of-nothing': () => 'Nothing was put into the retort: add at least one ball or lot, or what else was charged.',
  'charge-twice': () => 'The same charge stands here twice: one row for each charge is enough.',
  'retort-missing': () => 'No charge is named yet, so say which retort was fired: pick the retort.',
  'retort-differs': () => 'This is not the retort that the charge was put into: leave the retort out, or correct the charge.',
  'aim-reversed': (d) =>
    `The temperatures aimed at run from ${temperatureText(Number(d.from))} down to ${temperatureText(Number(d.to))}: put the lower one first.`,
  'times-reversed': (d) => `${d.at} is earlier than the step before it (${d.before}): check the two times and their days.`,
  'authority-missing': () => 'Use under an authority was ticked: write down which, its number, its expiry and what it covers.',
  'authority-not-asked': () =>
    'An authority is written down but use under an authority is not ticked: tick it, or take the authority out.',
  'standing-contradicts': () =>
    'One answer says there is nothing, another for the same place says there is something: keep the one that is true, or name the places.',
  'issue-into': () => 'Drawn off into another vessel: say which; otherwise say which part of the circuit it was fed to.',
  'issue-into-itself': () => 'It was drawn from this vessel and cannot have gone into the same one: pick the other vessel.',
  'ore-in-water': () => 'Water only was run, so no ore can have been put through: leave the ore out, or change the feed.',
  'parcel-twice': (d) =>
    `This parcel has ${d.first} on the book for this day and battery, and now ${d.second}: correct the first entry instead of writing a second tonnage.`,
  'charge-fired': () => 'This charge has been fired and cannot be taken apart: strike the firing first if it is wrong.',
  'unmade-before': () => 'This charge was taken apart before: pick another.',
  'sponge-melted': () => 'This sponge stands in a melt already: take one of the two out.',
  'melt-of-nothing': () => 'Nothing went into this melt: name at least one sponge, or the metal that was added.',
  'bar-melted': (d) => `“${d.label}” stands in a melt already: take one of the two out.`,
  'prills-melted': () => 'These prills stand in a melt already: take one of the two out.',
  'slag-melted': () => 'This slag stands in a melt already: take one of the two out.',
  'no-prills': () => 'No prills of that melt are written down: pick another, or write them into that melt first.',
  'no-slag': () => 'No slag of that melt is written down: pick another, or write it into that melt first.',
  'left-over-of-itself': () => 'This melt made it, so it cannot have gone into it: pick another melt.',
  'bar-into-itself': (d) => `“${d.label}” came out of this melt and cannot have gone into it: pick another bar.`,
  'decimal-text': () =>
    `This is not a plain figure: digits with a ${markName()}, no sign and no unit, such as ${marked('884.6')}.`,
  'assay-of-what': () => 'It is not said which one was assayed: name it.',
  'assay-of-two': () => 'This names another thing than the one that was assayed: leave it out, or change what was assayed.',
  'assay-of-another': () => 'This assay is not one of this bar: pick one that is, or leave it out.',
  'assay-of-nothing': () => 'The laboratory’s result is missing: write down gold, silver or mercury as it stated it.',
  'assay-twice': () => 'One assay cannot stand for two parties: pick another, or leave one out.',
  'proof-over-taken': (d) =>
    `The proof gave back ${marked(String(d.found))} of the ${marked(String(d.taken))} that were taken, over 5 % more: a proof was mixed up or misread. Weigh it again.`,
  'heavier-in-water': (d) =>
    `It cannot weigh ${marked(String(d.water))} in water and ${marked(String(d.air))} in air: water bears it up. The two may be swapped.`,
  'titration-of-metal': () => 'Titration finds the silver of a bar or a sponge: use another method for this.',
  'density-of-bar': () => 'Weighing in water is an indication for a bar: use another method for this.',
  'umpire-figure': () => 'An umpire’s assay is named but not the figure: write it down as the umpire gave it.',
  'silver-of-one': () => 'The silver is settled from both parties’ figures: write down both, or neither.',
  'silver-limit': () => 'The splitting limit for silver is missing: write it down as the contract has it.',
  'out-turn-of-in': () => 'This came to the site and did not leave it: an out-turn answers what was sent away.',
  'named-twice': () => 'This is named twice: take one of the two out.',
  'out-turn-empty': () => 'Nothing is written of what they found: a weight, gold or silver.',
  'out-turn-weight': () =>
    'A fineness without a weight of theirs says nothing of the metal: write down their weight, or the fine metal as they state it.',
  'children-over-visitors': () => 'More children than visitors: count children among the visitors.',
  'count-no-place': (d) => `“${d.place}” is no place that can be counted: pick the place from the list.`,
  'count-way': (d) =>
    `${placeName('', d.name)} cannot be ${d.how === 'sealed' ? 'answered by a seal' : d.how === 'weighed' ? 'answered by a scale, which shows more than its mercury' : d.how === 'seen' ? 'passed by looking at it' : 'answered so'}: give another answer.`,
  'count-left-out': (d) =>
    `${placeName(d.kind, d.name)} is not answered: a count of the whole leaves no place out. Count it, say why it cannot be counted, or say that it was not found.`,
  'seal-reused': (d) =>
    `The seal number “${d.seal}” is or was on “${d.other}”, and a number seals once: read both seals again. A flask under a new seal is answered as broken and weighed, with its new number.`,
  'seal-differs': (d) =>
    `The book has the seal “${d.booked}” on “${d.name}”, not “${d.read}”: read it again. If it is another seal, answer as broken: weigh it, or say why it cannot be weighed.`,
  'seal-not-booked': (d) =>
    `By the book “${d.name}” stands under no seal: it was opened, or its seal was never written down. Weigh it and write the number down with the weight.`,
  'place-twice': () => 'This place is counted twice in one stock-take: keep one of the two lines.',
  'no-figure': () =>
    'No figure is set here: set at least one of the false alarm, the mercury left in sponge and the days of a lot in store.',
  'days-not-whole': () => 'Days are counted as a whole number, from 1 to 36,500: write it without decimals.',
  'alarm-not-offered': () =>
    marked('A false alarm lies above nothing and below everything: write a share such as 0.05, which is one in twenty.'),
  ...closingProblems,
  ...airProblems,
  'correction-of-strike': () => 'A strike cannot be corrected: write the struck entry anew if it should count.',
  'strike-of-strike': () => 'A strike cannot be struck: write the struck entry anew if it should count.',
  'already-struck': () => 'This entry was struck before: write it anew if it should count.',
};
