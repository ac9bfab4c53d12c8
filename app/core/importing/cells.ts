/**
 * One cell, read as its column says: exact text for masses and figures, days in the stated order and no other. It never guesses a unit, a decimal mark
 * or a century, and never rounds. Old notation: practice.md 4 and methods.md 4 ("87 11 10" is ounces, pennyweights and grains, and no decimal).
 */
import { decimalFromText, shifted, toNumber } from '../decimal.ts';
import { formula } from '../formula.ts';
import { massFromText, massUnits } from '../mass.ts';
import { bad, good, problem, type Result } from '../result.ts';
import { isDay, isMoment } from '../time.ts';
import type { ImportField } from './fields.ts';
import type { CellSettings, DayForm } from './mapping.ts';

/** What else a cell needs to be read: the offset of local time. */
export interface CellAround {
  readonly offset: string;
  /** The day of the row's entry, for a time that stands alone; empty where it is not known. */
  readonly day: string;
}

const refuse = (code: string, read: string, more: Record<string, string | number> = {}): Result<never> =>
  bad(problem(code, '', { read: read.slice(0, 40), ...more }));

/** An apostrophe that a table got so that no spreadsheet runs the cell is taken off again. */
export const withoutGuard = (cell: string): string =>
  cell.startsWith("'") && formula.test(cell.slice(1)) ? cell.slice(1) : cell;

/** Numbers with a comma for the decimal mark become numbers with a point; the other mark is refused, since it may stand for thousands. */
function withPoint(cell: string, decimal: CellSettings['decimal']): Result<string> {
  if ((decimal ?? 'point') === 'point') return cell.includes(',') ? refuse('import-comma', cell) : good(cell);
  if (/\d\.\d/.test(cell)) return refuse('import-point', cell);
  return good(cell.replace(/(\d),(\d)/g, '$1.$2'));
}

/** Ways a unit is spelled in old books that can mean one unit only. */
const spelled: Readonly<Record<string, string>> = {
  gram: 'g',
  grams: 'g',
  gramme: 'g',
  grammes: 'g',
  dwts: 'dwt',
  pennyweight: 'dwt',
  pennyweights: 'dwt',
  grs: 'gr',
  grain: 'gr',
  grains: 'gr',
  lbs: 'lb',
};
const ounces = /^(oz|ozs|ounce|ounces)$/i;
const tons = /^tons?$/i;

/** "87 11 10" as ounces, pennyweights and grains troy. */
function threeNumbers(cell: string): Result<string> {
  const match = /^(\d+)[\s.\-:](\d{1,2})[\s.\-:](\d{1,2})$/.exec(cell);
  if (!match) return refuse('import-three-numbers', cell);
  const [, oz, dwt, gr] = match;
  if (Number(dwt) >= 20 || Number(gr) >= 24) return refuse('import-three-numbers', cell);
  return good(`${Number(oz)} ozt ${Number(dwt)} dwt ${Number(gr)} gr`);
}

function massCell(text: string, { unit, decimal }: CellSettings): Result<string> {
  if (unit === 'ozt-dwt-gr' && /^[\d\s.\-:]+$/.test(text)) return threeNumbers(text);
  const pointed = withPoint(text, decimal);
  if (!pointed.ok) return pointed;
  const asked = unit === 'ozt-dwt-gr' ? 'ozt' : massUnits.find((one) => one === unit);
  if (/^\d+(\.\d+)?$/.test(pointed.value) && asked !== undefined) {
    const got = massFromText(`${pointed.value} ${asked}`, '');
    return got.ok ? good(got.value.text) : got;
  }
  const tidy = pointed.value.replace(/[A-Za-z][A-Za-z-]*\.?/g, (word) => {
    const bare = word.endsWith('.') ? word.slice(0, -1) : word;
    if (ounces.test(bare) && (asked === 'ozt' || asked === 'oz-av')) return asked;
    if (tons.test(bare) && (asked === 'short-ton' || asked === 'long-ton' || asked === 't')) return asked;
    return Object.hasOwn(spelled, bare.toLowerCase()) ? (spelled[bare.toLowerCase()] ?? bare) : bare;
  });
  const got = massFromText(tidy, '');
  return got.ok ? good(got.value.text) : got;
}

function volumeCell(text: string, { unit, decimal }: CellSettings): Result<string> {
  const pointed = withPoint(text, decimal);
  if (!pointed.ok) return pointed;
  return good(/^\d+(\.\d+)?$/.test(pointed.value) && unit !== undefined ? `${pointed.value} ${unit}` : pointed.value);
}

function numberCell(text: string, { unit, decimal }: CellSettings): Result<number> {
  const pointed = withPoint(text, decimal);
  if (!pointed.ok) return pointed;
  const percent = unit === 'percent' || /\d\s*%$/.test(pointed.value);
  const bare = percent ? pointed.value.replace(/\s*%$/, '') : pointed.value;
  if (percent) {
    const exact = decimalFromText(bare);
    return exact ? good(toNumber(shifted(exact, -2))) : refuse('import-number', text);
  }
  return /^-?\d+(\.\d+)?(e[-+]?\d+)?$/i.test(bare) ? good(Number(bare)) : refuse('import-number', text);
}

const monthNames = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

const monthOf = (word: string): number => {
  if (/^\d{1,2}$/.test(word)) return Number(word);
  const said = word.toLowerCase();
  return (
    monthNames.findIndex((name) => said === name || said === name.slice(0, 3) || (said === 'sept' && name === 'september')) + 1
  );
};

/** A day in the stated order as year-month-day. The year has four figures; a month may be named. */
export function dayCell(text: string, form: DayForm = 'year-month-day'): Result<string> {
  const parts = text.split(/[-/.\s]+/).filter((part) => part !== '');
  const at = form.split('-');
  const part = (name: string) => parts[at.indexOf(name)] ?? '';
  const [year, month, day] = [part('year'), monthOf(part('month')), part('day')];
  if (parts.length === 3 && /^\d{2}$/.test(year) && /^\d{1,2}$/.test(day)) return refuse('import-year', text);
  const iso = `${year}-${String(month).padStart(2, '0')}-${day.padStart(2, '0')}`;
  return parts.length === 3 && isDay(iso) ? good(iso) : refuse('import-day', text, { form });
}

const timeAtEnd = /^(.*?)[T\s]*(\d{1,2})[:.](\d\d)(:\d\d)?\s*([+-]\d\d:\d\d)?$/;

/** A day and a time, a time alone, or a day alone; a day alone is told by `timed` false and stands at noon. */
function momentCell(
  text: string,
  { days }: CellSettings,
  around: CellAround,
): Result<{ readonly moment: string; readonly timed: boolean }> {
  if (isMoment(text)) return good({ moment: text, timed: true });
  const whole = dayCell(text, days);
  if (whole.ok) return good({ moment: `${whole.value}T12:00${around.offset}`, timed: false });
  const match = timeAtEnd.exec(text);
  if (!match) return whole;
  const [, before = '', hour = '', minute = '', second = '', offset = around.offset] = match;
  const day = before.trim() === '' && around.day !== '' ? good(around.day) : dayCell(before, days);
  if (!day.ok) return whole;
  const moment = `${day.value}T${hour.padStart(2, '0')}:${minute}${second}${offset}`;
  return isMoment(moment) ? good({ moment, timed: true }) : refuse('import-time', text);
}

/** What a cell came to; `timed` false: a moment of which only the day was written. */
export interface CellValue {
  readonly value: unknown;
  readonly timed?: boolean;
}

const plainly = <T>(got: Result<T>): Result<CellValue> => (got.ok ? good({ value: got.value }) : got);

/** A choice as it stands on disk, or the same words with blanks and capitals. */
function choiceOf(text: string, choices: readonly string[]): string | undefined {
  const plain = text.toLowerCase().replace(/[\s_]+/g, '-');
  return choices.find((one) => one === text) ?? choices.find((one) => one.toLowerCase().replace(/\s+/g, '-') === plain);
}

/** The cell as its field takes it. Names are left as they stand: the book resolves them. */
export function readCell(cell: string, field: ImportField, settings: CellSettings, around: CellAround): Result<CellValue> {
  const unguarded = withoutGuard(cell);
  const text = unguarded.trim();
  if (field.cell !== 'choice' && field.choices.includes(text)) return good({ value: text });
  switch (field.cell) {
    case 'mass':
      return plainly(massCell(text, settings));
    case 'volume':
      return plainly(volumeCell(text, settings));
    case 'number':
      return plainly(numberCell(text, settings));
    case 'figure':
      return plainly(withPoint(text, settings.decimal));
    case 'day':
      return plainly(dayCell(text, settings.days));
    case 'moment': {
      const got = momentCell(text, settings, around);
      return got.ok ? good({ value: got.value.moment, timed: got.value.timed }) : got;
    }
    case 'choice': {
      const choice = choiceOf(text, field.choices);
      return choice === undefined ? refuse('not-one-of', text, { choices: field.choices.join(', ') }) : good({ value: choice });
    }
    case 'name':
    case 'key':
      return good({ value: text });
    default:
      return good({ value: unguarded });
  }
}
