/** The thread papers are printed in: takes one order, answers with the bytes or the problems, and is done. */
import '../../app/core/zod.ts';
import { parentPort, workerData } from 'node:worker_threads';
import { bad, problem } from '../../app/core/result.ts';
import { errorCode } from './disk.ts';
import { type PrintOrder, renderPaper } from './print-render.ts';

try {
  const answer = await renderPaper(workerData as PrintOrder);
  parentPort?.postMessage(answer, answer.ok ? [answer.value.buffer as ArrayBuffer] : []);
} catch (error) {
  parentPort?.postMessage(bad(problem('paper-failed', '', { detail: errorCode(error) })));
}
