/**
 * How somebody outside verifies the record and recomputes its stocks without this program: in plain words, with scripts that are run by a test on a
 * sample book. The same text stands in the Papers room and in VERIFY.md beside an export. Method: RFC 8785, SHA-256 (FIPS 180-4), a chain of hashes
 * (methods.md 8.2).
 */

/** Verifies journals with Python's standard library alone. */
export const verifyPython = `import hashlib, json, sys
for path in sys.argv[1:]:
    prev, n, kept = "0" * 64, 0, 0
    for line in open(path, "rb").read().split(b"\\n")[:-1]:
        n += 1
        at = line.rfind(b',"hash":"')
        mark = hashlib.sha256(line[:at] + line[at + 74:]).hexdigest()
        try:
            entry = json.loads(line)
            if set(entry) == {"desk", "hash", "n", "prev", "withheld"}:
                mark, kept = entry["hash"], kept + 1
            fits = (entry["hash"], entry["n"], entry["prev"]) == (mark, n, prev)
        except (ValueError, KeyError, TypeError):
            fits = False
        if not fits:
            sys.exit(f"{path}: line {n} does not fit")
        prev = mark
    print(f"{path}: {n} entries, {kept} of them withheld, end mark {prev}" if kept else f"{path}: {n} entries, end mark {prev}")
`;

/** Commands that print the SHA-256 of what they are given, the hash first. */
export const sums = ['sha256sum', 'openssl dgst -sha256 -r'] as const;

/** The same with a shell, sed and a command that makes SHA-256. */
export const verifyShell = (sum: (typeof sums)[number] = 'sha256sum') => `export LC_ALL=C
prev=$(printf '%064d' 0)
n=0
while IFS= read -r line; do
  n=$((n + 1))
  mark=$(printf '%s' "$line" | sed 's/.*,"hash":"\\([0-9a-f]\\{64\\}\\)".*/\\1/')
  sum=$(printf '%s' "$line" | sed 's/\\(.*\\),"hash":"[0-9a-f]\\{64\\}"/\\1/' | tr -d '\\n' | ${sum} | cut -d ' ' -f 1)
  case $line in
    *'","withheld":"'*) sum=$mark ;;
  esac
  case $line in
    *"\\"n\\":$n,\\"prev\\":\\"$prev\\""*) ;;
    *) echo "line $n is not in its place"; exit 1 ;;
  esac
  [ "$sum" = "$mark" ] || { echo "line $n does not fit its hash"; exit 1; }
  prev=$mark
done < "$1"
echo "$n entries, end mark $prev"
`;

/** The hash of one line by hand. */
export const verifyOne = `sed -n 5p journal-DESK.jsonl | sed 's/\\(.*\\),"hash":"[0-9a-f]*"/\\1/' | tr -d '\\n' | openssl dgst -sha256`;

/** Sums what stands in each place, in whole micrograms, from movements.csv. */
export const stocksAwk = `NR > 1 {
  n = 0; rest = $0
  while (match(rest, /^("([^"]|"")*"|[^,]*)(,|$)/)) {
    cell = substr(rest, 1, RLENGTH); rest = substr(rest, RLENGTH + 1)
    sub(/,$/, "", cell)
    if (cell ~ /^"/) { cell = substr(cell, 2, length(cell) - 2); gsub(/""/, "\\"", cell) }
    cells[++n] = cell
    if (rest == "") break
  }
  ug = sprintf("%.0f", cells[4] * 1000000)
  held[cells[2]] -= ug; held[cells[3]] += ug
}
END { for (place in held) if (held[place] != 0) printf "%.6f g\\t%s\\n", held[place] / 1000000, place }
`;

/** Turns movements.csv into a journal for plain-text accounting programs. */
export const journalPython = `import csv, re
for m in csv.DictReader(open("movements.csv", encoding="utf-8", newline="")):
    to, giver = (re.sub(r"[^\\w.,-]+", " ", m[side]).strip() for side in ("to", "from"))
    print(f'{m["date"]} {m["entry"]}\\n    {to}  {m["grams"]} g\\n    {giver}\\n')
`;

/** Verifies the signatures of a desk, and that each stands over the line it names, with OpenSSL 1.1.1 or newer. */
export const verifySignatures = `while IFS= read -r line; do
  printf '%s' "$line" | sed 's/,"signature":"[^"]*"//' | tr -d '\\n' > said
  printf '%s' "$line" | sed 's/.*"signature":"\\([^"]*\\)".*/\\1/' | openssl base64 -d -A > signature
  printf '%s' "$line" | sed 's/.*"key":"\\([^"]*\\)".*/\\1/' | openssl base64 -d -A > key.der
  openssl pkey -pubin -inform DER -in key.der -out key.pem
  openssl pkeyutl -verify -pubin -inkey key.pem -rawin -in said -sigfile signature || exit 1
  n=$(printf '%s' "$line" | sed 's/.*"entries":\\([0-9]*\\).*/\\1/')
  mark=$(printf '%s' "$line" | sed 's/.*"end_mark":"\\([0-9a-f]*\\)".*/\\1/')
  sed -n "\${n}p" "$2" | grep -q ",\\"hash\\":\\"$mark\\"" || { echo "line $n of $2 is not the one that was signed"; exit 1; }
  echo "signed up to line $n with the key $(openssl dgst -sha256 -r key.der | cut -d ' ' -f 1)"
done < "$1"
`;

/** A passage: plain sentences, then what to type. */
export interface VerifyPassage {
  readonly title: string;
  readonly says: readonly string[];
  /** What to save or type: under a name where it is a file. */
  readonly code?: { readonly name?: string; readonly text: string };
  /** The command that runs the file. */
  readonly run?: string;
}

export const verifyPassages: readonly VerifyPassage[] = [
  {
    title: 'What is verified',
    says: [
      'Each desk wrote one journal: a text file, one line for each entry, only ever added to. In the daybook it is desks/DESK.jsonl; beside an export it is copied as journal-DESK.jsonl.',
      'A line is JSON in its canonical form (RFC 8785): members in order of their names, no blanks, numbers and letters written in one way only. Its member “hash” is the SHA-256 of that same line without the member “hash”. Its member “prev” is the “hash” of the line before it, 64 zeros for the first. Its member “n” counts the lines from 1.',
      'A line with the member “withheld” stands for an entry that was kept back from this export, such as where a bar is kept: it has its place and its hash in the chain and nothing else, so that what it says cannot be verified here; the lines after it can.',
      'So a line that was changed, put in, taken out or moved no longer fits, and can be named. The “hash” of the last line is the end mark of the desk.',
    ],
  },
  {
    title: 'What it cannot show by itself',
    says: [
      'Whoever holds the whole file could write all of it anew, and lines cut off its end leave no gap. Both show only against an end mark that was kept elsewhere: at the foot of a printed paper, in a closing, in a backup, in the manifest of an earlier export. Compare every end mark that you find with the hash of the line of that number.',
      'The chain says that the lines are those that were written down. It does not say that what was written is so.',
    ],
  },
  {
    title: 'Step by step, by hand',
    says: [
      'Take a line. Cut the member “hash” out of it, with one comma. Make the SHA-256 of what is left, without the line end: it must be the hash that was cut out. Compare “prev” with the hash of the line before. Go on to the next. For line 5:',
    ],
    code: { text: `${verifyOne}\n` },
  },
  {
    title: 'All lines, with Python',
    says: ['Only the standard library is used. It names the first line that does not fit, or prints the end mark.'],
    code: { name: 'verify.py', text: verifyPython },
    run: 'python3 verify.py journal-*.jsonl',
  },
  {
    title: 'All lines, with a shell',
    says: [
      `Slower, and nothing to install. Where there is no sha256sum, put “${sums[1]}” in its place.`,
      'Both ways pass over a last line without its end, as a power cut may leave one; the end mark tells whether it belongs there.',
    ],
    code: { name: 'verify.sh', text: verifyShell() },
    run: 'sh verify.sh journal-DESK.jsonl',
  },
  {
    title: 'The signatures, with OpenSSL',
    says: [
      'At each closing of a period and before each backup a desk signs its end mark (Ed25519, RFC 8032). The signatures lie in signatures/DESK.jsonl of the daybook, beside an export in signatures-DESK.jsonl, a line for each: which daybook and desk, how many entries, the end mark, when, and the public key. What is signed is that line without its member “signature”.',
      'One signature covers every line before it, because each line carries the hash of the one before. So verify the journal first, then the signatures, and then compare the fingerprint of the key (the SHA-256 of its bytes) with the one printed beside the end mark on a paper you hold: a key that lies beside what it signed proves nothing by itself. One desk has one key for all its life.',
      'A signature shows that whoever held the key wrote these lines. It does not show who that was, when it was, or that what was written is so.',
      'The script leaves the files said, signature, key.der and key.pem behind.',
    ],
    code: { name: 'signatures.sh', text: verifySignatures },
    run: 'sh signatures.sh signatures-DESK.jsonl journal-DESK.jsonl',
  },
  {
    title: 'The files of an export',
    says: [
      'manifest.json holds the SHA-256, the length and the rows of every file, and each desk’s end mark. There is a table for every kind of entry, as it reads now, with what corrected or struck it; as-first-written.csv has what a correction changed, as it read before. A cell that a spreadsheet would run as a formula begins with an apostrophe that does not belong to it.',
    ],
    run: 'sha256sum *.csv *.jsonl',
  },
  {
    title: 'The stocks, with awk',
    says: [
      'movements.csv has every movement of mercury: day, from, to, grams, entry. What stands in a place is the sum of what came less what went; over all places it is nothing. The account of a period is made of the same sums up to its two ends.',
      'awk reads a line at a time: where the name of a place holds a line break, use the next way.',
    ],
    code: { name: 'stocks.awk', text: stocksAwk },
    run: 'awk -f stocks.awk movements.csv',
  },
  {
    title: 'The stocks, with an accounting program',
    says: [
      'The movements are double entry: each gives to one place what it takes from another. Any plain-text accounting program can sum them, for instance ledger or hledger. With --end and the day after, it sums up to the end of a day, as the closing stock of a period does.',
    ],
    code: { name: 'journal.py', text: journalPython },
    run: 'python3 journal.py > movements.journal\nledger -f movements.journal balance --flat\nhledger -f movements.journal balance --flat',
  },
];

export const verifyWords = {
  title: 'Verify the record without this program',
  link: 'How to verify the record without this program',
  intro:
    'For auditors, regulators and anyone who does not want to trust this program. Everything here can be done with tools that most machines already have.',
  back: 'To the room Papers',
  save: (name: string) => `Save as ${name}`,
  run: 'Then',
  toType: 'To type or save',
  marks: 'End marks of this daybook',
  marksNote: 'As this window has them now',
  desk: 'Desk',
  entries: 'Entries',
  endMark: 'End mark',
  key: 'fingerprint of its key',
  fileNote: 'The same text stands in VERIFY.md beside every export.',
} as const;

const fenced = (text: string): string => `\`\`\`\n${text.trimEnd()}\n\`\`\``;

/** The text file beside an export: the passages, and the end marks of its desks. */
export const verifyFile = (
  desks: readonly {
    readonly desk: string;
    readonly entries: number;
    readonly endMark: string;
    readonly key?: string | undefined;
  }[],
): string =>
  `${[
    `# ${verifyWords.title}`,
    verifyWords.intro,
    ...verifyPassages.flatMap(({ title, says, code, run }) => [
      `## ${title}`,
      ...says,
      ...(code ? [...(code.name === undefined ? [] : [`${verifyWords.save(code.name)}:`]), fenced(code.text)] : []),
      ...(run === undefined ? [] : [`${verifyWords.run}:`, fenced(run)]),
    ]),
    '## End marks of this export',
    ...desks.map(
      ({ desk, entries, endMark, key }) =>
        `- ${verifyWords.desk} ${desk}, ${entries}: ${endMark}${key === undefined ? '' : `, ${verifyWords.key}: ${key}`}`,
    ),
  ].join('\n\n')}\n`;
