/**
 * The host: one function from a web request to its answer, for every carrier alike (the desktop's own scheme, the loopback address, tests). It
 * serves the built window, evidence by name, and the questions of app/contract.ts. It never opens a path a page names and never says more about
 * an unforeseen error than its code.
 */
import {
  mostBackupBytes,
  mostEvidenceBytes,
  mostImportBytes,
  mostQuestionBytes,
  type OpenBook,
  type Question,
  questions,
} from '../../app/contract.ts';
import { read } from '../../app/core/read.ts';
import { bad, problem, type Result } from '../../app/core/result.ts';
import type { z } from '../../app/core/zod.ts';
import { bodyBytes, bodyJson } from './body.ts';
import { windowPolicy } from './headers.ts';
import { plainPage } from './plain-page.ts';
import { type HostOptions, makeQuestions } from './questions.ts';
import { bytesReply, failed, jsonReply, refusal } from './replies.ts';
import { windowFiles } from './window-files.ts';

export type { HostOptions } from './questions.ts';

export interface Host {
  /**
   * Answers a request. A POST is taken only when its `Origin` header is exactly `allowedOrigin`, the origin the carrier serves the window from
   * ("http://127.0.0.1:4711"). Never rejects.
   */
  readonly answer: (request: Request, allowedOrigin: string) => Promise<Response>;
  /** Opens the daybook in a folder somebody named outside the page (command line, the desktop's dialog). */
  readonly openFolder: (dir: string) => Promise<Result<OpenBook>>;
  /** Takes a folder somebody picked outside the page as the place for backups of the open daybook, and begins one. */
  readonly pickBackupPlace: (dir: string) => Promise<Result<null>>;
  /** Finishes what was asked, closes the journal and gives the lock back. */
  readonly close: () => Promise<void>;
}

/** Media types of the answers that are bytes. */
const byteTypes: Partial<Record<Question, string>> = {
  entries: 'application/jsonl; charset=utf-8',
  paper: 'application/pdf',
  issued: 'application/octet-stream',
};

const isQuestion = (name: string): name is Question => Object.hasOwn(questions, name);

export function createHost(options: HostOptions): Host {
  const files = windowFiles(options.windowFolder);
  const { doing, openFolder, pickBackupPlace, evidenceAt, close } = makeQuestions(options);

  const askOf = async (name: Question, request: Request): Promise<Result<unknown>> => {
    const { ask } = questions[name];
    if (ask === 'bytes')
      return bodyBytes(request, 'application/octet-stream', name === 'backup-bring' ? mostBackupBytes : mostEvidenceBytes);
    const value = await bodyJson(request, name === 'import' ? mostImportBytes : mostQuestionBytes);
    return value.ok ? read(ask as z.ZodType<unknown>, value.value) : value;
  };

  const answerQuestion = async (name: string, request: Request): Promise<Response> => {
    if (!isQuestion(name)) return refusal(problem('no-such-question', ''));
    const ask = await askOf(name, request);
    if (!ask.ok) return refusal(...ask.problems);
    const done = await (doing[name] as (ask: unknown) => Promise<Result<unknown>>)(ask.value);
    const type = byteTypes[name];
    return done.ok && type !== undefined ? bytesReply(done.value as Uint8Array, type) : jsonReply(done);
  };

  const answerGet = async (path: string): Promise<Response> => {
    const file = files.get(path);
    if (file) return bytesReply(file.bytes, file.type, windowPolicy);
    if (path === '/') return plainPage('not-built', 503);
    const name = /^\/evidence\/([0-9a-f]{64}\.[a-z]{3})$/.exec(path)?.[1];
    const evidence = name === undefined ? null : await evidenceAt(name);
    if (!evidence) return plainPage('not-here', 404);
    if (!evidence.ok) return refusal(...evidence.problems);
    const { bytes, type } = evidence.value;
    const more: Record<string, string> =
      type === 'application/pdf' ? { 'content-disposition': `attachment; filename="${name}"` } : {};
    return bytesReply(bytes, type, undefined, more);
  };

  const answer = async (request: Request, allowedOrigin: string): Promise<Response> => {
    try {
      const { pathname } = new URL(request.url);
      if (request.method === 'GET' && !pathname.startsWith('/ask/')) return await answerGet(pathname);
      if (request.method !== 'POST')
        return plainPage('wrong-method', 405, { allow: pathname.startsWith('/ask/') ? 'POST' : 'GET' });
      if (request.headers.get('origin') !== allowedOrigin) return refusal(problem('foreign-origin', ''));
      if (!pathname.startsWith('/ask/')) return plainPage('wrong-method', 405, { allow: 'GET' });
      return await answerQuestion(pathname.slice('/ask/'.length), request);
    } catch (error) {
      return refusal(failed(error));
    }
  };

  return {
    answer,
    close,
    openFolder: (dir) => openFolder(dir).catch((error: unknown) => bad(failed(error))),
    pickBackupPlace: (dir) => pickBackupPlace(dir).catch((error: unknown) => bad(failed(error))),
  };
}
