/**
 * `npm run bench`: measures the promises of speed and prints each as a ratio with the call it came from. The built command against `ledger` and
 * `hledger` on the same movements; the host against the bare minimum; the window against an empty one. Books are generated, the same every time, and
 * lie in .cache/bench. Three rounds, a few minutes; `-- --full` takes eleven and a book of 300,000 entries, `-- --runs N` that many rounds.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, loadavg } from 'node:os';
import { join } from 'node:path';
import { interleaved, median, quantile } from '../../test/bench/whole-processes.mjs';
import { windowsReady } from '../../test/bench/window-ready.mjs';
import { onPath } from './browser.mjs';
import { build } from './build.mjs';
import { nodeConfig } from './configs.mjs';
import { cache, daybookCommand, root, say } from './paths.mjs';

const full = process.argv.includes('--full');
const asked = process.argv.indexOf('--runs');
const rounds = asked > 0 ? Number(process.argv[asked + 1]) : full ? 11 : 3;
if (!(Number.isInteger(rounds) && rounds > 0)) {
  say('--runs takes a whole number of rounds, 1 or more.');
  process.exit(2);
}
/** Sizes for the marginal time of an entry, in entries: the middle one is the book that is held against the others. */
const sizes = full ? [20_000, 100_000, 300_000] : [20_000, 60_000, 100_000];
const held = 100_000;
const ofRuns = 4300;
const place = join(cache, 'bench');
const print = (line = '') => process.stdout.write(`${line}\n`);

await build();
const { build: bundle } = await import('vite');
await bundle(nodeConfig(place, 'host', 'test/bench/host.ts'));

/** Runs the built command and answers what it printed. */
function daybook(...args) {
  const ran = spawnSync(process.execPath, [daybookCommand, ...args], { encoding: 'utf8', maxBuffer: 1e9 });
  if (ran.status !== 0) throw new Error(`daybook ${args.join(' ')}: ${ran.stderr}`);
  return ran.stdout;
}

/** A generated book of so many entries, made once for each build of the generator. */
function book(entries) {
  const dir = join(place, `book-${entries}`);
  rmSync(dir, { recursive: true, force: true });
  daybook('sample', dir, '--entries', String(entries));
  return dir;
}

/** The movements as a plain-text journal: a place is an account, the giving side is left to the program. */
function journal(dir, file) {
  const rows = daybook('movements', dir, '--csv').trimEnd().split('\n').slice(1);
  const cell = /("(?:[^"]|"")*"|[^,]*)(?:,|$)/g;
  const text = rows.map((row) => {
    const [date, from, to, grams, entry] = [...row.matchAll(cell)].map((m) => m[1].replace(/^"|"$/g, '').replaceAll('""', '"'));
    return `${date.slice(0, 10)} ${entry}\n    ${to}  ${BigInt(grams.replace('.', ''))} ug\n    ${from}\n`;
  });
  writeFileSync(file, text.join('\n'));
  return rows.length;
}

const ratio = (a, b) => (a / b).toFixed(2);
const account = (dir) => ({ name: `daybook ${dir}`, command: [process.execPath, daybookCommand, 'account', dir, '--json'] });

mkdirSync(place, { recursive: true });
const books = new Map(sizes.map((entries) => [entries, book(entries)]));
const hundred = books.get(held);
const file = join(place, 'movements.journal');
const movements = journal(hundred, file);
const engines = [
  {
    name: 'ledger',
    command: [
      'ledger',
      '--init-file',
      '/dev/null',
      '--file',
      file,
      'balance',
      '--flat',
      '--no-total',
      '--balance-format',
      '%(account)\t%(quantity(display_total))\n',
    ],
  },
  { name: 'hledger', command: ['hledger', '--file', file, 'balance', '--flat', '--no-total', '--output-format', 'csv'] },
].filter(({ name }) => {
  const here = onPath([name]) !== null;
  if (!here) say(`SKIPPED: ${name} is not installed here (Debian: apt-get install ${name}).`);
  return here;
});

const counted = (n) => n.toLocaleString('en-GB');
const call = (command) =>
  command
    .join(' ')
    .replaceAll(`${root}`, '')
    .replaceAll(process.execPath, 'node')
    .replaceAll('\t', '\\t')
    .replaceAll('\n', '\\n');
const peak = (megabytes) => (megabytes === null ? 'peak memory unknown: no GNU time here' : `${megabytes.toFixed(0)} MB`);

print(
  `Node ${process.version}, ${availableParallelism()} processors, medians of ${rounds}, in turn. Times are of whole processes, start included.`,
);
print(
  `Load of the machine when it began: ${loadavg()[0].toFixed(1)}. Where it is above the number of processors only the ratios tell.`,
);
print();
print(`account of ${counted(held)} entries (${counted(movements)} movements)`);
const ours = account(hundred);
const took = interleaved([ours, ...engines], rounds, join(place, 'printed'));
const mine = took.get(ours.name);
for (const { name, command } of [ours, ...engines]) {
  const { seconds, busy, peakMb } = took.get(name);
  const against = name === ours.name ? '' : `the daybook takes ${ratio(mine.seconds, seconds)} times as long  `;
  print(
    `  ${seconds.toFixed(2)} s (${busy === null ? 'processor time unknown' : `${busy.toFixed(2)} s of processor`})  ${peak(peakMb)}  ${against}${call(command)}`,
  );
}

print();
print('marginal time of an entry, by the account');
const bySize = interleaved([...books.values()].map(account), Math.min(rounds, 5), join(place, 'printed'));
const [a, b, c] = sizes.map((entries) => bySize.get(account(books.get(entries)).name));
const [first, second] = [(b.seconds - a.seconds) / (sizes[1] - sizes[0]), (c.seconds - b.seconds) / (sizes[2] - sizes[1])];
print(
  `  ${sizes.map((entries, i) => `${counted(entries)}: ${[a, b, c][i].seconds.toFixed(2)} s, ${peak([a, b, c][i].peakMb)}`).join('   ')}`,
);
print(
  `  ${(first * 1e6).toFixed(1)} µs up to ${counted(sizes[1])}, ${(second * 1e6).toFixed(1)} µs from there to ${counted(sizes[2])}: ratio ${ratio(second, first)}`,
);

print();
const copy = join(place, 'written');
rmSync(copy, { recursive: true, force: true });
cpSync(hundred, copy, { recursive: true });
const host = spawnSync(process.execPath, [join(place, 'host.mjs'), copy], {
  encoding: 'utf8',
  stdio: ['ignore', 'pipe', 'inherit'],
});
if (host.status !== 0) throw new Error('the host could not be measured');
const { bareOpens, verifiedOpens, bareKeeps, keptKeeps, megabytes } = JSON.parse(host.stdout);
const between = (name, one, other) =>
  print(`  ${name}${one.toFixed(2)} ms against ${other.toFixed(2)} ms: ratio ${ratio(one, other)}`);
print(`opening and verifying ${counted(held)} entries, against reading, hashing and parsing the same file (test/bench/host.ts)`);
between('', median(verifiedOpens), median(bareOpens));
print('keeping an entry in that book, against appending and flushing the same bytes');
between('median: ', median(keptKeeps), median(bareKeeps));
between('99 of 100 under: ', quantile(keptKeeps, 0.99), quantile(bareKeeps, 0.99));
print(`  ${megabytes.toFixed(0)} MB in the host with that book open`);
rmSync(copy, { recursive: true, force: true });

print();
const empty = join(place, 'book-empty');
rmSync(empty, { recursive: true, force: true });
daybook('new', empty, '--site', 'Empty');
const ready = await windowsReady(
  onPath(['chromium', 'chromium-browser', 'google-chrome']),
  daybookCommand,
  [books.get(20_000), empty],
  rounds,
);
print(
  'from starting the program until the window is drawn: the account of 20,000 entries, against an empty daybook (test/bench/window-ready.mjs)',
);
if (ready === null) say('SKIPPED: no Chromium is installed here, so no window was opened.');
else between('', median(ready.get(books.get(20_000))), median(ready.get(empty)));

print();
const statement = {
  name: 'statement',
  command: [process.execPath, daybookCommand, 'paper', book(ofRuns), 'mercury-account', '--out', join(place, 'statement.pdf')],
};
const drawn = interleaved([statement], Math.min(rounds, 3), join(place, 'printed')).get(statement.name);
print(`the mercury account of a book with 1,000 runs as PDF`);
print(`  ${drawn.seconds.toFixed(2)} s  ${peak(drawn.peakMb)}  ${call(statement.command)}`);
