/** A melt: sponges and old metal in, bars, samples, prills and slag out. Sponge still holds mercury: its fume must be caught. */
import { checked, id, label, partId, partKey, weight } from '../shapes.ts';
import { z } from '../zod.ts';

const piece = z.strictObject({ key: partKey, label, weight });
/** Metal added; an earlier bar that is melted again is named, and so is the melt whose prills went in: they are stock and go in once. */
const metal = piece.extend({ bar: partId.optional(), prills: id.optional() });

export const melt = z.strictObject({
  /** The charges whose sponges went in, weighed again where they were. */
  sponges: z.array(z.strictObject({ charge: id, weight: weight.optional() })).max(40),
  added: z.array(metal).max(20).optional(),
  /** The melts whose slag went into the pot again. It is no metal and stands in no figure of it. */
  slags: z
    .array(z.strictObject({ melt: id, weight: weight.optional() }))
    .max(20)
    .optional(),
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
