/**
 * How the fields of an entry are described, so that one description serves to read an entry out, to set two readings side by side and to fill a
 * form for a correction. The schemas in core/kinds stay the judge of what can be kept; a test holds both against each other.
 */

import type { RegisterKind } from '../core/kinds/index.ts';

/** What a field may name: a thing of a register, a charge, a ball or lot, a bar, an assay, a transfer, a melt, a place of the account, any entry. */
export type Named = RegisterKind | 'charge' | 'lot' | 'bar' | 'assay' | 'transfer' | 'melt' | 'place' | 'entry';

export type Shape =
  /** Free text; `long`: several lines. */
  | { readonly is: 'text'; readonly long?: true }
  | { readonly is: 'number'; readonly unit?: string }
  /** A share, kept as a number (0.35), read and typed as a percentage. */
  | { readonly is: 'share' }
  | { readonly is: 'day' }
  | { readonly is: 'moment' }
  | { readonly is: 'mass' }
  /** Exact grams as plain text, worked out by the program: only read, in the unit of masses. */
  | { readonly is: 'grams' }
  /** A weight with how it was come by; `volume`: mercury, which may be measured by volume. */
  | { readonly is: 'weight'; readonly volume?: true }
  | { readonly is: 'one'; readonly names: Readonly<Record<string, string>> }
  | { readonly is: 'many'; readonly names: Readonly<Record<string, string>> }
  | { readonly is: 'ref'; readonly to: Named }
  | { readonly is: 'refs'; readonly to: Named }
  /** The name of a question of the run's check list. */
  | { readonly is: 'check' }
  /** A day, or the words "none stated". */
  | { readonly is: 'expiry' }
  /** The key of a part inside its entry: never shown, kept as it is. */
  | { readonly is: 'key' }
  /** A whole body, read by the kind of the entry that is corrected. */
  | { readonly is: 'body' }
  | { readonly is: 'group'; readonly fields: readonly FieldWords[] }
  | { readonly is: 'list'; readonly fields: readonly FieldWords[]; readonly one: string };

export interface FieldWords {
  /** Its name on disk. */
  readonly key: string;
  readonly label: string;
  readonly shape: Shape;
  /** Must be answered. */
  readonly needed?: true;
  /**
   * Shown before Keep; everything else is folded. At most seven of a kind, counted with what stands first within a group or a list that is
   * itself first. The day and who wrote it come with the form.
   */
  readonly first?: true;
  /** Asked only where the field of that name beside it has one of these answers. */
  readonly only?: { readonly key: string; readonly has: readonly string[] };
}
