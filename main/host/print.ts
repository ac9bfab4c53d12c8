/**
 * Prints papers: from all entries of a daybook to the bytes of a PDF, the same bytes for the same entries on every machine and day. Drawing is
 * slow, so the built program does it in a thread of its own; where no built thread lies beside this file (tests), it is done right here. Nothing
 * is fetched and no file but the paper's own fonts is read.
 */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import type { PaperName, PaperProgress } from '../../app/contract.ts';
import type { Entry } from '../../app/core/entry.ts';
import { bad, problem, type Result } from '../../app/core/result.ts';
import type { CoveredDesk } from '../../app/papers/paper.ts';
import { errorCode } from './disk.ts';
import type { Watch } from './print-jobs.ts';
import { type PrintOrder, renderPaper } from './print-render.ts';

export { renderPaper } from './print-render.ts';

const threadFile = join(dirname(fileURLToPath(import.meta.url)), 'print-worker.mjs');

/** How long a thread with nothing to print is kept: papers asked for in a row then load the paper machine and its fonts once. */
const keptMs = 5000;

/** A thread and what it is printing for, if it is. */
interface Printer {
  readonly thread: Worker;
  answer: ((answer: Result<Uint8Array>) => void) | null;
  told: Watch['told'] | null;
  rest: NodeJS.Timeout | null;
}

const resting: Printer[] = [];

function started(): Printer {
  const printer: Printer = { thread: new Worker(threadFile), answer: null, told: null, rest: null };
  const { thread } = printer;
  const gone = (detail: string) => {
    const place = resting.indexOf(printer);
    if (place >= 0) resting.splice(place, 1);
    printer.answer?.(bad(problem('paper-failed', '', { detail })));
    printer.answer = null;
  };
  thread.on('message', (said: { progress: PaperProgress } | { answer: Result<Uint8Array> }) => {
    if ('progress' in said) {
      printer.told?.(said.progress);
      return;
    }
    // a thread at rest must not keep the program from ending
    thread.unref();
    resting.push(printer);
    printer.rest = setTimeout(() => {
      gone('exit');
      void thread.terminate();
    }, keptMs);
    printer.rest.unref();
    printer.answer?.(said.answer);
    printer.answer = null;
  });
  // a thread that ends without an answer has failed
  thread.once('error', (error) => gone(errorCode(error)));
  thread.once('exit', () => gone('exit'));
  return printer;
}

/** Each paper has a thread to itself while it is printed. One that is stopped takes its thread with it: nothing of it is left. */
function inThread(order: PrintOrder, watch: Watch | undefined): Promise<Result<Uint8Array>> {
  const printer = resting.pop() ?? started();
  if (printer.rest !== null) clearTimeout(printer.rest);
  printer.thread.ref();
  return new Promise((resolve) => {
    const stop = () => {
      resolve(bad(problem('paper-stopped', '')));
      printer.answer = null;
      void printer.thread.terminate();
    };
    printer.told = watch?.told ?? null;
    printer.answer = (answer) => {
      watch?.signal.removeEventListener('abort', stop);
      resolve(answer);
    };
    watch?.signal.addEventListener('abort', stop, { once: true });
    printer.thread.postMessage(order);
  });
}

/**
 * Prints a paper.
 * @param entries all entries of all desks that verify
 * @param daybookName the site's name, at the head of every page
 * @param endMarks every desk the entries come from, with its number of entries and the hash of its last one
 * @param name which paper
 * @param id what it is about: for a run sheet, the id of any charge of the run
 * @param ends for papers over a period: its first and last day or moment; left out, the whole book
 * @param closing for the mercury account: the closing whose statement it is; its period is then the closing's
 * @param watch is told how far it is; its signal stops it
 * @returns the PDF, or a problem: `paper-no-id`, `paper-takes-no-id`, `paper-takes-no-period`, `not-a-day`, `period-reversed`,
 *   `paper-no-such-run`, `paper-no-such`, `paper-not-understood`, `paper-failed`, `paper-stopped`
 */
export function printPaper(
  entries: readonly Entry[],
  daybookName: string,
  endMarks: readonly CoveredDesk[],
  name: PaperName,
  id: string | undefined,
  ends: PrintOrder['ends'] = {},
  closing?: PrintOrder['closing'],
  watch?: Watch,
): Promise<Result<Uint8Array>> {
  const desks = endMarks.map(({ desk, entries: count, endMark, key, signed, leftOut }) => ({
    desk,
    entries: count,
    endMark,
    key,
    signed,
    leftOut,
  }));
  const order: PrintOrder = { entries, site: daybookName, desks, name, id, ends, closing };
  return existsSync(threadFile) ? inThread(order, watch) : renderPaper(order, watch?.told);
}
