/**
 * Papers that are being printed for a page: how far each is, and how it is stopped. A job is named by the page that asked for it and stands only while
 * its paper is printed.
 */
import type { PaperProgress } from '../../app/contract.ts';
import { bad, problem, type Result } from '../../app/core/result.ts';

/** Whoever prints tells how far it is, and ends when the signal says so. */
export interface Watch {
  readonly signal: AbortSignal;
  readonly told: (progress: PaperProgress) => void;
}

export interface PrintJobs {
  /** Prints under a name; without one it cannot be asked after. Problems: `paper-job-taken`, and those of the printing. */
  readonly run: (
    job: string | undefined,
    print: (watch: Watch | undefined) => Promise<Result<Uint8Array>>,
  ) => Promise<Result<Uint8Array>>;
  readonly progress: (job: string) => PaperProgress | null;
  /** False where no paper is being printed under that name. */
  readonly stop: (job: string) => boolean;
}

export function printJobs(): PrintJobs {
  const jobs = new Map<string, { progress: PaperProgress; readonly ending: AbortController }>();
  return {
    run: async (job, print) => {
      if (job === undefined) return print(undefined);
      if (jobs.has(job)) return bad(problem('paper-job-taken', 'job'));
      const own = { progress: { stage: 'reading', share: 0 } as PaperProgress, ending: new AbortController() };
      jobs.set(job, own);
      const told = (progress: PaperProgress) => {
        own.progress = progress;
      };
      try {
        return await print({ signal: own.ending.signal, told });
      } finally {
        jobs.delete(job);
      }
    },
    progress: (job) => jobs.get(job)?.progress ?? null,
    stop: (job) => {
      const own = jobs.get(job);
      own?.ending.abort();
      return own !== undefined;
    },
  };
}
