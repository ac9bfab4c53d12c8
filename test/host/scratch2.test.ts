import { test } from 'vitest';
import { Session } from 'node:inspector/promises';
import { writeFileSync } from 'node:fs';
import { readBook } from '../../app/core/book/book.ts';
import { journalOf } from '../../main/host/sample/write.ts';
import { generated } from '../../main/host/sample/large.ts';
test('x', async () => {
  const es = journalOf(generated(8000, 1)).trim().split('\n').map((l) => JSON.parse(l));
  const s = new Session(); s.connect(); await s.post('Profiler.enable'); await s.post('Profiler.start');
  let t = Date.now(); const b = readBook(es); console.log('readBook 8000', Date.now()-t);
  const { profile } = await s.post('Profiler.stop');
  const self = new Map<string, number>(); const dt = profile.timeDeltas!; const samples = profile.samples!;
  const byId = new Map(profile.nodes.map((n) => [n.id, n]));
  samples.forEach((id, i) => { const n = byId.get(id)!; const k = n.callFrame.functionName + ' ' + n.callFrame.url.split('/').pop() + ':' + n.callFrame.lineNumber; self.set(k, (self.get(k) ?? 0) + (dt[i] ?? 0)); });
  console.log([...self].sort((a, b) => b[1] - a[1]).slice(0, 14).map(([k, v]) => (v / 1000).toFixed(0) + ' ms ' + k).join('\n'));
});
