/** Runs of periods as text to copy: full figures, standard uncertainties (k = 1), one line for each period. */
import type { PeriodInRow } from '../../../core/book/periods-in-row.ts';
import type { SequenceBasis, SequenceTest } from '../../../core/book/sequence.ts';
import { decimalFromNumber, toText } from '../../../core/decimal.ts';
import { uOf } from '../../../core/measured.ts';
import { usualText, sequenceWords as words } from '../../../words/sequence.ts';
import { csvOf, plainNumber } from '../copied.ts';

const inGrams = (ug: number): string => toText(decimalFromNumber(ug / 1e6));
const plain = (value: number | undefined): string => (value === undefined ? '' : toText(decimalFromNumber(value)));

/** Comma-separated text of the table. */
export const sequenceCsv = (rows: readonly PeriodInRow[], test: SequenceTest | null, basis: SequenceBasis): string =>
  csvOf([
    words.csvHead,
    ...rows.map((row, i) => [
      row.counted.opening?.happened ?? '',
      row.counted.closing.happened,
      inGrams(row.difference.ug),
      inGrams(uOf(row.difference)),
      plain(test?.z[i]),
      inGrams(row.cumulative.ug),
      inGrams(uOf(row.cumulative)),
      row.perTonne ? plain(row.perTonne.g) : '',
      plainNumber(usualText(row)),
      'why' in row.usual ? '' : inGrams(row.usual.excess.ug),
      plain(test?.y[i]),
      plain(test?.page[i]),
      plain(test?.threshold),
      plain(test?.falseAlarm),
      basis,
    ]),
  ]);
