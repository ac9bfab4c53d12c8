/**
 * Draws a paper as PDF. The paper machine is allowed no address and no file outside the font folder, and dates the file by the newest entry, not
 * by a clock. `paper-failed` tells only a code: what an error says may carry paths.
 */

import { existsSync, readFileSync } from 'node:fs';
import { dirname, join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { PaperName, PaperProgress } from '../../app/contract.ts';
import { readBook } from '../../app/core/book/book.ts';
import { notationAt, ownNotation } from '../../app/core/book/site-notation.ts';
import type { Entry } from '../../app/core/entry.ts';
import { bad, good, problem, type Result } from '../../app/core/result.ts';
import type { ClosingOnPaper } from '../../app/papers/mercury-account/closing.ts';
import { type CoveredDesk, type Definition, type Frame, newestOf } from '../../app/papers/paper.ts';
import { writtenIn } from '../../app/words/notation.ts';
import { errorCode } from './disk.ts';
import { drawnUp, orderFrom } from './papers.ts';
import { charactersOf } from './print-characters.ts';
import { version } from './version.ts';

/** What is to be printed: plain data, so that it can go to a thread. */
export interface PrintOrder {
  readonly entries: readonly Entry[];
  readonly site: string;
  readonly desks: readonly CoveredDesk[];
  readonly name: PaperName;
  readonly id: string | undefined;
  readonly ends: { readonly from?: string | undefined; readonly to?: string | undefined };
  /** The mercury account as the statement of a closed period. */
  readonly closing?: ClosingOnPaper | undefined;
}

const here = dirname(fileURLToPath(import.meta.url));
/** Beside the built program, or where the sources keep them. */
export const fontFolder = [join(here, 'fonts'), resolve(here, '../../assets/fonts')].find((folder) => existsSync(folder)) ?? here;
const font = (cut: string): string => join(fontFolder, `SourceSans3-${cut}.ttf`);

const fonts = {
  SourceSans3: {
    normal: font('Regular'),
    bold: font('SemiBold'),
    italics: font('Italic'),
    bolditalics: font('SemiBold'),
  },
};

let characters: ReadonlySet<number> | null = null;

/** Whether every cut of the paper's font has the character. */
function canPrint(codePoint: number): boolean {
  if (!characters) {
    const [first = new Set<number>(), ...others] = ['Regular', 'SemiBold', 'Italic'].map((cut) =>
      charactersOf(readFileSync(font(cut))),
    );
    characters = new Set([...first].filter((code) => others.every((other) => other.has(code))));
  }
  return characters.has(codePoint);
}

async function draw(definition: Definition, drawn: (share: number) => void): Promise<Uint8Array> {
  const { default: machine } = await import('pdfmake');
  machine.setFonts(fonts);
  machine.setUrlAccessPolicy(() => false);
  machine.setLocalAccessPolicy((path) => resolve(path).startsWith(fontFolder + sep));
  let told = 0;
  machine.setProgressCallback((share) => {
    // it is asked after every line of text: told once in a hundred parts
    if (share < told + 0.01) return;
    told = share;
    drawn(Math.min(share, 1));
  });
  return machine.createPdf(definition).getBuffer();
}

/** Prints in this thread, and tells how far it is. Problems: those of `printPaper`. */
export async function renderPaper(
  { entries, site, desks, name, id, ends, closing }: PrintOrder,
  told: (progress: PaperProgress) => void = () => undefined,
): Promise<Result<Uint8Array>> {
  const asked = orderFrom(name, id, ends);
  if (!asked.ok) return asked;
  told({ stage: 'reading', share: 0 });
  const book = readBook(entries);
  const frame: Frame = { site, desks, newest: newestOf(entries), version, canPrint };
  // a paper is written as the site writes at its newest entry, whoever asks for it
  const definition = writtenIn(frame.newest === '' ? ownNotation : notationAt(book.current, frame.newest), () =>
    drawnUp(name, book, { ...asked.value, closing }, frame),
  );
  if (!definition.ok) return definition;
  told({ stage: 'setting', share: 0 });
  try {
    return good(new Uint8Array(await draw(definition.value, (share) => told({ stage: 'drawing', share }))));
  } catch (error) {
    return bad(problem('paper-failed', '', { detail: errorCode(error) }));
  }
}
