import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { reasonCodes } from '../../app/core/reckon/answer.ts';
import { reckon, reckonTopics } from '../../app/core/reckon/index.ts';
import { runFindings } from '../../app/core/run.ts';
import { findingWords } from '../../app/words/findings.ts';
import { figureFindings } from '../../app/words/findings-of-figures.ts';
import { problemText, problemTexts } from '../../app/words/problems.ts';
import { reasonTexts, spoken } from '../../app/words/reasons.ts';

const here = (path: string) => new URL(`../../app/core/${path}`, import.meta.url);
const sources = [
  ...readdirSync(here('reckon')).map((name) => `reckon/${name}`),
  'mass.ts',
  'quantity.ts',
  'volume.ts',
  'shift-clock.ts',
  'read.ts',
].map((path) => readFileSync(here(path), 'utf8'));

describe('problems', () => {
  test('every code that a reckoning can refuse with has words of its own', () => {
    const codes = new Set(
      sources.flatMap((text) => [
        ...[...text.matchAll(/\bproblem\(\s*'([a-z0-9-]+)'/g)].map((m) => m[1] ?? ''),
        ...[...text.matchAll(/code: '([a-z0-9-]+)' \}/g)].map((m) => m[1] ?? ''),
        ...[...text.matchAll(/refuse\('([a-z-]+)'/g)].flatMap((m) => [`mass-${m[1]}`, `volume-${m[1]}`]),
        ...[...text.matchAll(/numberAtLeast\(\d, '([a-z0-9-]+)'/g)].map((m) => m[1] ?? ''),
      ]),
    );
    expect(codes.size).toBeGreaterThan(50);
    for (const code of codes) expect(Object.keys(problemTexts), code).toContain(code);
  });

  test('a sentence names what was read and what to write instead', () => {
    const said = (mass: string) => {
      const got = reckon('mass', { mass, to: [] });
      return got.ok ? '' : problemText(got.problems[0] ?? { code: '', field: '' });
    };
    expect(said('3 oz')).toContain('ozt');
    expect(said('3 oz')).toContain('oz-av');
    expect(said('3 ton')).toContain('long-ton');
    expect(said('3 stone')).toContain('“stone”');
    expect(said('1,5 g')).toContain('“1,5 g”');
  });

  test('no sentence has a hole in it', () => {
    for (const topic of reckonTopics)
      for (const input of [
        null,
        {},
        { mass: 1, text: 2, readings: [{}], items: [{}], bars: [{}], samples: [{}], names: [1], zzz: 1 },
      ]) {
        const got = reckon(topic, input);
        if (!got.ok) for (const p of got.problems) expect(problemText(p), p.code).not.toMatch(/undefined|NaN/);
      }
  });

  test('a code without words is still told', () => {
    expect(problemText({ code: 'never-heard-of', field: '' })).toContain('never-heard-of');
    expect(problemText({ code: 'constructor', field: '' })).toContain('constructor');
  });
});

describe('reasons', () => {
  test('every reason is said, and put in the place of its code at any depth', () => {
    for (const code of reasonCodes)
      expect(spoken({ a: [{ not_computable: code }] })).toEqual({ a: [{ not_computable: reasonTexts[code] }] });
  });

  test('a whole reckoning passes through with everything else as it was', () => {
    const got = spoken(reckon('melt', { sponge: [], bars: [] }));
    expect(got).toMatchObject({
      ok: true,
      value: { in_g: 0, findings: [], shrinkage_of_in: { not_computable: reasonTexts['nothing-melted'] } },
    });
    const refusal = reckon('melt', {});
    expect(spoken(refusal)).toEqual(refusal);
  });
});

describe('findings of a run', () => {
  test('each says what the numbers show, what may be behind it, and what to do next', () => {
    for (const code of runFindings) {
      const words = findingWords[code];
      expect(words.says, code).toMatch(/\.$/);
      expect(words.causes.length, code).toBeGreaterThan(0);
      expect(words.next.length, code).toBeGreaterThan(0);
    }
  });

  test('no sentence calls anything safe, approved, compliant, authorised or evaporated', () => {
    const all = JSON.stringify([findingWords, figureFindings, reasonTexts, Object.values(problemTexts).map((say) => say({}))]);
    expect(all).not.toMatch(/(?<!the )\b(safe|safely|approved|compliant|authori[sz]ed|evaporated)\b/i);
  });

  test('what any other reckoning finds is said as well', () => {
    const found = [
      reckon('assay', { samples: [{ sample_mg: 100, cornet_mg: 99, bead_mg: 101 }] }),
      reckon('melt', { sponge: ['1 g'], bars: ['2 g'] }),
      reckon('reading', { mg_m3: 20, temperature_c: 20, pressure_kpa: 101.325 }),
      reckon('vapour', { temperature_c: 400 }),
      reckon('exposure', {
        readings: [{ from: '06:00', to: '07:00', mg_m3: 1, mark: '<' }],
        shift: { from: '06:00', to: '18:00' },
        limits: [],
      }),
    ].flatMap((got) => (got.ok ? (got.value.findings as string[]) : []));
    expect(found).toHaveLength(11);
    for (const code of found) expect(Object.keys(figureFindings)).toContain(code);
  });
});
