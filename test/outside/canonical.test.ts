/** The canonical form and its hash against RFC 8785's own examples, a worked chain, and a second implementation. */
import fc from 'fast-check';
import { canonicalize as second } from 'json-canonicalize';
import { describe, expect, it } from 'vitest';
import { canonicalText, isCanonical, sha256 } from '../../main/host/canonical.ts';
import chain from './data/chain-we34.json' with { type: 'json' };
import rfc from './data/rfc8785.json' with { type: 'json' };

describe('RFC 8785', () => {
  it.each(rfc.texts)('writes $name as published', ({ input, canonicalHex, sha256: hash }) => {
    const text = canonicalText(JSON.parse(input));
    expect(Buffer.from(text, 'utf8').toString('hex')).toBe(canonicalHex);
    expect(sha256(text)).toBe(hash);
  });

  it('sorts members by UTF-16 code unit, so an emoji comes before a Hebrew letter', () => {
    const shuffled = Object.fromEntries(rfc.keyOrder.keys.toReversed().map((key) => [key, 0]));
    const written = [...canonicalText(shuffled).matchAll(/("(?:[^"\\]|\\.)*"):/gu)].map((m) => JSON.parse(m[1]!));
    expect(written).toEqual(rfc.keyOrder.keys);
  });

  it.each(rfc.numbers.rows)('writes the number $ieee754 as $text', ({ ieee754, text }) => {
    expect(canonicalText(Buffer.from(ieee754, 'hex').readDoubleBE())).toBe(text);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY, '\ud800', undefined])('has no form for %j', (value) => {
    expect(() => canonicalText(value)).toThrow();
  });
});

describe('a chain with an amendment', () => {
  it.each(chain.records)('each record is canonical and hashes to $sha256', ({ text, sha256: hash }) => {
    expect(isCanonical(text, JSON.parse(text))).toBe(true);
    expect(sha256(text)).toBe(hash);
  });

  it('each record names the hash of the one before it', () => {
    chain.records.forEach(({ text }, i) => {
      expect(JSON.parse(text).prev).toBe(i === 0 ? '0'.repeat(64) : chain.records[i - 1]!.sha256);
    });
  });

  it.each(chain.edits)('$name shows as another hash', ({ record, member, value, sha256: hash }) => {
    expect(sha256(canonicalText({ ...JSON.parse(chain.records[record]!.text), [member]: value }))).toBe(hash);
  });
});

describe('the canonical form beside a second implementation', () => {
  const json = fc.jsonValue({ maxDepth: 4, stringUnit: 'grapheme' });

  it('is the same text for any JSON value', () => {
    fc.assert(
      fc.property(json, (value) => canonicalText(value) === second(value)),
      { numRuns: 2000 },
    );
  });

  it('is recognised, and nothing else is', () => {
    fc.assert(
      fc.property(json, fc.boolean(), (value, spaced) => {
        const text = spaced ? JSON.stringify(value, null, 1) : JSON.stringify(value);
        return isCanonical(text, JSON.parse(text)) === (text === second(value));
      }),
      { numRuns: 2000 },
    );
  });

  it('is not recognised where a member stands twice or a pair of surrogates is half', () => {
    for (const text of ['{"a":1,"a":1}', '"\\ud800"', '{"b":1,"a":1}', '[1.0]', '{"10":0,"9":0 }'])
      expect(isCanonical(text, JSON.parse(text)), text).toBe(false);
    expect(isCanonical('{"10":0,"9":0}', JSON.parse('{"10":0,"9":0}'))).toBe(true);
  });
});
