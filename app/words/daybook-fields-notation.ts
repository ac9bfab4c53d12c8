/** The fields of how a site writes numbers, masses, temperatures and days. */
import { remark } from './daybook-fields-parts.ts';
import { dayFormNames, decimalNames, massFormNames, temperatureNames } from './daybook-names-notation.ts';
import type { FieldWords } from './daybook-shapes.ts';

const one = (key: string, label: string, names: Readonly<Record<string, string>>): FieldWords => ({
  key,
  label,
  needed: true,
  first: true,
  shape: { is: 'one', names },
});

export const siteNotationFields: readonly FieldWords[] = [
  one('decimal', 'Decimals', decimalNames),
  one('masses', 'Masses that are worked out', massFormNames),
  one('temperature', 'Temperatures', temperatureNames),
  one('days', 'Days', dayFormNames),
  remark,
];
