/** What a correction changed: the fields that read otherwise now, with what each read before. Nothing is left out. */

import { inDegrees, recordValue } from '../../words/record-values.ts';
import { fieldNames } from '../../words/retort-run.ts';
import { checkText } from '../../words/run-checks.ts';

export interface Change {
  /** The field in words: "sponge · reading". */
  readonly field: string;
  /** Text before and now; null where there was or is nothing. */
  readonly was: string | null;
  readonly now: string | null;
}

const isTree = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Parts of an entry that only hold others together or make a sentence no clearer. */
const silent = new Set(['weight', 'how', 'key']);

/** A row is called by its ball, a check by its question, anything else by its number. */
function nameOfItem(list: string | undefined, item: unknown, nameOf: (id: string) => string): string | null {
  if (!isTree(item)) return null;
  if (list === 'checks' && typeof item.check === 'string') return `“${checkText(item.check)}”`;
  if (typeof item.label === 'string') return `“${item.label}”`;
  if (typeof item.lot !== 'string') return null;
  const name = nameOf(item.lot);
  return name === item.lot ? null : `“${name}”`;
}

function named(path: readonly string[]): string {
  const told = path.filter((part, i) => !silent.has(part) || i === path.length - 1);
  return told.map((part) => (/^\d+$/.test(part) ? String(Number(part) + 1) : inDegrees(fieldNames[part] ?? part))).join(' · ');
}

function shown(path: readonly string[], value: unknown, nameOf: (id: string) => string): string | null {
  if (value === undefined) return null;
  if (path.at(-1) === 'check') return checkText(String(value));
  const name = nameOf(String(value));
  return name === String(value) ? recordValue(path, value) : name;
}

/** Every leaf that differs, in the order of the later reading. `nameOf` may put a name in the place of an id. */
export function changesBetween(before: unknown, after: unknown, nameOf: (id: string) => string = (id) => id): readonly Change[] {
  const found: Change[] = [];
  const walk = (a: unknown, b: unknown, path: readonly string[]): void => {
    if (isTree(a) || isTree(b)) {
      const keys = new Set([...Object.keys(isTree(b) ? b : {}), ...Object.keys(isTree(a) ? a : {})]);
      for (const key of keys) {
        const [was, now] = [isTree(a) ? a[key] : undefined, isTree(b) ? b[key] : undefined];
        const name = Array.isArray(a) || Array.isArray(b) ? nameOfItem(path.at(-1), was ?? now, nameOf) : null;
        // the name stands in the place of "row 3"
        walk(was, now, name === null ? [...path, key] : [...path.slice(0, -1), name]);
      }
      return;
    }
    if (a === b) return;
    found.push({ field: named(path), was: shown(path, a, nameOf), now: shown(path, b, nameOf) });
  };
  walk(before, after, []);
  return found;
}
