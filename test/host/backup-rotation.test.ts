/** Which backups are kept: the ten newest, the last of each of thirty days, the last of each month; never less than the one just verified. */
import { describe, expect, it } from 'vitest';
import { backupFileName, newestFirst, outOfRotation, readBackupName } from '../../main/host/backup/names.ts';

const dayOf = (day: number): string => new Date(Date.UTC(2020, 0, 1 + day)).toISOString().slice(0, 10);
const name = (day: number, clock = '09:00:00', again = 0) => backupFileName(`${dayOf(day)}T${clock}+13:00`, 'daily', true, again);

/** What is left after so many days with three backups each, rotated after every one. */
function keptAfter(days: number): string[] {
  let files: string[] = [];
  for (let day = 0; day < days; day++)
    for (const clock of ['08:00:00', '12:00:00', '17:00:00']) {
      const made = name(day, clock);
      files.push(made);
      const gone = outOfRotation(files, made);
      expect(gone).not.toContain(made);
      files = files.filter((file) => !gone.includes(file));
    }
  return files;
}

describe('rotation', () => {
  it('keeps ten at first, whatever their days', () => {
    expect(keptAfter(3)).toHaveLength(9);
    expect(keptAfter(4)).toHaveLength(10);
  });

  it('keeps in the end the ten newest, thirty days and every month', () => {
    const kept = keptAfter(400)
      .map((file) => readBackupName(file)!)
      .sort(newestFirst);
    const clocks = (from: number, to: number) => kept.slice(from, to).map(({ at }) => at.slice(11, 13));
    expect(kept.slice(0, 10).map(({ at }) => at.slice(0, 10))).toEqual(
      [399, 399, 399, 398, 398, 398, 397, 397, 397, 396].map(dayOf),
    );
    // the last of each further day, until thirty days are covered
    expect(kept.slice(10, 36).map(({ at }) => at.slice(0, 10))).toEqual(Array.from({ length: 26 }, (_, i) => dayOf(395 - i)));
    expect(clocks(10, 36).every((clock) => clock === '17')).toBe(true);
    // then the last of each month that is not covered
    const months = kept.slice(36).map(({ at }) => at.slice(0, 7));
    expect(months).toEqual([...new Set(months)]);
    expect(months.at(-1)).toBe('2020-01');
    expect(new Set(kept.map(({ at }) => at.slice(0, 7))).size).toBe(14);
  });

  it('never removes the one just verified, though the clock was set back years', () => {
    const files = Array.from({ length: 200 }, (_, i) => name(1000 + i));
    const verified = name(0);
    expect(outOfRotation([...files, verified], verified)).not.toContain(verified);
    expect(outOfRotation([verified], verified)).toEqual([]);
  });

  it('touches nothing whose name is not its own', () => {
    const others = [
      'holiday.tar',
      'notes.txt',
      '2020-01-01.tar',
      '2020-01-01-080000-daily.tar.age.part',
      '.2020-01-01-080000-daily.tar',
    ];
    const files = Array.from({ length: 100 }, (_, i) => name(i));
    expect(outOfRotation([...others, ...files], files.at(-1)!).filter((file) => others.includes(file))).toEqual([]);
  });

  it('tells two of one second apart, the later as the newer', () => {
    const [one, two] = [name(1), name(1, '09:00:00', 1)];
    expect([readBackupName(one)?.again, readBackupName(two)?.again]).toEqual([1, 2]);
    expect(
      [one, two]
        .map((file) => readBackupName(file)!)
        .sort(newestFirst)
        .map(({ file }) => file),
    ).toEqual([two, one]);
  });
});
