/** Building: only when needed, whole at every moment, and one at a time. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { dist, root } from '../../main/build/paths.mjs';
import { upToDate } from '../../main/build/stamp.mjs';
import { printPaper } from '../../main/host/print.ts';
import { writeSample } from '../../main/host/sample/write.ts';
import { version } from '../../main/host/version.ts';
import { buildOnce, daybook, run } from './built.ts';

beforeAll(() => buildOnce(), 120_000);
const node = (file: string, ...args: string[]) => run(process.execPath, [join(root, 'main/build', file), ...args]);

describe('the build', () => {
  it('holds the window, the command, the desktop and the printer, and is known to be up to date', async () => {
    for (const file of ['window/index.html', 'daybook.mjs', 'desktop.mjs', 'print-worker.mjs'])
      expect([file, existsSync(join(dist, file))]).toEqual([file, true]);
    // somebody may be writing in the sources meanwhile: then it is built again
    await vi.waitFor(() => {
      buildOnce();
      expect(upToDate()).toBe(true);
    }, 60_000);
  });

  it('is skipped when nothing changed: the launcher says nothing and passes the command through', async () => {
    const { code, out, err } = await node('daybook.mjs', 'help');
    expect([code, err]).toEqual([0, '']);
    expect(out).toBe((await daybook(['help'])).out);
    expect((await node('daybook.mjs', 'weigh')).code).toBe(2);
  });

  it('prints several papers in one thread, the same bytes as without one, and ends by itself', async () => {
    const place = mkdtempSync(join(tmpdir(), 'printed-'));
    try {
      const { code, err } = await daybook(['sample', join(place, 'built')]);
      expect([code, err]).toEqual([0, '']);
      // here no built thread lies beside the sources: each paper is printed on the spot
      expect(await writeSample(join(place, 'here'), null, { print: printPaper, version })).toMatchObject({ ok: true });
      const closings = (name: string) =>
        readdirSync(join(place, name, 'closings')).map((file) => [
          file,
          readFileSync(join(place, name, 'closings', file), 'base64'),
        ]);
      expect(closings('built')).toHaveLength(6);
      expect(closings('built')).toEqual(closings('here'));
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  }, 60_000);

  it('has a page without scripts or styles of its own, which the strict policy would not run', () => {
    const page = readFileSync(join(dist, 'window/index.html'), 'utf8');
    expect(page).not.toMatch(/<script(?![^>]*\bsrc=)[^>]*>|<style|\sstyle=|\son\w+=|javascript:/i);
    expect(page).toMatch(/<script type="module" crossorigin src="\/assets\/[\w.-]+\.js">/);
    expect(page).not.toMatch(/https?:\/\//);
  });

  it('leaves commands whole while it is being replaced by two builders at once', async () => {
    let building = true;
    const builders = Promise.all([node('build.mjs', '--force'), node('build.mjs', '--force')]).then((ended) => {
      building = false;
      return ended;
    });
    const seen: (number | null)[] = [];
    while (building) seen.push((await daybook(['help'])).code);
    expect((await builders).map(({ code }) => code)).toEqual([0, 0]);
    expect(seen.length).toBeGreaterThan(2);
    expect(new Set(seen)).toEqual(new Set([0]));
  }, 120_000);

  it('keeps its talk off standard output', async () => {
    const { out, err } = await node('build.mjs', '--force');
    expect(out).toBe('');
    expect(err).toContain('built dist/');
  }, 60_000);
});
