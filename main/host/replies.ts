/** The answers the host gives as JSON or bytes; plain-page.ts has those for people who came to the wrong place. Never a stack trace, never a path of ours. */

import { bad, type Problem, problem, type Result } from '../../app/core/result.ts';
import { errorCode } from './disk.ts';
import { barePolicy, headersFor } from './headers.ts';

/** A copy of exactly these bytes: a Buffer may be a part of a larger store, which must not be sent along. */
const body = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

/** An answer as JSON text. A refused value is still a good answer: the status speaks of the question, not of the entry. */
export const jsonReply = (answer: Result<unknown>, status = 200): Response =>
  new Response(JSON.stringify(answer), { status, headers: headersFor('application/json; charset=utf-8', barePolicy) });

/** Bytes under a media type. */
export const bytesReply = (bytes: Uint8Array, type: string, policy = barePolicy, more: Record<string, string> = {}): Response =>
  new Response(body(bytes), { headers: { ...headersFor(type, policy), ...more } });

/** Problems of the question itself and the status each is answered with. */
const statuses: Readonly<Record<string, number>> = {
  'not-json': 400,
  'body-cut': 400,
  'foreign-origin': 403,
  'no-session': 403,
  'session-locked': 423,
  'no-such-question': 404,
  'evidence-changed': 409,
  'body-too-large': 413,
  'body-type': 415,
  'host-failed': 500,
  'host-closed': 503,
};

/** A refusal as JSON text. */
export const refusal = (...problems: readonly Problem[]): Response =>
  jsonReply(bad(...problems), statuses[problems[0]?.code ?? ''] ?? 400);

/** What is answered when something failed that nobody foresaw. */
export const failed = (error: unknown): Problem => problem('host-failed', '', { detail: errorCode(error).slice(0, 60) });
