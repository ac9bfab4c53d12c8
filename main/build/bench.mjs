/**
 * `npm run bench`: measures the promises of speed and prints each as a ratio with the call it came from. The built command against `ledger` and
 * `hledger` on the same movements; the host against the bare minimum. Books are generated, the same every time, and kept in .cache/bench.
 * `-- --runs N` changes the eleven rounds.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { interleaved, median, quantile } from '../../test/bench/whole-processes.mjs';
import { onPath } from './browser.mjs';
import { build } from './build.mjs';
import { nodeConfig } from './configs.mjs';
import { cache, daybookCommand, root, say } from './paths.mjs';

const asked = process.argv.indexOf('--runs');
const rounds = asked > 0 ? Number(process.argv[asked + 1]) : 11;
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
const [small, middle, large] = [20_000, 100_000, 300_000].map(book);
const file = join(place, 'movements.journal');
const movements = journal(middle, file);
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

print(`Node ${process.version}, medians of ${rounds}, in turn. Times are of whole processes, start included.`);
print();
print(`account of 100,000 entries (${movements} movements)`);
const ours = account(middle);
const took = interleaved([ours, ...engines], rounds, join(place, 'printed'));
const mine = took.get(ours.name);
for (const { name, command } of [ours, ...engines]) {
  const { seconds, peakMb } = took.get(name);
  const call = command
    .join(' ')
    .replaceAll(`${root}`, '')
    .replaceAll(process.execPath, 'node')
    .replaceAll('\t', '\\t')
    .replaceAll('\n', '\\n');
  const peak = peakMb === null ? 'peak memory unknown: no GNU time here' : `${peakMb.toFixed(0)} MB`;
  print(
    `  ${seconds.toFixed(2)} s  ${peak}  ${name === ours.name ? '' : `${ratio(seconds, mine.seconds)} times as long as the daybook  `}${call}`,
  );
}

print();
print('marginal time of an entry');
const sizes = interleaved([small, middle, large].map(account), Math.min(rounds, 5), join(place, 'printed'));
const [a, b, c] = [small, middle, large].map((dir) => sizes.get(account(dir).name));
const [first, second] = [(b.seconds - a.seconds) / 80_000, (c.seconds - b.seconds) / 200_000];
print(`  20,000: ${a.seconds.toFixed(2)} s   100,000: ${b.seconds.toFixed(2)} s   300,000: ${c.seconds.toFixed(2)} s`);
print(
  `  ${(first * 1e6).toFixed(1)} µs from 20,000 to 100,000, ${(second * 1e6).toFixed(1)} µs from 100,000 to 300,000: ratio ${ratio(second, first)}`,
);

print();
const copy = join(place, 'written');
rmSync(copy, { recursive: true, force: true });
cpSync(middle, copy, { recursive: true });
const host = spawnSync(process.execPath, [join(place, 'host.mjs'), copy], {
  encoding: 'utf8',
  stdio: ['ignore', 'pipe', 'inherit'],
});
if (host.status !== 0) throw new Error('the host could not be measured');
const { bareOpens, verifiedOpens, bareKeeps, keptKeeps } = JSON.parse(host.stdout);
print('opening and verifying 100,000 entries, against reading, hashing and parsing the same file');
print(
  `  ${median(verifiedOpens).toFixed(0)} ms against ${median(bareOpens).toFixed(0)} ms: ratio ${ratio(median(verifiedOpens), median(bareOpens))}`,
);
print('keeping an entry in that book, against appending and flushing the same bytes');
for (const [name, of] of [
  ['median', median],
  ['99 of 100 under', (values) => quantile(values, 0.99)],
])
  print(
    `  ${name}: ${of(keptKeeps).toFixed(2)} ms against ${of(bareKeeps).toFixed(2)} ms: ratio ${ratio(of(keptKeeps), of(bareKeeps))}`,
  );
rmSync(copy, { recursive: true, force: true });
