/**
 * Old English money: 12 pence a shilling, 20 shillings a pound, as historic books print it. Exact; two figures without signs are never guessed at, because
 * they may be pounds and shillings, shillings and pence, or a decimal. Sources: methods.md 4 and 5.7; practice.md W1.
 */
import { divided, toText } from './decimal.ts';
import { numberPattern, oldNumber, writtenOut } from './old-number.ts';
import { compareRatio, nought, plusRatio, type Ratio, timesRatio } from './ratio.ts';
import { bad, good, problem, type Result } from './result.ts';

const penceInPound = 240n;
const withSigns = new RegExp(`^(?:£ ?(\\d+))?(?: ?(\\d+) ?s\\.?)?(?: ?(${numberPattern}) ?d\\.?)?$`);
const threeFigures = /^£? ?(\d+)[ .](\d+)[ .](\d+\.\d+|\d+(?: \d+\/\d+)?)(?: ?d\.?)?$/;
const twoFigures = /^\d+ ?[ ./] ?\d+$/;

const whole = (n: string | undefined): Ratio => ({ n: BigInt(n ?? 0), d: 1n });

/** "£3 17s 10½d", "3 17 10 1/2", "3.17.10 1/2", "9s 4d", "16d" as pounds, exact. Problems: `missing`, `wrong-type`, `old-money`, `old-money-two`, `old-money-carry`. */
export function poundsFromText(text: unknown, field: string): Result<Ratio> {
  if (text === undefined) return bad(problem('missing', field));
  if (typeof text !== 'string') return bad(problem('wrong-type', field, { wanted: 'string' }));
  const written = writtenOut(text);
  const read = text.slice(0, 60);
  if (!written) return bad(problem('old-money', field, { read }));
  const m = threeFigures.exec(written) ?? withSigns.exec(written);
  if (!m) return bad(problem(twoFigures.test(written) ? 'old-money-two' : 'old-money', field, { read }));
  const [, pounds, shillings, pence] = m;
  const d = pence === undefined ? nought : oldNumber(pence);
  if (!d) return bad(problem('old-money', field, { read }));
  const [s, twelve, twenty] = [whole(shillings), whole('12'), whole('20')];
  const higher = pounds !== undefined || shillings !== undefined;
  if ((higher && compareRatio(d, twelve) >= 0) || (pounds !== undefined && compareRatio(s, twenty) >= 0))
    return bad(problem('old-money-carry', field, { read }));
  return good(plusRatio(whole(pounds), plusRatio(timesRatio(s, { n: 1n, d: 20n }), timesRatio(d, { n: 1n, d: penceInPound }))));
}

/** Pence of an amount of pounds. */
export const penceOf = (pounds: Ratio): Ratio => timesRatio(pounds, { n: penceInPound, d: 1n });

/** "£3 17s 10.5d": pence half-even to 4 places, trailing zeros dropped, carried at 12. Pounds not below zero. */
export function moneyText(pounds: Ratio): string {
  const { n, d } = penceOf(pounds);
  const { digits } = divided({ digits: n, places: 0 }, { digits: d, places: 0 }, 4);
  const [inShilling, inPound] = [120_000n, 2_400_000n];
  const pence = toText({ digits: digits % inShilling, places: 4 }).replace(/\.?0+$/, '') || '0';
  return `£${digits / inPound} ${(digits % inPound) / inShilling}s ${pence}d`;
}
