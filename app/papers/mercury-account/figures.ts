/** The account itself, line by line, and what its last line says: how sure it is, what loss could hide in it, and what it is no measure of. */
import type { Content } from 'pdfmake/interfaces';
import { type Account, detectableFactor, levelOf, perTonne, zOf } from '../../core/book/account.ts';
import type { Excess, NoUsual } from '../../core/book/usual.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { type Measured, total, uOf } from '../../core/measured.ts';
import { dayText } from '../../words/dates.ts';
import { decimalText, gramsOf, gramText, placesFor, withU } from '../../words/figures.ts';
import { accountPaper as words } from '../../words/papers-account.ts';
import { commonWords } from '../../words/papers-common.ts';
import { ugText, uText } from '../amounts.ts';
import { ledger, type Row, section, sentence, small, statements, together } from '../ledger.ts';

/** Amounts are shown to so many places, so that they can be added up again. */
const places = 2;

const row = (name: string, value: Measured, more: Partial<Row> = {}): Row => ({
  cells: [name, ugText(value.ug, places), uText(value, true)],
  ...more,
});

const measuredText = (value: Measured, sign = false): string => withU(gramsOf(value.ug), uOf(value) / 1e6, sign);

function perTonneText({ unaccounted, ore }: Account): string {
  const got = perTonne(unaccounted, ore);
  return got ? words.perTonneText(withU(decimalFromNumber(got.g), got.uG)) : commonWords.notComputable(words.noOre);
}

function oreText({ ore }: Account): string {
  if (!ore) return words.noOre;
  const [t, U] = [ore.ug / 1e12, (2 * uOf(ore)) / 1e12];
  const to = U > 0 ? placesFor(U) : 2;
  const tonnes = decimalText(decimalFromNumber(t), to);
  return words.oreText(U > 0 ? `${tonnes} ± ${decimalText(decimalFromNumber(U), to)}` : tonnes);
}

/** The second question in figures; nothing where it cannot be computed, which the answer says with its reason. */
function usualRows(excess: Excess | NoUsual): (readonly [string, string])[] {
  if ('why' in excess) return [];
  const { usual } = excess;
  const z = zOf(excess.excess);
  const periods = usual.periods.map((p) => words.subject(dayText(p.period.from ?? ''), dayText(p.closing.happened)));
  return [
    [words.usualRate, words.usualText(measuredText(usual.rate), usual.basis, periods)],
    [words.expected, measuredText(excess.expected)],
    [words.beyond, measuredText(excess.excess)],
    [
      words.zUsual,
      z === null ? commonWords.notComputable(words.noZ) : words.zText(decimalText(decimalFromNumber(Math.abs(z)), 2)),
    ],
  ];
}

function said(account: Account, excess: Excess | NoUsual): Content[] {
  const { unaccounted, released } = account;
  const z = zOf(unaccounted);
  const u = uOf(unaccounted);
  return [
    section(words.says),
    ...statements(
      [
        [words.withU, measuredText(unaccounted)],
        [
          words.z,
          z === null ? commonWords.notComputable(words.noZ) : words.zText(decimalText(decimalFromNumber(Math.abs(z)), 2)),
        ],
        [
          words.detectable,
          u > 0
            ? words.detectableText(gramText(detectableFactor * u, { places: placesFor((2 * u) / 1e6) }))
            : commonWords.notComputable(words.noZ),
        ],
        [words.lost, measuredText(total([unaccounted, released]))],
        [words.ore, oreText(account)],
        [words.perTonne, perTonneText(account)],
        ...usualRows(excess),
      ],
      42,
    ),
    sentence(z === null ? words.noLevel : words.levels[levelOf(z)]),
    ...(unaccounted.ug < 0 ? [sentence(words.more)] : []),
    sentence(words.notVapour),
    sentence(words.notAir),
  ];
}

/** The account and what it says. */
export function figuresOf(account: Account, excess: Excess | NoUsual): Content[] {
  return [
    ...together([
      section(words.account),
      ...ledger(
        [
          { head: words.item, share: 60 },
          { head: words.grams, share: 20, amount: true },
          { head: words.U, share: 20, amount: true },
        ],
        [
          row(words.opening, account.opening),
          row(words.receipts, account.receipts),
          ...(Math.round(account.invoiced.ug) === 0 ? [] : [row(words.invoiced, account.invoiced)]),
          row(words.found, account.found),
          row(words.removals, account.removals),
          row(words.released, account.released),
          row(words.closing, account.closing),
          row(words.unaccounted, account.unaccounted, { sum: true, closing: true }),
        ],
      ),
    ]),
    { stack: [small(words.places)], unbreakable: true },
    ...said(account, excess),
  ];
}
