/** The glossary and the worked examples: every word once, found by what is typed and by the labels that use it; every example reckoned, not written. */
import { describe, expect, test } from 'vitest';
import { exampleOf } from '../../app/screens/words/examples.ts';
import { explainedIn } from '../../app/screens/words/routes.ts';
import { glossary, termIn, termsLike } from '../../app/words/glossary.ts';
import { type WorkingKey, workingKeys } from '../../app/words/workings.ts';

const figureOf = (key: WorkingKey, text: string) => exampleOf(key).find((line) => line.text === text)?.figure;

describe('a word of the glossary', () => {
  test('has a key and a name of its own, and says what it means in one or two sentences', () => {
    expect(new Set(glossary.map((term) => term.key)).size).toBe(glossary.length);
    const names = glossary.flatMap((term) => [term.name, ...(term.also ?? [])].map((name) => name.toLowerCase()));
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    for (const { key, says } of glossary)
      expect([key, says.split(/(?<=[.?!])\s/).length <= 3 && says.endsWith('.')]).toEqual([key, true]);
  });

  test('is found by part of its name, by another name for it, and last by what is said of it', () => {
    expect(termsLike('spon')[0]?.key).toBe('sponge');
    expect(termsLike('Ingot').map((term) => term.key)).toEqual(['bar']);
    expect(termsLike('cupel').map((term) => term.key)).toEqual(['bead']);
    expect(termsLike('no such word')).toEqual([]);
    expect(termsLike(' ')).toEqual(glossary);
  });

  test('is known in a label that uses it, the longest one, and not within another word', () => {
    expect(termIn('Weight of the sponge')?.key).toBe('sponge');
    expect(termIn('Plate amalgam')?.key).toBe('plate-amalgam');
    expect(termIn('Retorts')?.key).toBe('retort');
    expect(termIn('Barometer')).toBeUndefined();
    expect(explainedIn('Name')).toBeNull();
    expect(explainedIn('Prills')?.href).toBe('#/words/prill');
  });
});

describe('a worked example', () => {
  test('comes to what a person gets from the same inputs with paper and pencil', () => {
    expect(figureOf('net', 'Net')).toBe('600.3\u00a0g');
    expect(figureOf('gap', 'Gap')).toBe('6.3\u00a0g');
    expect(figureOf('stock', 'Stock of the flask')).toMatch(/^2\D?320/);
    expect(figureOf('unaccounted', 'Unaccounted')).toBe('6.0\u00a0g');
    expect(figureOf('unaccounted', 'z')).toBe('1.90');
    expect(figureOf('detectable', 'Detectable loss')).toBe('10.4\u00a0g');
    expect(figureOf('fineness', 'Fineness of sample 1')).toBe('872.50\u00a0‰');
    expect(figureOf('yield', 'Bullion yield')).toBe('16.17\u00a0g/t');
    expect(figureOf('exposure', 'Mean over 8 h, at least')).toBe('0.00300\u00a0mg/m³');
    expect(figureOf('exposure', 'Mean over 8 h, at most')).toBe('0.00625\u00a0mg/m³');
  });

  test('of every figure has what is given, one result at least, and its source', () => {
    for (const key of workingKeys)
      expect([key, ...new Set(exampleOf(key).map((line) => line.sort))]).toEqual(
        expect.arrayContaining([key, 'reading', 'result', 'source']),
      );
  });
});
