/**
 * Reads what a question brings along, never more of it than is allowed: a body is counted while it comes in and cut off at the limit, whatever
 * its sender said its length was.
 */
import { bad, good, problem, type Result } from '../../app/core/result.ts';

/** The media type of a request without its parameters. */
const typeOf = (request: Request): string => (request.headers.get('content-type') ?? '').split(';')[0]!.trim().toLowerCase();

/** The bytes of a body of this media type, at most `most` of them. */
export async function bodyBytes(request: Request, type: string, most: number): Promise<Result<Uint8Array>> {
  if (typeOf(request) !== type) return bad(problem('body-type', '', { wanted: type }));
  const tooLarge = bad(problem('body-too-large', '', { most }));
  if (Number(request.headers.get('content-length') ?? 0) > most) return tooLarge;
  const parts: Uint8Array[] = [];
  let size = 0;
  const reader = (request.body as ReadableStream<Uint8Array> | null)?.getReader();
  try {
    for (let part = await reader?.read(); part && !part.done; part = await reader?.read()) {
      size += part.value.byteLength;
      if (size > most) {
        await reader?.cancel();
        return tooLarge;
      }
      parts.push(part.value);
    }
  } catch {
    return bad(problem('body-cut', ''));
  }
  return good(Buffer.concat(parts, size));
}

/** The value of a body of JSON text. */
export async function bodyJson(request: Request, most: number): Promise<Result<unknown>> {
  const bytes = await bodyBytes(request, 'application/json', most);
  if (!bytes.ok) return bytes;
  try {
    return good(JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes.value)));
  } catch {
    return bad(problem('not-json', ''));
  }
}
