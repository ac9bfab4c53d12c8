/**
 * The periods of the sample that were closed: worked out and printed by the same steps as any closing, at the place in the journal where they were kept,
 * so that their end marks, figures and files agree. Never a figure of its own.
 */
import type { AskOf } from '../../../app/contract.ts';
import type { Entry } from '../../../app/core/entry.ts';
import { good, type Result } from '../../../app/core/result.ts';
import { closingEntry, type DrawnUp, drawUp } from '../closings.ts';
import type { Place } from '../line.ts';
import type { HostOptions } from '../questions.ts';

export interface PlannedClosing extends Pick<AskOf<'close-period'>, 'opening' | 'closing' | 'by' | 'note'> {
  /** When it was kept: a moment with offset. */
  readonly at: string;
}

/** What closing needs of the host. */
export type Printing = Pick<HostOptions, 'print' | 'version'>;

export interface Closed {
  readonly draft: ReturnType<typeof closingEntry>;
  readonly drawn: DrawnUp;
  readonly paper: Uint8Array;
}

/** Closes a period of a story on the entries written so far. `place`: where the closing's own line goes. Problems: those of drawing up and of printing. */
export async function closed(
  { at, ...ask }: PlannedClosing,
  id: string,
  entries: readonly Entry[],
  { desk, n, prev }: Place,
  daybook: { readonly id: string; readonly name: string },
  { print, version }: Printing,
): Promise<Result<Closed>> {
  const source = { ...daybook, entries, desks: [{ desk, entries: n - 1, endMark: prev }] };
  const drawn = drawUp(source, { ...ask, id, happened: at }, version, at);
  if (!drawn.ok) return drawn;
  const { onPaper, desks } = drawn.value;
  const paper = await print(entries, daybook.name, desks, 'mercury-account', undefined, {}, onPaper);
  return paper.ok ? good({ draft: closingEntry(drawn.value, paper.value), drawn: drawn.value, paper: paper.value }) : paper;
}
