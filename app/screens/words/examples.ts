/**
 * The worked examples: invented inputs, handed to the reckonings of the core when the page opens. No result is written here, and what is shown as
 * given is read from what was handed over.
 */
import { type Movement, stocksAt } from '../../core/book/movements/gathering.ts';
import { outside } from '../../core/book/places.ts';
import { decimalFromNumber } from '../../core/decimal.ts';
import { measured, uOf } from '../../core/measured.ts';
import { reckon } from '../../core/reckon/index.ts';
import type { WorkingLine } from '../../parts/working-line.ts';
import { massAsRead } from '../../words/daybook-weights.ts';
import { decimalText, gramsOf, massText, withU } from '../../words/figures.ts';
import { spoken } from '../../words/reasons.ts';
import { type WorkingKey, workingsWords, workingTexts } from '../../words/workings.ts';

const names = workingsWords.names;
/** What is handed over stands with a point; it is shown with the site's mark, a weight in the unit it was read in. */
const given = (text: string, figure: string): WorkingLine => ({ sort: 'reading', text, figure: massAsRead(figure) });
const step = (text: string, figure: string): WorkingLine => ({ sort: 'formula', text, figure });
const result = (text: string, figure: string): WorkingLine => ({ sort: 'result', text, figure });

const inUnit = (value: number, unit: string, places: number): string =>
  unit === 'g'
    ? massText(decimalFromNumber(value), places)
    : `${decimalText(decimalFromNumber(value), places)}${unit === '' ? '' : `\u00a0${unit}`}`;

/** The answer of a reckoning: each figure by its path, or in words why there is none. */
function answerOf(topic: string, input: object) {
  const answer = reckon(topic, input);
  const value: unknown = answer.ok ? spoken(answer.value) : {};
  const at = (path: string): unknown =>
    path
      .split('.')
      .reduce<unknown>((part, name) => (part !== null && typeof part === 'object' ? Reflect.get(part, name) : undefined), value);
  return (path: string, unit: string, places: number): string => {
    const found = at(path);
    if (typeof found === 'number') return inUnit(found, unit, places);
    const why = found !== null && typeof found === 'object' ? Object.values(found)[0] : found;
    return String(why ?? '–');
  };
}

function net(): WorkingLine[] {
  const scale = { d: '0.1 g', s: '0.05 g', certificate_U: '0.2 g', certificate_k: 2, certificate_at: '1000 g' };
  const input = { gross: '812.4 g', tare: '212.1 g', scale };
  const answer = answerOf('weighing', input);
  return [
    given(names.gross, input.gross),
    given(names.tare, input.tare),
    given(names.division, scale.d),
    given(names.scatter, scale.s),
    given(names.certificate(String(scale.certificate_k), scale.certificate_at), scale.certificate_U),
    step(names.u, answer('u_g', 'g', 3)),
    result(names.net, answer('net_g', 'g', 1)),
  ];
}

function gap(): WorkingLine[] {
  const firing = { sponge: '392.6 g', mercury: '611.4 g', water: '1.2 g' };
  const input = { charge: ['600.3 g', '411.2 g'], firings: [firing], u_g: { charge: 0.15, sponge: 0.1, mercury: 0.1 } };
  const answer = answerOf('run', input);
  return [
    ...input.charge.map((lot, i) => given(names.lot(i + 1), lot)),
    given(names.sponge, firing.sponge),
    given(names.mercury, firing.mercury),
    given(names.water, firing.water),
    ...(['charge', 'sponge', 'mercury'] as const).map((what) =>
      given(names.uOf(names[what].toLowerCase()), inUnit(input.u_g[what], 'g', 2)),
    ),
    step(names.charge, answer('charge_g', 'g', 1)),
    step(names.u, answer('u_gap_g', 'g', 2)),
    result(names.gap, answer('gap_g', 'g', 1)),
  ];
}

function stock(): WorkingLine[] {
  const [flask, circuit] = ['vessel:flask', 'circuit:plates'];
  const mercury = [measured(2_500_000_000, [['scale', 1_000_000]]), measured(180_000_000, [['scale', 200_000]])] as const;
  const movements: Movement[] = [
    { at: '2026-03-02', from: outside, to: flask, mercury: mercury[0], entry: '1', basis: 'weighed' },
    { at: '2026-03-03', from: flask, to: circuit, mercury: mercury[1], entry: '2', basis: 'weighed' },
  ];
  const stocks = stocksAt(movements, null);
  const shown = (value: { ug: number; parts: ReadonlyMap<string, number> } | undefined): string =>
    value ? withU(gramsOf(value.ug), uOf(value)) : '–';
  return [
    given(names.came, shown(mercury[0])),
    given(names.went, shown(mercury[1])),
    step(names.inCircuit, shown(stocks.get(circuit))),
    result(names.inFlask, shown(stocks.get(flask))),
  ];
}

const period = {
  items: [
    { name: names.sealed(names.opening), role: 'opening', g: 34_470, u_g: 2, sealed_id: '1' },
    { name: names.weighed(names.opening), role: 'opening', g: 5000, u_g: 2 },
    { name: names.receipt, role: 'receipt', g: 2500, u_g: 1 },
    { name: names.removal, role: 'removal', g: 1000, u_g: 1 },
    { name: names.sealed(names.closing), role: 'closing', g: 34_470, u_g: 2, sealed_id: '1' },
    { name: names.weighed(names.closing), role: 'closing', g: 6494, u_g: 2 },
  ],
  groups: {},
};
const periodGiven = (): WorkingLine[] =>
  period.items.map(({ name, g, u_g }) => given(name, withU(decimalFromNumber(g), u_g * 1e6)));

function unaccounted(): WorkingLine[] {
  const answer = answerOf('balance', period);
  return [
    ...periodGiven(),
    step(names.u, answer('u_g', 'g', 2)),
    step(names.unaccounted, answer('unaccounted_g', 'g', 1)),
    result(names.z, answer('z', '', 2)),
  ];
}

function detectable(): WorkingLine[] {
  const answer = answerOf('balance', period);
  return [
    given(names.uOf(names.unaccounted.toLowerCase()), answer('u_g', 'g', 2)),
    result(names.detectable, answer('detectable_g', 'g', 1)),
  ];
}

function fineness(): WorkingLine[] {
  const samples = [
    { sample_mg: 500, cornet_mg: 436.4 },
    { sample_mg: 500.1, cornet_mg: 436.55 },
  ];
  const proofs = [{ taken_mg: 436.5, found_mg: 436.65 }];
  const answer = answerOf('assay', { samples, proofs });
  const pair = (a: number, b: number): string => names.pair(inUnit(a, 'mg', 2), inUnit(b, 'mg', 2));
  return [
    ...samples.map((one, i) => given(names.sample(i + 1), pair(one.sample_mg, one.cornet_mg))),
    ...proofs.map((one) => given(names.proof, pair(one.taken_mg, one.found_mg))),
    step(names.change, answer('delta_mg', 'mg', 2)),
    ...samples.map((_, i) => step(names.sampleFineness(i + 1), answer(`gold_permille.${i}`, '‰', 2))),
    result(names.fineness, answer('gold_mean_permille', '‰', 2)),
  ];
}

function yielded(): WorkingLine[] {
  const input = { bar: '388.1 g', gold_permille: 872.5, ore: '24 t' };
  const answer = answerOf('yield', input);
  return [
    given(names.bar, input.bar),
    given(names.fine, inUnit(input.gold_permille, '‰', 1)),
    given(names.ore, input.ore),
    step(names.fineGold, answer('fine_gold_g', 'g', 2)),
    step(names.fineYield, answer('fine_g_t', 'g/t', 2)),
    result(names.bullionYield, answer('gross_g_t', 'g/t', 2)),
  ];
}

function exposure(): WorkingLine[] {
  const readings = [
    { from: '07:00', to: '09:00', mg_m3: 0.012 },
    { from: '09:00', to: '11:00', mg_m3: 0.003, mark: '<' },
  ];
  const shift = { from: '07:00', to: '12:00' };
  const unsampled = { low: 0, high: 0.02 };
  const answer = answerOf('exposure', { readings, shift, unsampled, limits: [] });
  const air = 'mg/m³';
  return [
    ...readings.map(({ from, to, mg_m3, mark = '' }) => given(names.reading(from, to), `${mark}${inUnit(mg_m3, air, 3)}`)),
    given(names.shift, names.fromTo(shift.from, shift.to)),
    given(names.unsampled, names.fromTo(inUnit(unsampled.low, '', 0), inUnit(unsampled.high, air, 3))),
    result(names.low, answer('twa_8h.low', air, 5)),
    result(names.high, answer('twa_8h.high', air, 5)),
  ];
}

const lines: Readonly<Record<WorkingKey, () => WorkingLine[]>> = {
  net,
  gap,
  stock,
  unaccounted,
  detectable,
  fineness,
  yield: yielded,
  exposure,
};

/** One example: what is given, what is reckoned from it now, and the source of the method. */
export const exampleOf = (key: WorkingKey): readonly WorkingLine[] => [
  ...lines[key](),
  { sort: 'source', text: workingTexts[key].source },
];
