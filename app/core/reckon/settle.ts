/** `reckon settle`: one fineness out of two laboratories' and, where needed, an umpire's. */
import { good } from '../result.ts';
import { settle, settlementRules } from '../umpire.ts';
import { z } from '../zod.ts';
import { num, ratioOr } from './answer.ts';
import { decimalNotNegative, permille, topic } from './input.ts';

const schema = z.strictObject({
  site_permille: permille,
  other_permille: permille,
  limit_permille: decimalNotNegative,
  umpire_permille: permille.optional(),
  rule: z.enum(settlementRules),
});

export const settleTopic = topic(schema, (input) => {
  const { difference, umpireNeeded, settled, nearer } = settle({
    site: input.site_permille,
    other: input.other_permille,
    limit: input.limit_permille,
    umpire: input.umpire_permille,
    rule: input.rule,
  });
  return good({
    difference_permille: num(difference),
    umpire_needed: umpireNeeded,
    settled_permille: ratioOr(settled, 'no-umpire'),
    ...(nearer && { nearer }),
  });
});
