/**
 * How a site writes numbers, masses, temperatures and days. It changes what window and papers show and what their fields read; the record on disk keeps
 * its own notation (decimal points, units as read, degrees Celsius, ISO days) whatever stands here.
 */
import { label } from '../shapes.ts';
import { z } from '../zod.ts';

export const decimalMarks = ['point', 'comma'] as const;
/** Computed masses: grams, or troy ounces with decimals. */
export const massForms = ['grams', 'troy'] as const;
export const temperatureForms = ['celsius', 'fahrenheit'] as const;
/** `words`: the month as a word. The others name the order of day, month and year and the mark between them. */
export const dayForms = ['words', 'y-m-d', 'd.m.y', 'd/m/y', 'm/d/y'] as const;

export const siteNotation = z.strictObject({
  decimal: z.enum(decimalMarks),
  masses: z.enum(massForms),
  temperature: z.enum(temperatureForms),
  days: z.enum(dayForms),
  note: label.optional(),
});
