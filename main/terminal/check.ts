/**
 * `check DIR [--json]`: verifies every desk's chain. Reads only. A line that was cut off while being written is a notice; a complete line that
 * fails is a fault of the record (exit code 1), and desk, line and cause are named. A closing that no longer agrees with what it rests on is a fault too;
 * later entries that touch a closed period are a notice.
 */
import { problem } from '../../app/core/result.ts';
import { lineCauseText } from '../../app/words/line-causes.ts';
import { noticeText } from '../../app/words/notices.ts';
import { problemText } from '../../app/words/problems.ts';
import { closingNotice } from '../../app/words/problems-closing.ts';
import { checkTexts, verbTexts } from '../../app/words/terminal.ts';
import { checkClosings } from '../host/closing-check.ts';
import { readDaybook } from '../host/daybook-folder.ts';
import { done, faulty, refused, type Verb } from './verb.ts';

export const checkVerb: Verb = {
  usage: 'check DIR [--json]',
  does: verbTexts.check,
  places: ['DIR'],
  options: { json: 'flag' },
  run: async ({ places, flags }, machine) => {
    const got = readDaybook(places.DIR as string);
    if (!got.ok) return refused(...got.problems.map((p) => ({ ...p, field: 'DIR' })));
    const { info, desks, entries, notices } = got.value;
    const faults = desks.flatMap(({ desk, fault }) =>
      fault ? [{ desk, line: fault.line, problem: lineCauseText(fault.cause), code: fault.cause }] : [],
    );
    const closings = checkClosings(got.value.folder, entries);
    const unlike = closings.faults.map(({ desk, line, code, data }) => ({ desk, line, problem: problem(code, '', data) }));
    // the chain that is broken is told as a fault, with its line
    const others = notices.filter((notice) => notice.code !== 'broken-chain');

    if (flags.has('json')) {
      machine.print(
        JSON.stringify({
          entries: entries.length,
          desks: desks.map((d) => ({ desk: d.desk, entries: d.entries, end_mark: d.endMark })),
          faults: [
            ...faults.map(({ code: _, ...fault }) => fault),
            ...unlike.map((fault) => ({ ...fault, problem: problemText(fault.problem) })),
          ],
          notices: [
            ...others.map((notice) => ({ desk: notice.desk, line: notice.line, notice: noticeText(notice) })),
            ...closings.notices.map(({ desk, line, code, data }) => ({ desk, line, notice: closingNotice(code, data) })),
          ],
        }),
      );
    } else {
      machine.print(checkTexts.head(info.name, entries.length, desks.length));
      for (const d of desks) machine.print(checkTexts.desk(d.desk, d.entries, d.endMark));
      for (const notice of others) machine.print(checkTexts.notice(noticeText(notice)));
      for (const { code, data } of closings.notices) machine.print(checkTexts.notice(closingNotice(code, data)));
      for (const fault of faults) machine.print(checkTexts.fault(fault.desk, fault.line, fault.problem));
      for (const fault of unlike) machine.print(checkTexts.closingFault(problemText(fault.problem)));
      if (faults.length === 0) machine.print(checkTexts.clean);
      if (closings.closings > 0 && unlike.length === 0) machine.print(checkTexts.closings(closings.closings));
    }
    return faults.length + unlike.length === 0
      ? done
      : faulty(
          ...faults.map(({ desk, line, code }) => problem('chain-broken', '', { desk, line, cause: code })),
          ...unlike.map((fault) => fault.problem),
        );
  },
};
