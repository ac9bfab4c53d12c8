/** The key screens, on the sample site: those whose pictures the README shows and whose layout the walks measure. */
export const keyScreens = [
  { name: 'today', address: '#/today' },
  { name: 'daybook', address: '#/daybook' },
  { name: 'mercury', address: '#/mercury' },
  { name: 'flow', address: '#/mercury/account' },
  { name: 'run', address: '#/retort/charge-0003' },
  { name: 'lot', address: '#/retort/lot/clean-up-0014%2F1' },
  { name: 'bar', address: '#/bullion/bar/melt-0001%2F1' },
  { name: 'air-day', address: `#/air/day/${encodeURIComponent('area:Retort house, bench@2026-03-10T07:30+10:00')}` },
  { name: 'papers', address: '#/papers' },
  { name: 'charge-form', address: '#/retort/new/charge' },
];
