/** The thread papers are printed in: takes one order after another, tells how far it is, and answers each with the bytes or the problems. */
import '../../app/core/zod.ts';
import { parentPort } from 'node:worker_threads';
import { bad, problem, type Result } from '../../app/core/result.ts';
import { errorCode } from './disk.ts';
import { type PrintOrder, renderPaper } from './print-render.ts';

async function answerTo(order: PrintOrder): Promise<Result<Uint8Array>> {
  try {
    return await renderPaper(order, (progress) => parentPort?.postMessage({ progress }));
  } catch (error) {
    return bad(problem('paper-failed', '', { detail: errorCode(error) }));
  }
}

parentPort?.on('message', async (order: PrintOrder) => {
  const answer = await answerTo(order);
  parentPort?.postMessage({ answer }, answer.ok ? [answer.value.buffer as ArrayBuffer] : []);
});
