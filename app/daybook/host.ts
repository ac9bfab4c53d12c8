/**
 * Asks the host. What comes back passes the contract's schemas, except the entries, which the host has validated line by line. A host that does
 * not answer, or answers what nobody understands, is a problem in words like any other and never an exception.
 */
import { type Answer, type AskOf, type Question, questions, type ReplyOf } from '../contract.ts';
import { read } from '../core/read.ts';
import { bad, good, type Problem, problem, type Result } from '../core/result.ts';
import { z } from '../core/zod.ts';

/** The host as the window sees it. */
export interface Host {
  readonly ask: <Q extends Question>(question: Q, body: AskOf<Q>) => Promise<Answer<Q>>;
}

const refusal = z.object({
  ok: z.literal(false),
  problems: z.array(
    z.object({ code: z.string(), field: z.string(), data: z.record(z.string(), z.union([z.string(), z.number()])).optional() }),
  ),
});
const consent = z.object({ ok: z.literal(true), value: z.unknown() });

const unclear: Result<never> = bad(problem('host-unclear', ''));

/** Reads a JSON answer: its value by the schema of the reply, or its problems. */
function answered<Q extends Question>(question: Q, text: string): Answer<Q> {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return unclear;
  }
  const no = refusal.safeParse(json);
  if (no.success) return bad(...(no.data.problems as readonly Problem[]));
  const yes = consent.safeParse(json);
  const schema = questions[question].reply;
  if (!yes.success || schema === 'bytes') return unclear;
  const value = read(schema as unknown as z.ZodType<ReplyOf<Q>>, yes.data.value);
  return value.ok ? value : unclear;
}

/** A host that is asked over `fetch`, at `/ask/<question>` of the page's own origin. */
export function hostOver(fetching: typeof fetch): Host {
  return {
    async ask<Q extends Question>(question: Q, body: AskOf<Q>): Promise<Answer<Q>> {
      const bytes = body instanceof Uint8Array;
      try {
        const response = await fetching(`/ask/${question}`, {
          method: 'POST',
          headers: { 'content-type': bytes ? 'application/octet-stream' : 'application/json' },
          body: bytes ? (body.slice().buffer as ArrayBuffer) : JSON.stringify(body),
        });
        const json = /^application\/json\b/.test(response.headers.get('content-type') ?? '');
        if (questions[question].reply === 'bytes' && response.ok && !json)
          return good(new Uint8Array(await response.arrayBuffer()) as ReplyOf<Q>);
        return answered(question, await response.text());
      } catch {
        return bad(problem('host-silent', ''));
      }
    },
  };
}
