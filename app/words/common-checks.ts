/** Questions that a run and other works ask alike, by the name an entry keeps them under. General practice (safety.md 5.2 to 5.4). */
export const commonChecks = {
  fire: { check: 'fire', asks: 'Extinguisher and burns kit at hand, the place’s rules for fire followed' },
  people: {
    check: 'people',
    asks: 'Everyone here is named and trained; nobody under age, pregnant or nursing is in the area',
  },
  protection: {
    check: 'protection',
    asks: 'Respirator made for mercury vapour, gloves, eye and face cover, clothing that stays on site',
  },
  meter: { check: 'meter', asks: 'Vapour meter checked and zeroed, background read' },
  kit: { check: 'spill-kit', asks: 'Spill kit, catch tray with water and labelled bottles ready, waste route known' },
  airRead: { check: 'air-read', asks: 'Air read where people breathe, at the times the place has set' },
  noFood: { check: 'no-food', asks: 'No food, drink or smoking' },
  washed: { check: 'washed', asks: 'Hands and face washed, clothes changed, work clothes left on site' },
} as const;
