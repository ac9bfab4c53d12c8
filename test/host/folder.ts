/** Temporary folders for tests, gone when the test file is done. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

const made: string[] = [];

afterAll(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true });
});

/** A new empty folder. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'daybook-'));
  made.push(folder);
  return folder;
}
