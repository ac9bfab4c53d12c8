/** The thread backups are made and read in: one job, told of as it goes, answered, and the thread ends. */
import '../../../app/core/zod.ts';
import { parentPort } from 'node:worker_threads';
import { bad, problem } from '../../../app/core/result.ts';
import { errorCode } from '../disk.ts';
import { type Job, runJob } from './jobs.ts';

/** Told at most so often, in milliseconds: a window asks less often than that. */
const toldEveryMs = 100;

parentPort?.once('message', async (job: Job) => {
  let told = 0;
  const progress = (done: number, of: number) => {
    const now = performance.now();
    if (now - told < toldEveryMs) return;
    told = now;
    parentPort?.postMessage({ done, of });
  };
  try {
    parentPort?.postMessage({ answer: await runJob(job, progress) });
  } catch (error) {
    parentPort?.postMessage({ answer: bad(problem('backup-failed', '', { detail: errorCode(error) })) });
  }
});
