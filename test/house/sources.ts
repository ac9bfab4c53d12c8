/** Reads the source tree for the house's own rules: files by ending, and what each imports, told by the compiler's own reader. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { root } from '../../main/build/paths.mjs';

/** Every file below these folders with one of these endings, as paths from the top with forward strokes. */
export function sources(folders: readonly string[], endings: readonly string[]): string[] {
  return folders.flatMap((folder) =>
    readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
      .filter((item) => item.isFile() && endings.some((ending) => item.name.endsWith(ending)))
      .map((item) => join(item.parentPath, item.name).slice(root.length).replaceAll('\\', '/').replace(/^\//, ''))
      .sort(),
  );
}

export const textOf = (path: string): string => readFileSync(join(root, path), 'utf8');

/** The program text of a file: all of a script, the script blocks of a component (lines kept). */
export function programOf(path: string, text: string): string {
  if (!path.endsWith('.svelte')) return text;
  let program = '';
  let at = 0;
  for (const block of text.matchAll(/<script\b[^>]*>([\s\S]*?)<\/script>/g)) {
    const start = block.index + block[0].indexOf('>') + 1;
    const body = block[1] ?? '';
    program += text.slice(at, start).replace(/[^\n]/g, ' ') + body;
    at = start + body.length;
  }
  return program;
}

export interface Import {
  readonly from: string;
  /** Gone after compiling: types only. */
  readonly typeOnly: boolean;
}

const literal = (node: ts.Node | undefined): string | null => (node && ts.isStringLiteralLike(node) ? node.text : null);

/** Everything a program refers to: imports, exports from, dynamic imports, `require`, types by import. A computed target is `(computed)`. */
export function importsOf(path: string, text: string): Import[] {
  const file = ts.createSourceFile(`${path}.ts`, programOf(path, text), ts.ScriptTarget.Latest, true);
  const found: Import[] = [];
  const add = (from: string | null, typeOnly: boolean) => void found.push({ from: from ?? '(computed)', typeOnly });
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node)) {
      const clause = node.importClause;
      const named = clause?.namedBindings;
      const allTypes =
        clause !== undefined &&
        (clause.isTypeOnly ||
          (clause.name === undefined &&
            named !== undefined &&
            ts.isNamedImports(named) &&
            named.elements.length > 0 &&
            named.elements.every((e) => e.isTypeOnly)));
      add(literal(node.moduleSpecifier), allTypes);
    } else if (ts.isExportDeclaration(node) && node.moduleSpecifier) add(literal(node.moduleSpecifier), node.isTypeOnly);
    else if (ts.isImportTypeNode(node)) add(ts.isLiteralTypeNode(node.argument) ? literal(node.argument.literal) : null, true);
    else if (ts.isCallExpression(node)) {
      const called = node.expression;
      if (called.kind === ts.SyntaxKind.ImportKeyword || (ts.isIdentifier(called) && called.text === 'require'))
        add(literal(node.arguments[0]), false);
    }
    ts.forEachChild(node, visit);
  };
  visit(file);
  return found;
}
