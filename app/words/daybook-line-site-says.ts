/** Sentences of the lists a site keeps for itself, and of the changes it makes to the questions it asks. */
import { count, type Lines, list, parts, small } from './daybook-line-parts.ts';
import { dayFormNames, decimalNames, massFormNames, temperatureNames } from './daybook-names-notation.ts';
import { dueThingNames, keptRecordNames, numberUseNames, stopThingNames } from './daybook-names-site.ts';
import { percentText } from './figures.ts';
import { workNames } from './work-cautions.ts';

type Kinds = 'check-list' | 'stop-rules' | 'site-figures' | 'site-numbers' | 'retention' | 'lead-times' | 'site-notation';

const questions = (n: number): string => count(n, 'question', 'questions');

export const siteSaysLines: Lines<Kinds> = {
  'check-list': ({ work, added = [], worded = [], leftOut = [], reviewed }) =>
    parts(
      `Check list, ${small(workNames[work])}: ${
        list([
          ...(added.length > 0 ? [`${questions(added.length)} added`] : []),
          ...(worded.length > 0 ? [`${questions(worded.length)} worded anew`] : []),
          ...(leftOut.length > 0 ? [`${questions(leftOut.length)} left out`] : []),
        ]) || 'as it comes with the program'
      }`,
      reviewed !== undefined && `looked over by ${reviewed}`,
    ),
  'stop-rules': ({ rules, setBy }, { name }) =>
    parts(
      rules.length === 0
        ? 'Stop rules: none stands any more'
        : `Stop rules: ${list(rules.map((r) => `${small(stopThingNames[r.of])}, ${r.when}`))}`,
      setBy !== undefined && `set by ${name('person', setBy)}`,
    ),
  'site-figures': ({ residualShare, falseAlarm, lotDays }) =>
    `Figures of the account: ${list([
      ...(residualShare
        ? [
            `mercury left in sponge ${percentText(residualShare.middle, 2)}, standard uncertainty ${percentText(residualShare.u, 2)}`,
          ]
        : []),
      ...(falseAlarm ? [`false alarm ${percentText(falseAlarm.value, 2)}`] : []),
      ...(lotDays ? [`a lot is out of step after ${count(lotDays.value, 'day', 'days')} in store`] : []),
    ])}`,
  'site-numbers': ({ numbers }) =>
    numbers.length === 0
      ? 'Numbers to call: none stands any more'
      : `Numbers to call: ${list(numbers.map((n) => `${small(numberUseNames[n.for])} ${n.number}`))}`,
  retention: ({ periods }) =>
    periods.length === 0
      ? 'Keeping of records: no period stands any more'
      : `Keeping of records: ${list(periods.map((p) => `${small(keptRecordNames[p.records])} ${count(p.years, 'year', 'years')}`))}`,
  'lead-times': ({ leads, countEvery }) =>
    parts(
      leads.length === 0
        ? 'Lead times: as they come with the program'
        : `Lead times: ${list(leads.map((l) => `${small(dueThingNames[l.of])} ${count(l.days, 'day', 'days')}`))}`,
      countEvery !== undefined && `a stock-take every ${count(countEvery, 'day', 'days')}`,
    ),
  'site-notation': ({ decimal, masses, temperature, days }) =>
    `Words and units: decimals ${small(decimalNames[decimal])}, masses in ${small(massFormNames[masses])}, temperatures in ${
      temperatureNames[temperature]
    }, days as ${dayFormNames[days]}`,
};
