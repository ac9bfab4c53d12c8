/** What the `daybook` command says about itself and its verbs. */

/** What each verb does, in a line. */
export const verbTexts = {
  new: 'makes an empty daybook folder',
  sample: 'writes the invented sample site; with --entries a large generated one, the same for the same seed',
  check: 'verifies every desk’s chain and prints entries, desks and end marks; reads only',
  account: 'the mercury account of a period: what came, went, is there, and is not accounted for',
  movements: 'every movement of mercury as CSV: date, from, to, exact grams, entry',
  export: 'every kind of entry as CSV, with the movements and a manifest of end marks',
  serve: 'serves the window to a browser on this machine and prints its one-time address',
  window: 'the same without a daybook: the page chooses one',
  paper: 'prints a document as PDF',
  reckon: 'one calculation: a JSON object on standard input, a JSON object on standard output',
  help: 'says this',
} as const;

/** The help page around the list of verbs, and what follows it. */
export const helpTexts = {
  head: 'daybook: the record of mercury and bullion, from a terminal.',
  topics: 'Topics of reckon:',
  papers: 'Papers:',
  codes: [
    'Exit codes: 0 done; 1 the record itself is at fault; 2 the call or its input is wrong.',
    'Nothing is written on 1 or 2. Problems go to standard error, one JSON line each.',
    'The figures say what was entered and what follows from it. They are no judgement of health or law.',
  ],
} as const;

/** `check` as text for a person. */
export const checkTexts = {
  head: (name: string, entries: number, desks: number) =>
    `${name}: ${entries} ${entries === 1 ? 'entry' : 'entries'}, ${desks} ${desks === 1 ? 'desk' : 'desks'}`,
  desk: (desk: string, entries: number, endMark: string) =>
    `${desk}  ${entries} ${entries === 1 ? 'entry' : 'entries'}  end mark ${endMark}`,
  fault: (desk: string, line: number, what: string) => `FAULT  ${desk}, line ${line}: ${what}`,
  notice: (what: string) => `notice  ${what}`,
  closingFault: (what: string) => `FAULT  ${what}`,
  closings: (n: number) =>
    n === 1 ? 'The closing agrees with the entries it rests on.' : `All ${n} closings agree with the entries they rest on.`,
  clean: 'Every line of every desk verifies.',
} as const;

/** `new`, `paper` and `export` as text for a person. */
export const madeTexts = {
  sample: (name: string, entries: number, folder: string) =>
    `“${name}”, ${entries} ${entries === 1 ? 'entry' : 'entries'}, is in ${folder}`,
  daybook: (name: string, folder: string) => `“${name}” is an empty daybook in ${folder}`,
  paper: (file: string, bytes: number) => `${file}: ${bytes} bytes`,
  exported: (folder: string, files: number, entries: number) =>
    `${folder}: ${files} files, ${entries} ${entries === 1 ? 'entry' : 'entries'}`,
} as const;

/** What stands for a JSON value that is not an object. */
export const jsonKinds: Readonly<Record<string, string>> = {
  array: 'a list',
  null: 'null',
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
};
