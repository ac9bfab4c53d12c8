/**
 * Figures for mercury vapour in air as they were read in a named paper, to be copied and checked by the site. None of them is set, none is a default, and
 * none from memory is here. A body whose papers do not agree stands here once for each, and each row names the other. Source: safety.md 2.1 and 2.2, rows
 * marked as read.
 */
import type { Body } from './kinds/index.ts';

/** A row to copy: a limit that nobody here has checked or picked. */
export type LimitRow = Omit<Body<'limit'>, 'of' | 'checked' | 'picked' | 'out' | 'source'> & {
  readonly source: string;
  readonly key: string;
};

const vapour = { form: 'elemental-vapour' } as const;
const atWork = { ...vapour, people: 'work' } as const;
const forPublic = { ...vapour, people: 'public', basis: 'continuous' } as const;
const osha = { ...atWork, body: 'OSHA', jurisdiction: 'United States', mgM3: '0.1', status: 'legal' } as const;

export const limitRows: readonly LimitRow[] = [
  {
    ...osha,
    key: 'osha-mean',
    label: 'OSHA general industry, mean over 8 hours',
    basis: '8h',
    edition: 'page updated 6 September 2012',
    source: 'OSHA chemical sampling page, mercury vapor; 29 CFR 1910.1000 (1 mg per 10 m³)',
    conflict: 'NIOSH papers print the same 0.1 as a ceiling: see the row “OSHA 0.1 as NIOSH prints it, ceiling”',
  },
  {
    ...osha,
    key: 'osha-ceiling',
    label: 'OSHA 0.1 as NIOSH prints it, ceiling',
    basis: 'ceiling',
    edition: '6009 of 15 August 1994',
    source: 'NIOSH Pocket Guide p. 193; NIOSH Manual of Analytical Methods 6009, issue 2',
    conflict: 'OSHA’s own pages take it as a mean: see the row “OSHA general industry, mean over 8 hours”',
  },
  {
    ...osha,
    key: 'osha-construction',
    label: 'OSHA construction and shipyards',
    basis: '8h',
    notation: 'skin',
    edition: 'page updated 6 September 2012',
    source: 'OSHA chemical sampling page, mercury vapor; 1926.55 App. A, 1915.1000',
  },
  {
    ...atWork,
    key: 'osha-1989',
    label: 'OSHA rule of 1989',
    body: 'OSHA',
    jurisdiction: 'United States',
    mgM3: '0.05',
    basis: '8h',
    status: 'not-in-force',
    notation: 'skin',
    edition: '1989, remanded by a court',
    source: 'NIOSH, OSHA 1989 PEL project; 54 FR 2332',
  },
  {
    ...atWork,
    key: 'niosh',
    label: 'NIOSH recommended limit',
    body: 'NIOSH',
    jurisdiction: 'United States',
    mgM3: '0.05',
    basis: '8h',
    status: 'recommendation',
    notation: 'skin; printed for up to 10 h a day, 40 h a week',
    source: 'NIOSH Pocket Guide p. 193 and introduction',
  },
  {
    ...atWork,
    key: 'california-mean',
    label: 'Cal/OSHA, mean over 8 hours',
    body: 'Cal/OSHA',
    jurisdiction: 'California',
    mgM3: '0.025',
    basis: '8h',
    status: 'legal',
    edition: 'as listed by OSHA in 2012',
    source: 'OSHA chemical sampling page, mercury vapor; 8 CCR 5155',
  },
  {
    ...atWork,
    key: 'california-ceiling',
    label: 'Cal/OSHA, ceiling',
    body: 'Cal/OSHA',
    jurisdiction: 'California',
    mgM3: '0.1',
    basis: 'ceiling',
    status: 'legal',
    edition: 'as listed by OSHA in 2012',
    source: 'OSHA chemical sampling page, mercury vapor; 8 CCR 5155',
  },
  {
    ...atWork,
    key: 'acgih',
    label: 'ACGIH threshold limit value',
    body: 'ACGIH',
    mgM3: '0.025',
    basis: '8h',
    status: 'recommendation',
    notation: 'skin, A4',
    edition: 'as listed by OSHA in 2012; later editions not read',
    source: 'OSHA chemical sampling page, mercury vapor',
  },
  {
    ...atWork,
    key: 'eu',
    label: 'European Union, indicative',
    body: 'European Union',
    jurisdiction: 'European Union',
    mgM3: '0.02',
    basis: '8h',
    status: 'indicative',
    edition: '2009',
    source: 'Directive 2009/161/EU, third list',
  },
  {
    ...atWork,
    key: 'germany',
    label: 'Germany, AGW',
    body: 'TRGS 900',
    jurisdiction: 'Germany',
    mgM3: '0.02',
    basis: '8h',
    status: 'legal',
    source: 'S1-Leitlinie Quecksilber',
    conflict: 'an older entry of 0.1 is still on the web: see the row “Germany, superseded entry”',
  },
  {
    ...atWork,
    key: 'germany-superseded',
    label: 'Germany, superseded entry',
    body: 'DGUV Information 250-410',
    jurisdiction: 'Germany',
    mgM3: '0.1',
    basis: '8h',
    status: 'not-in-force',
    source: 'DGUV Information 250-410, sections 3.1 and 3.2',
    conflict: 'out of date: see the row “Germany, AGW”',
  },
  {
    ...forPublic,
    key: 'atsdr-action',
    label: 'ATSDR action level',
    body: 'ATSDR',
    jurisdiction: 'United States',
    mgM3: '0.010',
    status: 'guidance',
    edition: 'table revised 15 January 2019',
    source: 'Wisconsin DHS table of NIOSH, OSHA and ATSDR values',
    note: 'people are advised not to stay there',
  },
  {
    ...forPublic,
    key: 'atsdr-commercial',
    label: 'ATSDR clean-up target, commercial space',
    body: 'ATSDR',
    jurisdiction: 'United States',
    mgM3: '0.003',
    status: 'guidance',
    edition: 'table revised 15 January 2019',
    source: 'Wisconsin DHS table of NIOSH, OSHA and ATSDR values',
  },
  {
    ...forPublic,
    key: 'atsdr-home',
    label: 'ATSDR clean-up target, homes',
    body: 'ATSDR',
    jurisdiction: 'United States',
    mgM3: '0.001',
    status: 'guidance',
    edition: '22 March 2012',
    source: 'Wisconsin DHS table; ATSDR, Action levels for elemental mercury spills',
  },
  {
    ...forPublic,
    key: 'atsdr-1999',
    label: 'ATSDR chronic level of 1999',
    body: 'ATSDR',
    jurisdiction: 'United States',
    mgM3: '0.0002',
    status: 'guidance',
    edition: '1999',
    source: 'Wisconsin DHS table of NIOSH, OSHA and ATSDR values',
    note: 'the profile was revised in October 2024; its new figure was not read',
  },
  {
    ...forPublic,
    key: 'epa-rfc',
    label: 'EPA reference concentration',
    body: 'US EPA',
    jurisdiction: 'United States',
    mgM3: '0.0003',
    status: 'guidance',
    source: 'EPA, resources: mercury science and research, reference values',
  },
];

/** The row as a limit of the site's own book: neither checked nor picked. */
export function limitFromRow({ key: _, ...row }: LimitRow): Body<'limit'> {
  return { ...row, picked: 'no' };
}

/**
 * Who looked a row up here, and when, the last of them: on the site's own limits, the one that says the same figure from the same paper for the same people and
 * time. Nobody, where none says so.
 */
export function lookedUp(row: LimitRow, own: readonly Body<'limit'>[]): Body<'limit'>['checked'] {
  return own
    .filter(
      (l) =>
        l.source === row.source &&
        l.body === row.body &&
        l.mgM3 === row.mgM3 &&
        l.basis === row.basis &&
        l.people === row.people &&
        l.form === row.form,
    )
    .flatMap(({ checked }) => checked ?? [])
    .toSorted((a, b) => (a.on < b.on ? -1 : 1))
    .at(-1);
}
