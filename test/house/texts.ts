/** Every text a person may be shown: the string literals of scripts, the text and plain attributes of components, and what assets hold. */
import { parse } from 'svelte/compiler';
import ts from 'typescript';
import { programOf, sources, textOf } from './sources.ts';

export interface Text {
  readonly path: string;
  readonly text: string;
}

/** String literals and the fixed parts of templates; not what names a module. */
export function literalsOf(path: string, text: string): string[] {
  const file = ts.createSourceFile(`${path}.ts`, programOf(path, text), ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (ts.isStringLiteralLike(node)) found.push(node.text);
    else if (ts.isTemplateExpression(node)) found.push(node.head.text, ...node.templateSpans.map((span) => span.literal.text));
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}

/** A node of a component's markup, as far as the house looks at it. */
export interface Markup {
  readonly type: string;
  readonly name?: string;
  readonly data?: string;
  readonly value?: unknown;
}

/** Every node of a component's markup. */
export function markupOf(text: string): Markup[] {
  const found: Markup[] = [];
  const visit = (node: unknown): void => {
    if (Array.isArray(node)) for (const one of node) visit(one);
    else if (node !== null && typeof node === 'object') {
      if ('type' in node && typeof node.type === 'string') found.push(node as Markup);
      for (const value of Object.values(node)) visit(value);
    }
  };
  visit(parse(text, { modern: true }).fragment);
  return found;
}

/** Texts of the folders people read from. Comments are not among them. */
export function shownTexts(): Text[] {
  const scripts = sources(['app/words', 'app/parts', 'app/screens', 'app/papers', 'app/daybook'], ['.ts', '.svelte']);
  const assets = sources(['assets'], ['.json', '.txt', '.md', '.csv']).filter((path) => !path.startsWith('assets/fonts/'));
  return [
    ...scripts.flatMap((path) => literalsOf(path, textOf(path)).map((text) => ({ path, text }))),
    ...sources(['app'], ['.svelte']).flatMap((path) =>
      markupOf(textOf(path)).flatMap(({ type, data }) => (type === 'Text' && data ? [{ path, text: data }] : [])),
    ),
    ...assets.map((path) => ({ path, text: textOf(path) })),
  ];
}
