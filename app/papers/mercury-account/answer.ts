/** The answer before its figures: what is not accounted for, and the two questions, both always answered, each with its level in words. */
import type { Content } from 'pdfmake/interfaces';
import { type Account, levelOf, zOf } from '../../core/book/account.ts';
import type { Excess, NoUsual } from '../../core/book/usual.ts';
import { uOf } from '../../core/measured.ts';
import { accountWords, noUsualText } from '../../words/account.ts';
import { gramsOf, withU } from '../../words/figures.ts';
import { accountPaper as words } from '../../words/papers-account.ts';
import { commonWords } from '../../words/papers-common.ts';
import { section, small, statements, together } from '../ledger.ts';

const capital = commonWords.capital;

function lossText({ unaccounted }: Account): string {
  const z = zOf(unaccounted);
  if (z === null) return commonWords.notComputable(words.noZ);
  return words.answerText(capital(accountWords.levels[levelOf(z)]), accountWords.loss[levelOf(z)]);
}

function usualText(excess: Excess | NoUsual): string {
  if ('why' in excess) return capital(`${commonWords.notComputable(noUsualText(excess))}.`);
  const z = zOf(excess.excess);
  if (z === null) return commonWords.notComputable(words.noZ);
  return words.answerText(capital(accountWords.levels[levelOf(z)]), accountWords.excess[levelOf(z)]);
}

/** Three statements and one sentence. */
export const answerOf = (account: Account, excess: Excess | NoUsual): Content[] =>
  together([
    section(words.answer),
    ...statements(
      [
        [words.unaccounted, withU(gramsOf(Math.round(account.unaccounted.ug)), uOf(account.unaccounted) / 1e6)],
        [accountWords.isLoss, lossText(account)],
        [accountWords.isUsual, usualText(excess)],
      ],
      26,
    ),
    small(words.usual),
  ]);
