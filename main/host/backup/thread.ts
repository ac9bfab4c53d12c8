/**
 * Hands a job to a thread of its own, so that the window is answered meanwhile: hashing, sealing and the work of a passphrase would hold it up.
 * Where no built thread lies beside this file (tests), it is done right here.
 */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { bad, problem, type Result } from '../../../app/core/result.ts';
import { errorCode } from '../disk.ts';
import { type JobName, type Jobs, runJob } from './jobs.ts';
import type { Progress } from './unpack.ts';

const threadFile = join(dirname(fileURLToPath(import.meta.url)), 'backup-worker.mjs');

/** Does a job. `backup-failed` where the thread ended without an answer; a signal ends it, and what it had begun is not there or not named. */
export function done<J extends JobName>(
  job: J,
  asides: string,
  order: Jobs[J]['order'],
  progress: Progress,
  signal: AbortSignal,
): Promise<Result<Jobs[J]['done']>> {
  const whole = { job, asides, order } as Parameters<typeof runJob>[0];
  if (!existsSync(threadFile)) return runJob(whole, progress) as Promise<Result<Jobs[J]['done']>>;
  const thread = new Worker(threadFile);
  // an unfinished backup must not keep the program from ending
  thread.unref();
  return new Promise((resolve) => {
    const failed = (detail: string) => {
      signal.removeEventListener('abort', stop);
      resolve(bad(problem('backup-failed', '', { detail })));
    };
    const stop = () => void thread.terminate();
    signal.addEventListener('abort', stop, { once: true });
    thread.on('message', (told: { done: number; of: number } | { answer: Result<Jobs[J]['done']> }) => {
      if (!('answer' in told)) return progress(told.done, told.of);
      signal.removeEventListener('abort', stop);
      resolve(told.answer);
      void thread.terminate();
    });
    thread.once('error', (error) => failed(errorCode(error)));
    thread.once('exit', () => failed('exit'));
    thread.postMessage(whole);
  });
}
