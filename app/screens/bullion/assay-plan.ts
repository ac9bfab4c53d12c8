/** The form of an assay: method first, and only that method's fields go into the entry. Rows in which nothing was weighed make nothing. */
import type { AssayMethod, AssaySubject } from '../../core/kinds/assay.ts';
import type { Body } from '../../core/kinds/index.ts';
import type { MassUnit } from '../../core/mass.ts';
import { type FormPlan, numberOr, textOr } from '../../daybook/form.svelte.ts';
import { type MassEntry, massEntry, massText, noMass } from '../../parts/mass-entry.ts';
import { draftName } from './hrefs.ts';

/** One row of figures as typed, by column. */
export interface FigureRow {
  key: string;
  a: string;
  b: string;
  c: string;
}

export interface AssayValues {
  method: string;
  subject: string;
  bar: string;
  charge: string;
  parcel: string;
  vessel: string;
  which: string;
  /** The unit of samples, beads, cornets and proofs. */
  unit: MassUnit | '';
  /** Sample, bead before parting, gold after parting. */
  samples: FigureRow[];
  /** Gold taken, gold found, silver lost. */
  proofs: FigureRow[];
  /** Sample, millilitres, strength. */
  titrations: FigureRow[];
  air: MassEntry;
  water: MassEntry;
  waterDensity: string;
  airDensity: string;
  other: string;
  resultUnit: string;
  gold: string;
  goldU: string;
  silver: string;
  silverU: string;
  mercury: string;
  mercuryU: string;
  k: string;
  certificate: string;
  laboratory: string;
  samplingHow: string;
  positions: string;
  samplingU: string;
  balanceU: MassEntry;
  repeatability: string;
  proofScatter: string;
  limit: string;
  note: string;
}

export const noFigures = (key: string): FigureRow => ({ key, a: '', b: '', c: '' });
export const written = ({ a, b, c }: FigureRow): boolean => [a, b, c].some((text) => text.trim() !== '');
/** The rows that go into the entry; the first one always does, so that an empty form says what is missing. */
export const samplesOf = (rows: readonly FigureRow[]): readonly FigureRow[] => rows.filter((row, i) => i === 0 || written(row));
export const proofsOf = (rows: readonly FigureRow[]): readonly FigureRow[] => rows.filter(written);

/** Which subjects a method is for: the core refuses a titration or a density of anything else. */
export function subjectsFor(method: string, all: readonly AssaySubject[]): readonly AssaySubject[] {
  if (method === 'density') return ['bar'];
  return method === 'titration' ? ['bar', 'sponge'] : all;
}

const naming: Readonly<Record<string, readonly ('bar' | 'charge' | 'parcel' | 'vessel' | 'which')[]>> = {
  bar: ['bar'],
  sponge: ['charge'],
  ore: ['parcel', 'which'],
  tailings: ['parcel', 'which'],
  concentrate: ['parcel', 'which'],
  mercury: ['vessel', 'which'],
  residue: ['vessel', 'which'],
  waste: ['vessel', 'which'],
};
/** The fields that say which one it was. */
export const namedBy = (subject: string) => naming[subject] ?? [];

function ofMethod(v: AssayValues): Record<string, unknown> {
  const mass = (amount: string) => massText({ amount, unit: v.unit });
  switch (v.method as AssayMethod | '') {
    case 'fire-assay': {
      const proofs = proofsOf(v.proofs).map(({ a, b, c }) => ({ taken: mass(a), found: mass(b), silverLoss: mass(c) }));
      return {
        replicates: samplesOf(v.samples).map(({ a, b, c }) => ({ sample: mass(a), bead: mass(b), cornet: mass(c) })),
        proofs: proofs.length > 0 ? proofs : undefined,
        balanceU: massText(v.balanceU),
        repeatability: textOr(v.repeatability),
        proofScatter: textOr(v.proofScatter),
      };
    }
    case 'titration':
      return {
        titrations: samplesOf(v.titrations).map(({ a, b, c }) => ({
          sample: mass(a),
          volumeMl: textOr(b),
          normality: textOr(c),
        })),
        repeatability: textOr(v.repeatability),
      };
    case 'density':
      return {
        air: massText(v.air),
        water: massText(v.water),
        waterDensity: textOr(v.waterDensity),
        airDensity: textOr(v.airDensity),
        other: textOr(v.other),
      };
    case 'outside':
      return {
        result: {
          unit: textOr(v.resultUnit),
          gold: textOr(v.gold),
          goldU: textOr(v.goldU),
          silver: textOr(v.silver),
          silverU: textOr(v.silverU),
          mercury: textOr(v.mercury),
          mercuryU: textOr(v.mercuryU),
          k: numberOr(v.k),
        },
        certificate: textOr(v.certificate),
      };
    case '':
      return {};
  }
}

function bodyOf(v: AssayValues): Record<string, unknown> {
  const how = textOr(v.samplingHow);
  const sampling = how || textOr(v.positions) || textOr(v.samplingU);
  const several = v.method === 'fire-assay' || v.method === 'titration';
  const names = Object.fromEntries(namedBy(v.subject).map((name) => [name, textOr(v[name])]));
  return {
    method: textOr(v.method),
    subject: textOr(v.subject),
    ...names,
    ...ofMethod(v),
    sampling: sampling ? { method: how, positions: textOr(v.positions), u: textOr(v.samplingU) } : undefined,
    limit: several ? textOr(v.limit) : undefined,
    laboratory: textOr(v.laboratory),
    note: textOr(v.note),
  };
}

/** `bar`: the one it is about, or empty. `last`: the site's last assay of its own, whose figures about its weighing stand until changed. */
export const assayPlan = (bar: string, last: Body<'assay'> | undefined): FormPlan<AssayValues> => ({
  name: draftName('assay', bar),
  kind: 'assay',
  start: () => {
    const fire = last?.method === 'fire-assay' ? last : undefined;
    return {
      method: '',
      subject: 'bar',
      bar,
      charge: '',
      parcel: '',
      vessel: '',
      which: '',
      unit: 'mg',
      samples: [noFigures('r1'), noFigures('r2')],
      proofs: [noFigures('p1'), noFigures('p2')],
      titrations: [noFigures('t1'), noFigures('t2')],
      air: noMass(),
      water: noMass(),
      waterDensity: '',
      airDensity: '',
      other: '',
      resultUnit: 'permille',
      gold: '',
      goldU: '',
      silver: '',
      silverU: '',
      mercury: '',
      mercuryU: '',
      k: '',
      certificate: '',
      laboratory: '',
      samplingHow: '',
      positions: '',
      samplingU: '',
      balanceU: fire?.balanceU === undefined ? noMass('mg') : massEntry(fire.balanceU),
      repeatability: fire?.repeatability ?? '',
      proofScatter: fire?.proofScatter ?? '',
      limit: fire?.limit ?? '',
      note: '',
    };
  },
  body: bodyOf,
});
