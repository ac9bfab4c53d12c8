/** The house itself: what stands at the top, how large a file may be, that versions are pinned, and that every problem has its words. */
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { problemTexts } from '../../app/words/problems.ts';
import { root } from '../../main/build/paths.mjs';
import { sources, textOf } from './sources.ts';

describe('the top of the tree', () => {
  it('holds the parts of the house and nothing else', () => {
    const parts = [
      'app',
      'main',
      'test',
      'assets',
      'README.md',
      'DEVELOPERS.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'tsconfig.json',
      'electron-builder.yml',
    ];
    const made = ['node_modules', 'dist'];
    const others = readdirSync(root).filter((name) => !name.startsWith('.') && !parts.includes(name) && !made.includes(name));
    expect(others).toEqual([]);
  });

  it('has a licence with its year and holder', () => {
    expect(textOf('LICENSE')).toMatch(/^MIT License\n\nCopyright \(c\) 2026 Retort Daybook contributors\n/);
  });
});

describe('a source file', () => {
  it('is one idea: under 16 KB, and a list of rules under test under 24 KB', () => {
    const largerThan = (folders: string[], kilobytes: number) =>
      sources(folders, ['.ts', '.svelte', '.mjs', '.css']).filter((path) => statSync(join(root, path)).size >= kilobytes * 1024);
    expect(largerThan(['app', 'main'], 16)).toEqual([]);
    expect(largerThan(['test'], 24)).toEqual([]);
  });

  it('names no machine it was written on', () => {
    const names = sources(
      ['app', 'main', 'test', 'assets'],
      ['.ts', '.svelte', '.mjs', '.css', '.json', '.md', '.yml', '.html'],
    ).filter((path) => /(?:^|[\s'"`(])\/(?:work|root)\/\w/.test(textOf(path)));
    expect(names.filter((path) => path !== 'test/house/house.test.ts')).toEqual([]);
  });

  it('begins by saying what it is for', () => {
    const silent = sources(['app', 'main'], ['.ts', '.mjs']).filter((path) => !/^(?:\/\*\*|\/\/)/.test(textOf(path)));
    const silentComponents = sources(['app'], ['.svelte']).filter((path) => !/^<!--/.test(textOf(path)));
    expect([...silent, ...silentComponents]).toEqual([]);
  });
});

describe('a package', () => {
  const described = JSON.parse(textOf('package.json')) as Record<'dependencies' | 'devDependencies', Record<string, string>>;
  const locked = JSON.parse(textOf('package-lock.json')) as {
    packages: Record<string, { version: string; resolved?: string; integrity?: string }>;
  };
  const wanted = { ...described.dependencies, ...described.devDependencies };

  it('is pinned to one version, and the lock holds that version', () => {
    for (const [name, version] of Object.entries(wanted)) {
      expect([name, version]).toEqual([name, expect.stringMatching(/^\d+\.\d+\.\d+$/)]);
      expect([name, locked.packages[`node_modules/${name}`]?.version]).toEqual([name, version]);
    }
  });

  it('comes with its checksum, from the public registry', () => {
    for (const [path, one] of Object.entries(locked.packages)) {
      if (path === '' || one.resolved === undefined) continue;
      expect([path, one.resolved.startsWith('https://registry.npmjs.org/'), /^sha512-/.test(one.integrity ?? '')]).toEqual([
        path,
        true,
        true,
      ]);
    }
  });
});

describe('a problem', () => {
  /** Codes that a file hands to `problem(…)` or `rule(…, …)`. */
  function codesOf(path: string): string[] {
    const file = ts.createSourceFile(path, textOf(path), ts.ScriptTarget.Latest, true);
    const found: string[] = [];
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
        const at = { problem: 0, rule: 1 }[node.expression.text];
        const argument = at === undefined ? undefined : node.arguments[at];
        if (argument && ts.isStringLiteralLike(argument)) found.push(argument.text);
      }
      ts.forEachChild(node, visit);
    };
    visit(file);
    return found;
  }

  it('has words of its own, whichever part finds it', () => {
    const codes = sources(['app/core', 'app/daybook', 'main'], ['.ts']).flatMap((path) =>
      codesOf(path).map((code) => [code, path] as const),
    );
    expect(new Set(codes.map(([code]) => code)).size).toBeGreaterThan(60);
    expect(codes.filter(([code]) => !Object.hasOwn(problemTexts, code))).toEqual([]);
  });
});

describe('what the build machine runs', () => {
  it('is npm ci and npm test, exactly', () => {
    const script = textOf('.ci/run');
    const commands = script.split('\n').filter((line) => line !== '' && !line.startsWith('#') && !/^(?:set|cd) /.test(line));
    expect(commands).toEqual(['npm ci && npm test']);
    expect(statSync(join(root, '.ci/run')).mode & 0o111).not.toBe(0);
    execFileSync('bash', ['-n', join(root, '.ci/run')]);
    expect(existsSync(join(root, 'main/build/test.mjs'))).toBe(true);
  });
});
