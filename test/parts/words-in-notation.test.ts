/** No text that window or paper show keeps a point, or degrees Celsius, where the site writes otherwise. */
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readBook } from '../../app/core/book/book.ts';
import { ownNotation } from '../../app/core/book/site-notation.ts';
import { differences } from '../../app/papers/run-sheet/changes.ts';
import { rowsOf } from '../../app/screens/daybook/rows.ts';
import { changesBetween } from '../../app/screens/retort/changes.ts';
import { exampleOf } from '../../app/screens/words/examples.ts';
import { saidOf } from '../../app/screens/words/routes.ts';
import { glossary } from '../../app/words/glossary.ts';
import { writeIn } from '../../app/words/notation.ts';
import { workingKeys } from '../../app/words/workings.ts';
import { root } from '../../main/build/paths.mjs';
import { sources } from '../house/sources.ts';

/** The terminal writes as the program does, whatever the site says; code to copy is code. Explanations of words are marked as they are shown. */
const plain = /\/(?:terminal|problems-terminal|verify|notation|record-fields|glossary[a-z-]*)\.ts$/;
/** What only the terminal can be answered: it asks for text in quotation marks. */
const quoted = /\.(?:mass-not-text|volume-not-text|old-number)\(\)$/;
/** Fields of the record, whose unit is put right where their value is told. */
const kept = / fieldNames\.\w+C$/;
/** Sections, standards and versions, which are names and no numbers. */
const cited =
  /JCGM 100:2008, (?:equation \(\d+\)(?:, | and )?)?(?:[A-Z0-9.]+(?:, | and )?)*|OIML R [^;]*|29 CFR [\d.]+|\b3\.5\.2\b|appendix A\d/g;
/** The state that gases are stated at, a day as it would be chosen, a line as a scale sends it, and the two thermometers set side by side. */
const samples = [
  '25 °C and 101,325 kPa',
  'brought to 25 °C itself',
  '14.3.2026',
  'With a point: 12.5',
  '“ST,GS,+  12.345 g”',
  '°C or °F',
  '20 °C is 68 °F',
  'temperatures in °C',
];
/** The name of an answer. */
const answer = '°C';

/** Every text below a value, by where it stands; what is a function is asked with arguments that say nothing. */
function textsOf(value: unknown, path: string, into: Map<string, string>, depth = 0): void {
  if (typeof value === 'string') into.set(path, value);
  else if (typeof value === 'function') {
    if (depth > 6 || /^[A-Z]/.test(value.name)) return;
    try {
      textsOf(value(...Array.from({ length: Math.max(1, value.length) }, () => ({}))), `${path}()`, into, depth + 1);
    } catch {
      // it needs a real book, or a real entry
    }
  } else if (value !== null && typeof value === 'object' && depth < 9 && !(value instanceof Map))
    for (const key of Object.keys(value)) textsOf(Reflect.get(value, key), `${path}.${key}`, into, depth + 1);
}

describe('where the site writes a comma and °F', () => {
  const texts = new Map<string, string>();
  beforeAll(async () => {
    const files = sources(['app/words'], ['.ts']).filter((path) => !plain.test(path));
    const modules = await Promise.all(files.map(async (path) => [path, (await import(join(root, path))) as object] as const));
    writeIn({ decimal: 'comma', masses: 'troy', temperature: 'fahrenheit', days: 'd.m.y' });
    for (const [path, module] of modules)
      for (const [name, value] of Object.entries(module)) textsOf(value, `${path} ${name}`, texts);
  });
  afterAll(() => {
    writeIn(ownNotation);
  });

  const bare = (text: string): string =>
    samples.reduce((left, sample) => left.replaceAll(sample, ''), text === answer ? '' : text).replace(cited, '');
  const holding = (what: RegExp): string[] =>
    [...texts].flatMap(([path, text]) =>
      what.test(bare(text)) && !quoted.test(path) && !kept.test(path) ? [`${path}: ${text}`] : [],
    );

  test('the texts are there to be read, and one is as it should be', () => {
    expect(texts.size).toBeGreaterThan(3000);
    expect([...texts.values()].filter((text) => /\d,\d/.test(text)).length).toBeGreaterThan(30);
  });

  test('no text has a number with a point', () => {
    expect(holding(/\d\.\d/)).toEqual([]);
  });

  test('no text has degrees Celsius', () => {
    expect(holding(/°\s?C/)).toEqual([]);
  });

  test('no text is headed in grams where masses are in troy ounces', () => {
    expect(holding(/, g(?! per tonne)(?: |$)/)).toEqual([]);
  });

  test('two readings of an entry are told side by side in it', () => {
    const before = { opening: { measuredC: 21.5 }, heats: [{ sponge: { gross: '1204.50 g' } }], fuel: 'wood, 1.5 loads' };
    const after = { opening: { measuredC: 30 }, heats: [{ sponge: { gross: '18 ozt 18.5 dwt' } }], fuel: 'wood, 1.5 loads' };
    expect(changesBetween(before, after)).toEqual([
      { field: 'opening · temperature, °F', was: '70,7', now: '86' },
      { field: 'charge fired · 1 · sponge · reading', was: '1\u202f204,50\u00a0g', now: '18 ozt 18,5\u00a0dwt' },
    ]);
    expect(differences(readBook([]), before, after, '2026-03-14T09:00+13:00').map(({ cells }) => cells)).toEqual([
      ['at opening, measured, °F', '70,7', '86'],
      ['heat 1, sponge, gross', '1\u202f204,50\u00a0g', '18 ozt 18,5\u00a0dwt'],
    ]);
  });

  test('the figures of a closing are told in its unit', () => {
    // three troy ounces of 31.1034768 g: National Institute of Standards and Technology, Handbook 44, appendix C
    const body = { figures: { opening_g: '93.310430', u_g: '0.000000' } };
    const rows = rowsOf(readBook([]), 'closing', body, '2026-03-14T09:00+13:00');
    expect(rows.map(({ label, text }) => [label, text])).toEqual([
      ['Opening stock', '3,00\u00a0ozt'],
      ['Its standard uncertainty', '0,00\u00a0ozt'],
    ]);
  });

  test('a word of the trade is explained without one, and a worked example shows none', () => {
    expect(glossary.flatMap(saidOf).filter((text) => /\d\.\d/.test(text))).toEqual([]);
    const lines = workingKeys.flatMap((key) => exampleOf(key).filter(({ sort }) => sort !== 'source'));
    expect(lines.map(({ text, figure }) => `${text} ${figure ?? ''}`).filter((text) => /\d\.\d/.test(text))).toEqual([]);
    // the net of the first example, 812.4 g less 212.1 g, at 31.1034768 g the troy ounce
    expect(lines.find(({ sort }) => sort === 'result')?.figure).toBe('19,300\u00a0ozt');
  });
});
