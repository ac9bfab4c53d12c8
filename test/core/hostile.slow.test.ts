/**
 * Hostile texts and values before every reader of the core: none throws, none hangs, none lets a number out that is none. A hundred thousand
 * cases each (ten thousand for each of the nineteen reckonings, thirty thousand drafts), from valid samples with their bytes changed and from
 * shapes that fast-check makes; a failure names the seed.
 */
import { describe, expect, it, vi } from 'vitest';
import { periodFrom } from '../../app/core/book/period.ts';
import { decimalFromText, toNumber, toText } from '../../app/core/decimal.ts';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { gramsFromText, massFromText, massIn, massUnits, troyText } from '../../app/core/mass.ts';
import { reckon, reckonTopics } from '../../app/core/reckon/index.ts';
import { dayNumber, isMoment, minutesOf } from '../../app/core/time.ts';
import { millilitresFromText } from '../../app/core/volume.ts';
import { problemText } from '../../app/words/problems.ts';
import { spoken } from '../../app/words/reasons.ts';
import { keyTwice } from '../../main/terminal/json-keys.ts';
import drafts from '../golden/drafts.json' with { type: 'json' };
import { allFinite, anyText, byBytes, byShapes, casesEach, shapesOf } from '../host/mutate.ts';
import { cases } from '../outside/cases.ts';

// a hundred thousand cases take their time where other things run beside them; a single case that hangs is caught by `one`
vi.setConfig({ testTimeout: 240_000 });

/** Bytes as the text a reader is handed: wrong ones become the mark for them. */
const text = (bytes: Buffer) => bytes.toString('utf8');

/** Bytes as a JSON value, or undefined where they are none. */
function json(bytes: Buffer): unknown {
  try {
    return JSON.parse(text(bytes));
  } catch {
    return undefined;
  }
}

describe('a text that somebody typed', () => {
  it('as a mass is read exactly or refused in words', () => {
    const read = (typed: unknown) => {
      const got = massFromText(typed, 'mass');
      if (!got.ok) return got.problems.map(problemText);
      const grams = gramsFromText(typed, 'mass');
      if (!grams.ok || !Number.isSafeInteger(got.value.ug) || got.value.ug < 0) throw new Error('not counted');
      return [got.value.ug, toNumber(grams.value), troyText(grams.value), ...massUnits.map((unit) => massIn(grams.value, unit))];
    };
    const samples = ['955.6 g', '18 ozt 18 dwt 3.5 gr', '9 lb', '0.000001 g', '3 long-ton', '2.50 kg', '12oz-av', '31.1034768 g'];
    const done = byBytes('mass', samples, (bytes) => read(text(bytes))) + byShapes('mass', anyText, read);
    expect(done).toBe(casesEach);
  });

  it('as a volume is read exactly or refused in words', () => {
    const read = (typed: unknown) => {
      const got = millilitresFromText(typed, 'volume');
      return got.ok ? toText(got.value) : got.problems.map(problemText);
    };
    const samples = ['186.0 ml', '2 l', '1 fl-oz-imp', '3.5 fl-oz-us', '1 l 20 ml'];
    expect(byBytes('volume', samples, (bytes) => read(text(bytes))) + byShapes('volume', anyText, read)).toBe(casesEach);
  });

  it('as a decimal comes back as it was typed, but for zeros before it, or is none', () => {
    const read = (typed: string) => {
      const got = decimalFromText(typed);
      if (got === null) return null;
      const back = decimalFromText(toText(got));
      if (back?.digits !== got.digits || back.places !== got.places) throw new Error('it came back as another');
      return toText(got);
    };
    const samples = ['2.50', '-3', '0', '0.000001', '12345678901234567890.5', '-0.0'];
    expect(byBytes('decimal', samples, (bytes) => read(text(bytes))) + byShapes('decimal', anyText, read)).toBe(casesEach);
  });

  it('as a day, a moment or a period is one, or is none', () => {
    const read = (typed: string) => {
      const [day, minutes] = [dayNumber(typed), minutesOf(typed)];
      if (isMoment(typed) !== (minutes !== null)) throw new Error('two answers');
      return [day, minutes, periodFrom({ from: typed }), periodFrom({ from: '2026-03-14', to: typed })];
    };
    const samples = ['2026-03-14', '2026-03-14T09:20+13:00', '2024-02-29T23:59:59.999-11:45', '9999-12-31T00:00+14:00'];
    expect(byBytes('moment', samples, (bytes) => read(text(bytes))) + byShapes('moment', anyText, read)).toBe(casesEach);
  });
});

describe('a draft', () => {
  it('of any kind is read or refused, every problem at a field and in words', () => {
    const read = (value: unknown) => {
      const got = draftFrom(value);
      return got.ok ? got.value : got.problems.map((p) => [p.field, problemText(p)]);
    };
    const samples = drafts.map((draft) => JSON.stringify(draft));
    // every body of the question "keep" goes through this reader again, in test/host
    const [some, shapes] = [casesEach / 5, casesEach / 10];
    const done =
      byBytes('draft', samples, (bytes) => read(json(bytes)), some) + byShapes('draft', shapesOf(drafts), read, shapes);
    expect(done).toBe(some + shapes);
  });
});

describe('a reckoning', () => {
  const [casesOfTopic, shapesOfTopic] = [casesEach / 10, casesEach / 50];
  /** Inputs that are known to be taken, of every topic. */
  const all = ['air', 'balances', 'bullion', 'rounding', 'runs', 'units', 'weighing'].flatMap(cases);
  const inputs = new Map(reckonTopics.map((topic) => [topic, all.filter((c) => c.reckon === topic).map((c) => c.input)]));

  const answer = (topic: string, value: unknown) => {
    const got = reckon(topic, value);
    if (!got.ok) return got.problems.map(problemText);
    const said = JSON.stringify(spoken(got.value));
    // a number that is none would be printed as null, which stands for something else
    if (!allFinite(got.value)) throw new Error('a number that is none');
    return said.length;
  };

  it('has samples of every topic', () => {
    expect([...inputs].filter(([, samples]) => samples.length === 0).map(([topic]) => topic)).toEqual([]);
  });

  it.each(reckonTopics)('of %s answers with numbers, reasons or problems, whatever it is given', (topic) => {
    const samples = inputs.get(topic)!;
    const bytes = byBytes(
      topic,
      samples.map((sample) => JSON.stringify(sample)),
      (changed) => {
        const value = json(changed);
        if (value === undefined) return null;
        keyTwice(text(changed));
        return answer(topic, value);
      },
      casesOfTopic - shapesOfTopic,
    );
    expect(bytes + byShapes(topic, shapesOf(samples), (value) => answer(topic, value), shapesOfTopic)).toBe(casesOfTopic);
  });
});
