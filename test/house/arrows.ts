/**
 * The one table of who may import what. The row with the longest matching path counts for a file; a path ending in a stroke is a folder. Screens
 * stand on the open daybook, both on the core; papers on the core; main on core, papers and contract. Only Zod enters the core, by one file.
 */
import { posix } from 'node:path';
import { type Import, importsOf } from './sources.ts';

interface Row {
  /** Folders and files inside the project. */
  readonly own: readonly string[];
  /** Packages; `node:` stands for all of Node. */
  readonly packages: readonly string[];
  /** Packages whose types alone may be used. */
  readonly types?: readonly string[];
  /** Targets that are computed, which nobody can check: only where a launcher starts what was built. */
  readonly computed?: true;
}

const core = 'app/core/';
const words = 'app/words/';
const drawings = 'app/drawings/';
const contract = 'app/contract.ts';

export const table: Readonly<Record<string, Row>> = {
  'app/core/': { own: [core], packages: [] },
  'app/core/zod.ts': { own: [], packages: ['zod'] },
  'app/contract.ts': { own: [core], packages: [] },
  'app/words/': { own: [core, words, contract], packages: [] },
  'app/daybook/': { own: [core, contract, words, 'app/daybook/'], packages: ['dexie'] },
  'app/papers/': { own: [core, words, drawings, 'app/papers/'], packages: ['papaparse'], types: ['pdfmake/interfaces'] },
  'app/drawings/': { own: [drawings], packages: ['d3-sankey', 'd3-scale', 'd3-shape'] },
  'app/parts/': { own: [core, words, drawings, 'app/parts/'], packages: ['svelte'] },
  'app/screens/': { own: [core, contract, words, drawings, 'app/daybook/', 'app/parts/', 'app/screens/'], packages: ['svelte'] },
  'app/look/': { own: ['app/look/'], packages: [] },
  'app/jitless.ts': { own: ['app/core/zod.ts'], packages: ['zod'] },
  'app/start.ts': { own: ['app/jitless.ts', 'app/look/', 'app/daybook/', 'app/Window.svelte', words], packages: ['svelte'] },
  'app/Window.svelte': { own: [core, words, 'app/daybook/', 'app/parts/', 'app/screens/'], packages: ['svelte'] },
  'main/host/': {
    own: [core, contract, words, 'app/papers/', 'main/host/'],
    packages: ['node:', 'canonicalize', 'age-encryption', 'modern-tar'],
  },
  'main/host/print-render.ts': { own: [core, contract, words, 'app/papers/', 'main/host/'], packages: ['node:', 'pdfmake'] },
  'main/host/version.ts': { own: ['package.json'], packages: [] },
  'main/installed.ts': { own: ['main/host/'], packages: ['node:'] },
  'main/loopback.ts': { own: [core, 'main/host/'], packages: ['node:'] },
  'main/terminal/': {
    own: [core, contract, words, 'app/papers/', 'main/host/', 'main/terminal/', 'main/installed.ts', 'main/loopback.ts'],
    packages: ['node:'],
  },
  'main/terminal.ts': { own: [words, 'main/terminal/'], packages: ['node:', 'zod/compile'] },
  'main/desktop/': { own: ['main/desktop/'], packages: [] },
  'main/desktop.ts': {
    own: [words, 'main/desktop/', 'main/host/', 'main/installed.ts'],
    packages: ['node:', 'zod/compile', 'electron'],
  },
  'main/build/': {
    own: ['main/build/'],
    packages: ['node:', 'vite', '@sveltejs/vite-plugin-svelte', '@electron/get', 'playwright'],
    computed: true,
  },
  // the bench runs whole processes as its tools in test/bench say
  'main/build/bench.mjs': { own: ['main/build/', 'test/bench/'], packages: ['node:', 'vite'], computed: true },
  'main/build/fetch-runtime.mjs': {
    own: [],
    packages: ['node:', '@electron/get', 'electron/package.json', 'electron/checksums.json', 'electron/install.js'],
  },
};

const covers = (rule: string, path: string): boolean => (rule.endsWith('/') ? path.startsWith(rule) : path === rule);

function rowFor(path: string): Row | null {
  const rule = Object.keys(table)
    .filter((key) => covers(key, path))
    .sort((a, b) => b.length - a.length)[0];
  return rule === undefined ? null : (table[rule] ?? null);
}

function allowed(path: string, row: Row, { from, typeOnly }: Import): boolean {
  if (from.startsWith('.')) {
    const target = posix.normalize(posix.join(posix.dirname(path), from));
    return row.own.some((rule) => covers(rule, target));
  }
  if (from === '(computed)') return row.computed === true;
  const isOf = (name: string) =>
    from === name || (name === 'node:' ? from.startsWith(name) : name === 'svelte' && from.startsWith('svelte/'));
  return row.packages.some(isOf) || (typeOnly && (row.types ?? []).includes(from));
}

/** Every arrow of a file that points where it must not, as sentences; a file no row covers is one as well. */
export function wrongArrows(path: string, text: string): string[] {
  const row = rowFor(path);
  if (row === null) return [`${path} stands where no row of the table covers it`];
  return importsOf(path, text)
    .filter((one) => !allowed(path, row, one))
    .map((one) => `${path} imports ${one.from}`);
}
