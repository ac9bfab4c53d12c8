/** The direction of arrows between the parts of the house, read from every import, and what the core must never ask for. */
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { wrongArrows } from './arrows.ts';
import { programOf, sources, textOf } from './sources.ts';

const files = sources(['app', 'main'], ['.ts', '.svelte', '.mjs']);

/** Where a program asks for the clock or for chance, as a line number and what it asks. */
function asksTheWorld(path: string, text: string): string[] {
  const file = ts.createSourceFile(`${path}.ts`, programOf(path, text), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    const said = node.getText(file);
    const isNow =
      ts.isPropertyAccessExpression(node) &&
      /^(globalThis\.)?(Date\.now|Math\.random|performance\.now|crypto\.(randomUUID|getRandomValues))$/.test(said);
    const isToday = ts.isNewExpression(node) && node.expression.getText(file) === 'Date' && (node.arguments?.length ?? 0) === 0;
    const isDateText = ts.isCallExpression(node) && node.expression.getText(file) === 'Date';
    if (isNow || isToday || isDateText)
      found.push(`${path}:${file.getLineAndCharacterOfPosition(node.getStart(file)).line + 1} ${said}`);
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

describe('arrows', () => {
  it('point where the one table allows, in every file', () => {
    expect(files.length).toBeGreaterThan(100);
    expect(files.flatMap((path) => wrongArrows(path, textOf(path)))).toEqual([]);
  });

  it.each([
    ['app/core/planted.ts', "import { readFileSync } from 'node:fs';"],
    ['app/core/planted.ts', "import { z } from 'zod';"],
    ['app/core/planted.ts', "export { problemText } from '../words/problems.ts';"],
    ['app/core/deep/planted.ts', "import type { Host } from '../../../main/host/host.ts';"],
    ['app/core/planted.ts', "const z = await import('zod');"],
    ['app/core/planted.ts', "const fs = require('node:fs');"],
    ['app/core/planted.ts', "type Host = import('../../main/host/host.ts').Host;"],
    ['app/papers/planted.ts', "import pdfmake from 'pdfmake';"],
    ['app/papers/planted.ts', "import { mount } from '../screens/today.ts';"],
    ['app/papers/planted.ts', "import { TDocumentDefinitions } from 'pdfmake/interfaces';"],
    ['app/parts/Planted.svelte', '<p>x</p>\n<script lang="ts">\n  import { openBook } from \'../daybook/open.ts\';\n</script>'],
    ['app/screens/site/Planted.svelte', '<script lang="ts">import Dexie from \'dexie\';</script>'],
    ['app/daybook/planted.ts', "import { x } from '../screens/rooms.ts';"],
    ['app/words/planted.ts', "import { x } from '../parts/mass-entry.ts';"],
    ['main/host/planted.ts', "import { app } from 'electron';"],
    ['main/host/planted.ts', "import { x } from '../desktop.ts';"],
    ['main/terminal/planted.ts', "import { app } from 'electron';"],
    ['main/desktop/planted.ts', "import type { App } from 'electron';"],
    ['main/host/planted.ts', "import x from 'svelte';"],
    ['app/elsewhere/planted.ts', ''],
  ])('a planted one is found: in %s, %s', (path, text) => {
    expect(wrongArrows(path, text)).toHaveLength(1);
  });

  it('an allowed one is not: the test of the test', () => {
    expect(wrongArrows('app/core/deep/fine.ts', "import { good } from '../result.ts';\nexport * from './other.ts';")).toEqual([]);
    expect(wrongArrows('app/papers/fine.ts', "import type { Content } from 'pdfmake/interfaces';")).toEqual([]);
    expect(wrongArrows('app/papers/fine.ts', "import { type Content, type Table } from 'pdfmake/interfaces';")).toEqual([]);
  });

  it('with a computed target are refused, since nobody could check them', () => {
    expect(wrongArrows('app/core/planted.ts', 'const x = await import(name);')).toHaveLength(1);
    expect(wrongArrows('main/host/planted.ts', 'const x = require(name);')).toHaveLength(1);
  });
});

describe('the core', () => {
  it('asks neither the clock nor chance', () => {
    expect(files.filter((path) => path.startsWith('app/core/')).flatMap((path) => asksTheWorld(path, textOf(path)))).toEqual([]);
  });

  it.each([
    'Date.now()',
    'Math.random()',
    'new Date()',
    'new Date',
    'const now = Date.now;',
    'Date()',
    'globalThis.Date.now()',
    'performance.now()',
    'crypto.randomUUID()',
  ])('would be caught asking: %s', (text) => {
    expect(asksTheWorld('app/core/planted.ts', text)).not.toEqual([]);
  });

  it('may make a date from what it is given', () => {
    expect(asksTheWorld('app/core/fine.ts', "new Date(0); new Date('2026-03-14'); const Update = () => 1; Update();")).toEqual(
      [],
    );
  });
});
