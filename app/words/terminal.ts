/** What the `daybook` command says about itself and its verbs. */

/** What each verb does, in a line. */
export const verbTexts = {
  new: 'makes an empty daybook folder',
  sample: 'writes the invented sample site; with --entries a large generated one, the same for the same seed',
  check: 'verifies every desk’s chain and prints entries, desks and end marks; reads only',
  join: 'brings what another folder of the same daybook holds into this one: lines, evidence, closings; takes nothing away',
  account:
    'the mercury account of a period: what came, went, is there, and is not accounted for; days, or the moments of two counts',
  movements: 'every movement of mercury as CSV: date, from, to, exact grams, entry',
  export: 'every kind of entry as CSV, with the movements and a manifest of end marks; --all with what is not for everybody',
  import:
    'adds the rows of a CSV file as entries of one kind, all or none; a column is named by its field, as export names it; --dry-run writes nothing',
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
  missing: (from: number, to: number) =>
    from === to
      ? `line ${from} is not here: not delivered yet, or removed`
      : `lines ${from} to ${to} are not here: not delivered yet, or removed`,
  forked: (line: number) =>
    `two different lines carry the number ${line}: the desk counts up to line ${line - 1}, and neither way on is chosen`,
  branch: (lines: number, endMark: string) => `  ${lines} ${lines === 1 ? 'line' : 'lines'} to end mark ${endMark}`,
  branchLine: (n: number, kind: string, happened: string, id: string) =>
    `    line ${n}  ${[kind, happened, id].filter((part) => part !== '').join('  ')}`,
  notice: (what: string) => `notice  ${what}`,
  closingFault: (what: string) => `FAULT  ${what}`,
  closings: (n: number) =>
    n === 1 ? 'The closing agrees with the entries it rests on.' : `All ${n} closings agree with the entries they rest on.`,
  clean: 'Every line of every desk verifies.',
} as const;

/** `join` as text for a person. */
export const joinTexts = {
  lines: (desk: string, lines: number) => `${desk}: ${lines} ${lines === 1 ? 'line' : 'lines'}`,
  evidence: (files: number) => `evidence: ${files} ${files === 1 ? 'file' : 'files'}`,
  closings: (files: number) => `closings: ${files} ${files === 1 ? 'file' : 'files'}`,
  signatures: (n: number) => `signatures: ${n}`,
  nothing: 'There is nothing in the other folder that is not here.',
  beside: (name: string, as: string) => `closings/${name} differs from the one that is here: it is kept beside it as ${as}`,
  left: (name: string) => `evidence/${name} is not what its name says and stays where it is`,
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

/** `import` as text for a person. */
export const importTexts = {
  would: (entries: number, kind: string) =>
    `${entries} ${entries === 1 ? 'entry' : 'entries'} of the kind ${kind} would be added; nothing was written`,
  row: (where: string, happened: string, kind: string, body: string) => `${where}  ${happened}  ${kind}  ${body}`,
  added: (entries: number, desk: string, endMark: string) =>
    `${entries} ${entries === 1 ? 'entry' : 'entries'} added; desk ${desk}, end mark ${endMark}`,
} as const;

/** What stands for a JSON value that is not an object. */
export const jsonKinds: Readonly<Record<string, string>> = {
  array: 'a list',
  null: 'null',
  string: 'a text',
  number: 'a number',
  boolean: 'true or false',
};
