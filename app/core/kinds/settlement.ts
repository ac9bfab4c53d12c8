/**
 * The settlement of a bar's gold with the other party: both figures as exchanged, the splitting limit and the rule as the contract between the
 * two has them, and the umpire's figure where there was one. The rule is data: contracts differ. Source: methods.md 5.6.
 */
import { decimalText, id, label, partId } from '../shapes.ts';
import { settlementRules } from '../umpire.ts';
import { z } from '../zod.ts';

export const settlement = z.strictObject({
  bar: partId,
  /** Figures as exchanged, parts per thousand, and the assays they rest on. */
  site: decimalText,
  siteAssay: id.optional(),
  other: decimalText,
  otherAssay: id.optional(),
  /** The splitting limit: a difference up to and equal to it settles at the mean. */
  limit: decimalText,
  rule: z.enum(settlementRules),
  umpire: decimalText.optional(),
  umpireAssay: id.optional(),
  /** Silver by the same rule, with its own limit: both parties' figures or neither's. */
  siteSilver: decimalText.optional(),
  otherSilver: decimalText.optional(),
  silverLimit: decimalText.optional(),
  umpireSilver: decimalText.optional(),
  /** Which contract says so. */
  contract: label.optional(),
  party: label.optional(),
  note: label.optional(),
});
