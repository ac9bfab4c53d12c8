import { expect, test } from 'vitest';
import type { PaperProgress } from '../../app/contract.ts';
import { bad, good, problem } from '../../app/core/result.ts';
import { printJobs, type Watch } from '../../main/host/print-jobs.ts';
import { aHost, codesIn } from './a-host.ts';
import { temporaryFolder } from './folder.ts';

/** A printer that is done, or stopped, when it is told. */
function slowPrinter() {
  let finish: (bytes: Uint8Array) => void = () => undefined;
  let watched: Watch | undefined;
  const print = (watch: Watch | undefined) =>
    new Promise<ReturnType<typeof good<Uint8Array>> | ReturnType<typeof bad>>((resolve) => {
      watched = watch;
      finish = (bytes) => resolve(good(bytes));
      watch?.signal.addEventListener('abort', () => resolve(bad(problem('paper-stopped', ''))));
    });
  return { print, finish: (bytes: Uint8Array) => finish(bytes), tell: (p: PaperProgress) => watched?.told(p) };
}

test('a paper being printed tells how far it is, and is forgotten when it is there', async () => {
  const jobs = printJobs();
  const printer = slowPrinter();
  const answer = jobs.run('job-one', printer.print);
  expect(jobs.progress('job-one')).toEqual({ stage: 'reading', share: 0 });
  printer.tell({ stage: 'drawing', share: 0.4 });
  expect(jobs.progress('job-one')).toEqual({ stage: 'drawing', share: 0.4 });
  printer.finish(new Uint8Array([37]));
  expect(await answer).toEqual(good(new Uint8Array([37])));
  expect(jobs.progress('job-one')).toBeNull();
});

test('a paper that is stopped is answered as stopped, and the next one is printed', async () => {
  const jobs = printJobs();
  const answer = jobs.run('job-one', slowPrinter().print);
  expect(jobs.stop('job-two')).toBe(false);
  expect(jobs.stop('job-one')).toBe(true);
  expect(await answer).toEqual(bad(problem('paper-stopped', '')));
  expect(jobs.stop('job-one')).toBe(false);
  expect(await jobs.run('job-one', async () => good(new Uint8Array()))).toEqual(good(new Uint8Array()));
});

test('a second paper under the name of one that is being printed is refused, and the first goes on', async () => {
  const jobs = printJobs();
  const printer = slowPrinter();
  const first = jobs.run('job-one', printer.print);
  expect(await jobs.run('job-one', slowPrinter().print)).toEqual(bad(problem('paper-job-taken', 'job')));
  printer.finish(new Uint8Array());
  expect((await first).ok).toBe(true);
});

test('the page asks the host how far its paper is, and stops it, while the host answers other questions', async () => {
  const printer = slowPrinter();
  const { ask, post, host } = aHost({ print: (...order) => printer.print(order[7]), documents: temporaryFolder() });
  await ask('open', { make: 'Upper battery' });
  expect(await ask('paper-progress', { job: 'job-000001' })).toEqual({ ok: true, value: null });
  const printing = post('/ask/paper', JSON.stringify({ name: 'mercury-account', job: 'job-000001' }));
  while (!(await ask('paper-progress', { job: 'job-000001' }).then((a) => a.ok && a.value))) await Promise.resolve();
  printer.tell({ stage: 'setting', share: 0 });
  expect(await ask('paper-progress', { job: 'job-000001' })).toEqual({ ok: true, value: { stage: 'setting', share: 0 } });
  expect((await ask('state')).ok).toBe(true);
  expect(await ask('paper-stop', { job: 'job-000001' })).toEqual({ ok: true, value: { stopped: true } });
  expect(codesIn((await (await printing).json()) as Awaited<ReturnType<typeof ask>>)).toEqual(['paper-stopped']);
  await host.close();
});
