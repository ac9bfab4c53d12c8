/**
 * Times whole processes from outside, one after another in turn, so that what else the machine does falls on all of them alike. The peak of memory
 * and the processor's time are what the system's `time` reports (GNU time); where that is missing they are said to be unknown and never guessed.
 */
import { spawnSync } from 'node:child_process';
import { closeSync, existsSync, openSync, readFileSync, rmSync } from 'node:fs';
import { performance } from 'node:perf_hooks';

const gnuTime = '/usr/bin/time';

/** The middle of the values. */
export const median = (values) => {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
};

/** The value below which this share of them lies. */
export const quantile = (values, share) =>
  values.toSorted((a, b) => a - b)[Math.min(values.length - 1, Math.floor(values.length * share))];

/** Runs a command once, its output into a file that is thrown away: seconds, seconds of processor time, and megabytes at the peak (null: unknown). */
function once({ name, command }, scratch) {
  const told = `${scratch}.peak`;
  const measured = existsSync(gnuTime) ? [gnuTime, '-f', '%M %U %S', '-o', told, ...command] : command;
  const out = openSync(scratch, 'w');
  const began = performance.now();
  const ran = spawnSync(measured[0], measured.slice(1), {
    stdio: ['ignore', out, 'inherit'],
    env: { ...process.env, LC_ALL: 'C.UTF-8' },
  });
  const seconds = (performance.now() - began) / 1000;
  closeSync(out);
  if (ran.status !== 0) throw new Error(`${name} ended with ${ran.status ?? ran.error}`);
  const [kilobytes, user, system] = existsSync(told) ? readFileSync(told, 'utf8').split(' ').map(Number) : [];
  rmSync(told, { force: true });
  return kilobytes === undefined
    ? { seconds, busy: null, peakMb: null }
    : { seconds, busy: user + system, peakMb: kilobytes / 1024 };
}

/** Each command so many times, interleaved, after one round that warms the disk's cache: by name, median seconds (all and of processor) and the highest peak. */
export function interleaved(commands, rounds, scratch) {
  for (const command of commands) once(command, scratch);
  const times = new Map(commands.map(({ name }) => [name, []]));
  for (let round = 0; round < rounds; round += 1)
    for (const command of commands) times.get(command.name).push(once(command, scratch));
  rmSync(scratch, { force: true });
  return new Map(
    [...times].map(([name, runs]) => [
      name,
      {
        seconds: median(runs.map((r) => r.seconds)),
        busy: runs.some((r) => r.busy === null) ? null : median(runs.map((r) => r.busy)),
        peakMb: runs.some((r) => r.peakMb === null) ? null : Math.max(...runs.map((r) => r.peakMb)),
      },
    ]),
  );
}
