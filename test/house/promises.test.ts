/** No text calls anything safe, approved, compliant or authorised. Written down is what was entered and what follows; the judgement is elsewhere. */
import { describe, expect, it } from 'vitest';
import { shownTexts } from './texts.ts';

/** Words that promise, as far as a pattern can tell; the safe that lots are locked into is a thing, and an officer has a title. */
const promises: readonly RegExp[] = [
  /(?<!\bthe )\bsafe(?:st|r)?\b/i,
  /\bthe safe (?:level|limit|amount|dose|side|way|value|range|distance)/i,
  /\bsafely\b/i,
  /(?<!\b(?:no|not an|nor) )\bapprov(?:ed|es|al)\b/i,
  /(?<!\bnot )\b(?:complian(?:t|ce)|complies|in conformity)\b/i,
  /\bauthori[sz]ed\b/i,
  /\b(?:harmless|risk[- ]free|guaranteed?|certified (?:as|by))\b/i,
  /\b(?:no|without) (?:risk|danger|hazard)\b/i,
  /\bnot (?:dangerous|hazardous|harmful)\b/i,
  /\b(?:all[- ]clear|good to go|nothing to (?:fear|worry about)|fit for (?:use|work|visitors)|clean enough)\b/i,
  /\b(?:free (?:of|from) mercury|mercury[- ]free)\b/i,
];

/** What a text promises, or null. Words without blanks are keys, not texts. */
const promised = (text: string): string | null => {
  if (!/\s/.test(text.trim()) && !/^[A-Z]/.test(text)) return null;
  for (const promise of promises) {
    const found = promise.exec(text);
    if (found) return found[0];
  }
  return null;
};

describe('our texts', () => {
  it('promise nothing', () => {
    expect(
      shownTexts().flatMap(({ path, text }) =>
        promised(text) === null ? [] : [`${path}: ${promised(text)} in “${text.slice(0, 120)}”`],
      ),
    ).toEqual([]);
  });

  it.each([
    'It is safe to open.',
    'Safe',
    'The air is safer now.',
    'Below the safe limit',
    'Open it safely.',
    'Approved by the keeper',
    'The run is compliant.',
    'This complies with the rule.',
    'Authorised by',
    'Mercury at this level is harmless.',
    'There is no danger.',
    'Without risk to visitors',
    'The shed is all clear.',
    'The mask is fit for use.',
    'The plate is free of mercury.',
  ])('would be caught promising: %s', (text) => {
    expect(promised(text)).not.toBe(null);
  });

  it.each([
    'In the safe',
    'Lots in the safe',
    'Safety officer',
    'in-safe',
    'It is no approval, permit or certificate.',
    'Use under an authority',
    'This is unsafe to open hot.',
  ])('may say: %s', (text) => {
    expect(promised(text)).toBe(null);
  });
});
