/** A host on temporary folders for tests, and its window's way of asking. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { OpenBook } from '../../app/contract.ts';
import type { Problem, Result } from '../../app/core/result.ts';
import { createHost, type Host, type HostOptions } from '../../main/host/host.ts';
import { now } from './drafts.ts';
import { temporaryFolder } from './folder.ts';

export const origin = 'http://127.0.0.1:4711';

export interface AHost {
  readonly host: Host;
  readonly options: HostOptions;
  /** Posts a value as the window does. */
  readonly ask: (question: string, value?: unknown) => Promise<Result<Record<string, unknown>>>;
  readonly post: (path: string, body: string | Uint8Array, headers?: Record<string, string>) => Promise<Response>;
  readonly get: (path: string) => Promise<Response>;
}

/** A built window of two files and one that is never served. */
export function aWindow(): string {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>window</title>');
  writeFileSync(join(folder, 'assets', 'start.js'), 'start()');
  writeFileSync(join(folder, 'assets', 'secret.key'), 'not listed');
  return folder;
}

export function aHost(more: Partial<HostOptions> = {}): AHost {
  const options: HostOptions = {
    home: temporaryFolder(),
    documents: temporaryFolder(),
    windowFolder: aWindow(),
    clock: () => now,
    version: '0.1.0',
    print: async (entries, site, desks, name, id) => ({
      ok: true,
      value: Buffer.from(`%PDF-${site} ${name} ${id} ${entries.length} ${desks.map((d) => d.entries)}`),
    }),
    ...more,
  };
  const host = createHost(options);
  const post: AHost['post'] = (path, body, headers = {}) =>
    host.answer(
      new Request(`${origin}${path}`, {
        method: 'POST',
        body: body as BodyInit,
        headers: { origin, 'content-type': 'application/json', ...headers },
      }),
      origin,
    );
  return {
    host,
    options,
    post,
    ask: async (question, value = {}) =>
      (await (await post(`/ask/${question}`, JSON.stringify(value))).json()) as Result<Record<string, unknown>>,
    get: (path) => host.answer(new Request(`${origin}${path}`), origin),
  };
}

/** The open daybook a `state` answer tells of. */
export const bookIn = (answer: Result<Record<string, unknown>>): OpenBook => {
  if (!answer.ok || !answer.value.book) throw new Error(`no daybook is open: ${JSON.stringify(answer)}`);
  return answer.value.book as OpenBook;
};

export const codesIn = (answer: { ok: boolean; problems?: readonly Problem[] }): string[] =>
  (answer.problems ?? []).map((p) => p.code);
