import { describe, expect, test } from 'vitest';
import { hostOver } from '../../app/daybook/host.ts';

const answering = (text: string, type: string, status = 200): typeof fetch =>
  (async () => new Response(text, { status, headers: { 'content-type': type } })) as typeof fetch;

const state = { version: '1', recents: [], book: null, newIn: 'Documents', now: '2026-03-14T09:20+13:00' };

describe('asking the host', () => {
  test('a good answer comes back as its value', async () => {
    const host = hostOver(answering(JSON.stringify({ ok: true, value: state }), 'application/json; charset=utf-8'));
    expect(await host.ask('state', {})).toEqual({ ok: true, value: state });
  });

  test('problems of the host come back with their fields', async () => {
    const problems = [{ code: 'unknown-id', field: 'body.retort', data: { id: 'x' } }];
    const host = hostOver(answering(JSON.stringify({ ok: false, problems }), 'application/json', 400));
    expect(await host.ask('state', {})).toEqual({ ok: false, problems });
  });

  test('an answer that does not fit the contract is not taken', async () => {
    const host = hostOver(answering(JSON.stringify({ ok: true, value: { ...state, version: 3 } }), 'application/json'));
    expect(await host.ask('state', {})).toEqual({ ok: false, problems: [{ code: 'host-unclear', field: '' }] });
  });

  test('a page instead of an answer is not taken', async () => {
    const host = hostOver(answering('<html>', 'text/html', 502));
    expect(await host.ask('state', {})).toEqual({ ok: false, problems: [{ code: 'host-unclear', field: '' }] });
  });

  test('a host that cannot be reached is a problem and no exception', async () => {
    const host = hostOver((() => Promise.reject(new TypeError('failed'))) as typeof fetch);
    expect(await host.ask('state', {})).toEqual({ ok: false, problems: [{ code: 'host-silent', field: '' }] });
  });

  test('entries come as bytes, and their media type is not mistaken for an answer in JSON', async () => {
    const host = hostOver(answering('{"n":1}\n{"n":2}\n', 'application/jsonl'));
    const got = await host.ask('entries', {});
    expect(got.ok && new TextDecoder().decode(got.value)).toBe('{"n":1}\n{"n":2}\n');
  });

  test('a question goes out as JSON text to its own address', async () => {
    const sent: [string, RequestInit | undefined][] = [];
    const host = hostOver((async (url: string, init?: RequestInit) => {
      sent.push([url, init]);
      return new Response(JSON.stringify({ ok: true, value: state }), { headers: { 'content-type': 'application/json' } });
    }) as typeof fetch);
    await host.ask('open', { recent: 'k' });
    expect(sent[0]?.[0]).toBe('/ask/open');
    expect(sent[0]?.[1]?.method).toBe('POST');
    expect(sent[0]?.[1]?.body).toBe('{"recent":"k"}');
  });
});
