/** What a check list and its answers may not say: one question twice, one question both worded anew and left out, an answer of somebody unknown. */
import type { Body } from '../../kinds/index.ts';
import type { Checked } from '../../shapes.ts';
import type { Asking } from './asking.ts';

interface Named {
  readonly check: string;
  readonly field: string;
}

function eachOnce(names: readonly Named[], asking: Asking): void {
  const seen = new Set<string>();
  for (const { check, field } of names) {
    if (seen.has(check)) asking.refuse('question-twice', field, { check });
    seen.add(check);
  }
}

export function checkListRules({ added = [], worded = [], leftOut = [] }: Body<'check-list'>, asking: Asking): void {
  const named = (list: 'added' | 'worded' | 'leftOut', items: readonly { check: string }[]): Named[] =>
    items.map(({ check }, i) => ({ check, field: `body.${list}[${i}].check` }));
  eachOnce(named('added', added), asking);
  eachOnce([...named('worded', worded), ...named('leftOut', leftOut)], asking);
}

/** Answers in a body of any kind: whoever answered is a person of the book. */
export function checkedRules(body: unknown, asking: Asking): void {
  const { checks } = body as { checks?: readonly Checked[] };
  for (const [i, { by }] of (Array.isArray(checks) ? checks : []).entries()) asking.known(by, 'person', `body.checks[${i}].by`);
}
