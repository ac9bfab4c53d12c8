/**
 * `check DIR [--json]`: verifies every desk's chain. Reads only. A line that was cut off while being written is a notice; a complete line that
 * fails is a fault of the record (exit code 1), and desk, line and cause are named. So are lines that are not here, two lines of one number, and a
 * closing that no longer agrees with what it rests on, and a signature that does not hold or whose key changed; later entries that touch a closed period are a notice.
 * What a newer program wrote cannot be judged here: the rest is told, and the call ends with 2.
 */
import type { Notice } from '../../app/contract.ts';
import { type Problem, problem } from '../../app/core/result.ts';
import { lineCauseText } from '../../app/words/line-causes.ts';
import { noticeText } from '../../app/words/notices.ts';
import { problemText } from '../../app/words/problems.ts';
import { closingNotice } from '../../app/words/problems-closing.ts';
import { signatureTexts } from '../../app/words/signatures.ts';
import { checkTexts, verbTexts } from '../../app/words/terminal.ts';
import { checkClosings } from '../host/closing-check.ts';
import { branchTold, type Desk, readDaybook } from '../host/daybook-folder.ts';
import { checkSignatures } from '../host/sign-check.ts';
import { newerUnread } from './record.ts';
import { done, faulty, refused, type Verb } from './verb.ts';

interface CheckFault {
  readonly desk: string;
  readonly line: number;
  readonly problem: string;
  /** Of a fork: every way on after the last common line, with its first entries. */
  readonly branches?: readonly {
    readonly lines: number;
    readonly end_mark: string;
    readonly entries: NonNullable<Notice['branches']>[number]['lines'];
  }[];
  /** The same as a problem of the call. */
  readonly as: Problem;
}

function faultsOf({ desk, fault, missing = [], fork }: Desk): CheckFault[] {
  const broken: CheckFault[] = fault
    ? [
        {
          desk,
          line: fault.line,
          problem: lineCauseText(fault.cause),
          as: problem('chain-broken', '', { desk, line: fault.line, cause: fault.cause }),
        },
      ]
    : [];
  const gaps = missing.map(({ from, to }): CheckFault => {
    const as = problem('lines-missing', '', { desk, line: from, to });
    return { desk, line: from, problem: checkTexts.missing(from, to), as };
  });
  if (!fork) return [...broken, ...gaps];
  const branches = fork.branches.map(branchTold).map(({ count, endMark, lines }) => ({
    lines: count,
    end_mark: endMark,
    entries: lines,
  }));
  const as = problem('desk-forked', '', { desk, line: fork.line });
  return [...broken, ...gaps, { desk, line: fork.line, problem: checkTexts.forked(fork.line), branches, as }];
}

export const checkVerb: Verb = {
  usage: 'check DIR [--json]',
  does: verbTexts.check,
  places: ['DIR'],
  options: { json: 'flag' },
  run: async ({ places, flags }, machine) => {
    const got = readDaybook(places.DIR as string);
    if (!got.ok) return refused(...got.problems.map((p) => ({ ...p, field: 'DIR' })));
    const { info, desks, entries, notices } = got.value;
    const faults = desks.flatMap(faultsOf);
    const closings = checkClosings(got.value.folder, entries);
    const signatures = checkSignatures(got.value.folder, got.value);
    const keyOf = new Map(signatures.desks.map((d) => [d.desk, d]));
    const unlike = closings.faults.map(({ desk, line, code, data }) => ({ desk, line, problem: problem(code, '', data) }));
    const newer = newerUnread(notices);
    // what is told as a fault, with its line, is not told twice
    const others = notices.filter(({ code }) => !['broken-chain', 'fork', 'lines-missing'].includes(code));

    if (flags.has('json')) {
      machine.print(
        JSON.stringify({
          entries: entries.length,
          desks: desks.map((d) => {
            const by = keyOf.get(d.desk);
            return {
              desk: d.desk,
              entries: d.entries,
              end_mark: d.endMark,
              ...(by ? { key: by.key, signatures: by.signatures, signed_entries: by.entries, signed: by.signed } : {}),
            };
          }),
          faults: [
            ...faults.map(({ as: _, ...fault }) => fault),
            ...unlike.map((fault) => ({ ...fault, problem: problemText(fault.problem) })),
            ...signatures.faults.map((fault) => ({ ...fault, problem: problemText(fault.problem) })),
          ],
          notices: [
            ...others.map((notice) => ({ desk: notice.desk, line: notice.line, notice: noticeText(notice) })),
            ...signatures.torn.map((desk) => ({ desk, notice: signatureTexts.torn(desk) })),
            ...closings.notices.map(({ desk, line, code, data }) => ({ desk, line, notice: closingNotice(code, data) })),
          ],
        }),
      );
    } else {
      machine.print(checkTexts.head(info.name, entries.length, desks.length));
      for (const d of desks) machine.print(checkTexts.desk(d.desk, d.entries, d.endMark));
      for (const by of signatures.desks) {
        const of = desks.find((d) => d.desk === by.desk)?.entries ?? by.entries;
        machine.print(signatureTexts.signed(by.desk, by.entries, of, by.signed, by.key));
      }
      for (const notice of others) machine.print(checkTexts.notice(noticeText(notice)));
      for (const desk of signatures.torn) machine.print(checkTexts.notice(signatureTexts.torn(desk)));
      for (const { code, data } of closings.notices) machine.print(checkTexts.notice(closingNotice(code, data)));
      for (const fault of faults) {
        machine.print(checkTexts.fault(fault.desk, fault.line, fault.problem));
        for (const branch of fault.branches ?? []) {
          machine.print(checkTexts.branch(branch.lines, branch.end_mark));
          for (const { n, id = '', kind = '', happened = '' } of branch.entries)
            machine.print(checkTexts.branchLine(n, kind, happened, id));
        }
      }
      for (const fault of unlike) machine.print(checkTexts.closingFault(problemText(fault.problem)));
      for (const fault of signatures.faults) machine.print(signatureTexts.fault(problemText(fault.problem)));
      if (faults.length === 0 && newer.length === 0) machine.print(checkTexts.clean);
      if (closings.closings > 0 && unlike.length === 0) machine.print(checkTexts.closings(closings.closings));
      const held = signatures.desks.reduce((sum, d) => sum + d.signatures, 0);
      if (held > 0 && signatures.faults.length === 0) machine.print(signatureTexts.allHold(held));
    }
    return faults.length + unlike.length + signatures.faults.length === 0
      ? // what was not read is neither clean nor at fault
        newer.length > 0
        ? refused(...newer)
        : done
      : faulty(...faults.map(({ as }) => as), ...[...unlike, ...signatures.faults].map((fault) => fault.problem));
  },
};
