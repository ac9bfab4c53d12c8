/**
 * Every problem in plain words: what was found, why it cannot be taken, what to do instead. Codes come from app/core; a code without words of
 * its own is still told with its name, never hidden. Other tables (`problems-*.ts`) are spread in below.
 */

import type { Problem } from '../core/result.ts';
import { marked, markName, notation, swappedMarks } from './notation.ts';
import { backupProblems } from './problems-backups.ts';
import { hostProblems } from './problems-host.ts';
import { importProblems } from './problems-import.ts';
import { paperProblems } from './problems-papers.ts';
import { reckoningProblems } from './problems-reckoning.ts';
import { recordProblems } from './problems-record.ts';
import { terminalProblems } from './problems-terminal.ts';
import { windowProblems } from './problems-window.ts';

/** The plain data a sentence may name. */
export type ProblemData = Readonly<Record<string, string | number>>;
export type ProblemTexts = Readonly<Record<string, (data: ProblemData) => string>>;

/** What a person calls the kinds of value. */
const kinds: Readonly<Record<string, string>> = {
  number: 'a number, written without quotation marks',
  string: 'text in quotation marks',
  array: 'a list in square brackets',
  object: 'an object in curly brackets',
  record: 'an object in curly brackets',
  boolean: 'true or false',
};

const commas = (): boolean => notation().decimal === 'comma';

/** A quantity with the decimal mark that is not the site's: what it stands for is never guessed. */
const otherMark = (read: string | number | undefined): string =>
  commas()
    ? `“${swappedMarks(String(read))}” has a point, which some read as thousands and some as the decimal mark: this site writes a comma for decimals and no mark for thousands.`
    : `“${read}” has a comma, which some read as thousands and some as the decimal mark: use a point for decimals and no mark for thousands.`;

/** What the record was handed, as it was typed. */
const typed = (read: string | number | undefined): string => swappedMarks(String(read));

const shapes: ProblemTexts = {
  missing: () => 'This is missing, and nothing can stand in for it: fill it in.',
  'unknown-field': (d) =>
    `There is no field called “${d.name}” here, so its meaning would be lost: check the spelling or leave it out.`,
  'wrong-type': (d) =>
    commas() && d.wanted === 'number'
      ? 'This has to be a number: write a comma for decimals and no mark for thousands.'
      : `This has to be ${kinds[String(d.wanted)] ?? d.wanted}: write it that way.`,
  'not-one-of': (d) => `Only one of these can stand here: ${d.choices}.`,
  'not-accepted': () => 'This cannot be read as what belongs here: check how it is written.',
  'too-short': (d) => `This is too short: at least ${d.least} are needed.`,
  'too-long': (d) => `This is too long: at most ${d.most} are kept.`,
  'too-small': (d) => `This is too small: it cannot be below ${d.least}.`,
  'too-large': (d) => `This is too large: it cannot be above ${d.most}.`,
};

const masses: ProblemTexts = {
  'mass-not-text': () => 'A mass is written as text with its unit, such as "955.6 g": put number and unit in quotation marks.',
  'mass-empty': () => marked('No mass was written: give a number and its unit, such as 955.6 g; write 0 g if there was nothing.'),
  'mass-too-long': (d) => `This is longer than any weighing needs (${d.most} characters): write the number and its unit only.`,
  'mass-bare-ounce': () =>
    '“oz” alone is not enough, because two ounces are in use: write ozt for troy ounces or oz-av for avoirdupois ounces.',
  'mass-bare-ton': () =>
    '“ton” alone is not enough, because three tons are in use: write short-ton (2,000 lb), long-ton (2,240 lb) or t for the metric tonne.',
  'mass-sign': (d) => `“${typed(d.read)}” carries a sign, and a scale reading has none: write the mass without it.`,
  'mass-comma': (d) => otherMark(d.read),
  'mass-exponent': (d) => `“${typed(d.read)}” is written with an exponent: write the number out in full.`,
  'mass-number': (d) =>
    `${d.part === d.read ? `“${typed(d.read)}”` : `“${typed(d.part)}” in “${typed(d.read)}”`} is not a plain decimal number: write digits with at most one ${markName()}, such as ${marked('0.5')}.`,
  'mass-no-unit': (d) => `“${typed(d.read)}” has a number without a unit: add the unit it was read in, such as g or ozt.`,
  'mass-unit': (d) => `“${d.unit}” is not a unit of mass known here (capitals matter): use one of ${d.units}.`,
  'mass-order': (d) =>
    `In “${typed(d.read)}” the units do not run from large to small, each once: write 18 ozt 18 dwt 6 gr, for example.`,
  'mass-too-large': (d) =>
    `“${typed(d.read)}” is more than the book can count in whole micrograms (about 9,000 t): check the number and its unit.`,
  'volume-not-text': () =>
    'A volume is written as text with its unit, such as "186.0 ml": put number and unit in quotation marks.',
  'volume-empty': () => marked('No volume was written: give a number and its unit, such as 186.0 ml.'),
  'volume-too-long': (d) => `This is longer than any measuring needs (${d.most} characters): write the number and its unit only.`,
  'volume-bare-ounce': () =>
    'A fluid ounce may be imperial or United States, 4 % apart, and a plain ounce is a weight: write fl-oz-imp or fl-oz-us.',
  'volume-sign': (d) => `“${typed(d.read)}” carries a sign, and a measured volume has none: write it without.`,
  'volume-comma': (d) => otherMark(d.read),
  'volume-exponent': (d) => `“${typed(d.read)}” is written with an exponent: write the number out in full.`,
  'volume-number': (d) =>
    `${d.part === d.read ? `“${typed(d.read)}”` : `“${typed(d.part)}” in “${typed(d.read)}”`} is not a plain decimal number: write digits with at most one ${markName()}, such as ${marked('0.5')}.`,
  'volume-no-unit': (d) => `“${typed(d.read)}” has a number without a unit: add it, such as ml.`,
  'volume-unit': (d) => `“${d.unit}” is not a unit of volume known here (capitals matter): use one of ${d.units}.`,
  'volume-order': (d) =>
    `In “${typed(d.read)}” the units do not run from large to small, each once: write 1 l 86 ml, for example.`,
};

/** Words for every code. */
export const problemTexts: ProblemTexts = {
  ...shapes,
  ...masses,
  ...reckoningProblems,
  ...recordProblems,
  ...importProblems,
  ...hostProblems,
  ...backupProblems,
  ...paperProblems,
  ...windowProblems,
  ...terminalProblems,
};

/** The problem as a sentence for a person. */
export function problemText(problem: Problem): string {
  const say = Object.hasOwn(problemTexts, problem.code) ? problemTexts[problem.code] : undefined;
  return say ? say(problem.data ?? {}) : `This cannot be accepted (${problem.code}): check it against the sheet it came from.`;
}
