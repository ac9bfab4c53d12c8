/** Words for a call of the `daybook` command that cannot be meant as it was written. */
import { dayText } from './dates.ts';
import type { ProblemTexts } from './problems.ts';

export const terminalProblems: ProblemTexts = {
  'verb-missing': (d) => `No verb was given: write one of ${d.verbs} after daybook; “daybook help” says what each does.`,
  'verb-unknown': (d) => `“${d.read}” is not a verb of this command: it knows ${d.verbs}.`,
  'place-missing': (d) => `${d.name} is missing: the call is “${d.usage}”.`,
  'place-extra': (d) => `“${d.read}” is one word too many: the call is “${d.usage}”. Put a name with blanks in quotation marks.`,
  'option-unknown': (d) => `“${d.read}” is not an option of ${d.verb}: ${d.known}.`,
  'option-missing': (d) => `The option ${d.name} is missing: the call is “${d.usage}”.`,
  'option-value-missing': (d) => `The option ${d.name} needs a value after it: the call is “${d.usage}”.`,
  'option-no-value': (d) => `The option ${d.name} stands alone and takes no value: leave “${d.read}” out.`,
  'option-twice': (d) => `The option ${d.name} is given twice, and one would be lost: keep one.`,
  'not-a-port': (d) => `“${d.read}” is not a port: it is a whole number from 1 to 65535, or 0 for any that is free.`,
  'option-number': (d) => `The option ${d.name} is “${d.read}”: it is a whole number from ${d.least} to ${d.most}.`,
  'input-empty': () =>
    'Nothing came on standard input: send one JSON object, for example with echo \'{"mass":"9 lb","to":["g"]}\' before a |.',
  'input-not-text': () => 'Standard input is not UTF-8 text: send the JSON object encoded as UTF-8.',
  'input-not-json': (d) => `Standard input is not JSON (${d.detail}): send one JSON object.`,
  'input-not-object': (d) => `Standard input is ${d.read}: send one JSON object in curly brackets.`,
  'input-too-long': (d) =>
    `Standard input is longer than ${d.most} bytes, more than any calculation needs: send one JSON object.`,
  'input-key-twice': (d) => `“${d.name}” stands in the same object twice, and one would be lost: keep one.`,
  'not-a-pdf-name': (d) => `“${d.read}” does not end in .pdf: name the file that the paper is printed to.`,
  'inside-the-daybook': (d) =>
    `“${d.read}” lies inside the daybook, whose folder holds the record alone: print to another folder.`,
  'period-reversed': (d) =>
    `The period ends on ${dayText(String(d.to))}, before it begins on ${dayText(String(d.from))}: swap the two days.`,
  'export-not-empty': (d) =>
    `There is something in ${d.path} already, and an export needs a folder of its own: choose an empty one, or one that is not there yet.`,
  'newer-unread': (d) =>
    `A newer version of this program wrote in this daybook (format ${d.format}), and what it wrote is not read here, so figures would be wrong: use the newer version.`,
  'home-newer': (d) =>
    `A newer version of this program keeps its desk in ${d.path} (format ${d.format}): use the newer version, or name another folder with DAYBOOK_HOME.`,
  'paper-unknown': (d) => `There is no paper called “${d.read}” yet: choose one of ${d.papers}.`,
  'lines-missing': (d) =>
    d.to === d.line
      ? `Desk ${d.desk}, line ${d.line} is not here: not delivered yet, or removed. Look for it in a newer copy of the folder and join that.`
      : `Desk ${d.desk}, lines ${d.line} to ${d.to} are not here: not delivered yet, or removed. Look for them in a newer copy of the folder and join that.`,
  'desk-forked': (d) =>
    `Desk ${d.desk}, line ${d.line}: two different lines carry this number, as when a backup or a copied disk was written on. The desk counts up to the line before, and neither way on is chosen.`,
  'program-fault': (d) =>
    `The program itself failed (${d.detail}), and did not finish: please report it with the call that was made.`,
};
