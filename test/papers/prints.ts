/** A program of its own for tests: prints the run sheet of W8 in the built thread and says the SHA-256 of its bytes, or the problems. */
import { createHash } from 'node:crypto';
import { printPaper } from '../../main/host/print.ts';
import { desksOf, w8 } from './site-of-runs.ts';

const { book, charge } = w8();
const got = await printPaper(book.entries, 'Example battery', desksOf(book), 'run-sheet', process.argv[2] ?? charge);
process.stdout.write(
  got.ok ? createHash('sha256').update(got.value).digest('hex') : got.problems.map(({ code }) => code).join(', '),
);
