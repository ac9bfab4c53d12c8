/** A melt: sponges and old metal in, bars, samples, prills and slag out. Sponge still holds mercury: its fume must be caught. */
import { checked, id, label, partId, partKey, weight } from '../shapes.ts';
import { z } from '../zod.ts';

const piece = z.strictObject({ key: partKey, label, weight });
/** Metal added; an earlier bar that is melted again is named. */
const metal = piece.extend({ bar: partId.optional() });

export const melt = z.strictObject({
  /** The charges whose sponges went in, weighed again where they were. */
  sponges: z.array(z.strictObject({ charge: id, weight: weight.optional() })).max(40),
  added: z.array(metal).max(20).optional(),
  flux: label.optional(),
  bars: z.array(piece).max(20),
  samples: z.array(piece).max(20).optional(),
  prills: weight.optional(),
  slag: weight.optional(),
  checks: z.array(checked).max(60).optional(),
  note: label.optional(),
});

/** A charge taken apart again before it was fired: its lots go back to the safe. */
export const unmake = z.strictObject({ charge: id, why: label });
