/**
 * Who is kept away, what a respirator does and does not do, and what keeps mercury from going home: general practice (safety.md 5.2, 5.4, 5.5), shown
 * before a run, at an open day and on the wall sheet. It fits nobody with a mask and calls nobody fit; that is for licensed people.
 */
export const peopleWords = {
  keptAway: 'People kept away, respirators, washing',
  keptAwayShort: 'who stays out, and what a mask does not do',
  keptAwayLines: [
    'Kept away, without asking why: whoever is pregnant, trying for a child or nursing, and everybody under age. Mercury crosses to the child before birth and passes into milk; children breathe more for their size and nearer to the floor.',
    'Kept away too: visitors, pets, and whoever has no work here.',
  ],
  respirator: [
    'Only a cartridge made for mercury vapour holds it: with an indicator at its end, or changed by a fixed schedule its maker gives. A dust mask or a cartridge for paint and solvents lets it through.',
    'A respirator is fitted to one face, clean shaven, by somebody trained for it, with a doctor’s word where the law asks for one. It changes nothing about the air that is read and written down.',
    'At a reading no cartridge is made for, or one nobody knows, the answer is to leave and not a better mask.',
  ],
  hygiene: [
    'No food, drink, smoking or make-up where mercury is. Rings, watches and gold off: mercury takes hold of them.',
    'Hands and face washed before anybody eats, drinks or goes; shower and change after a run. Work clothes and shoes stay on site and are not washed at home: families have been exposed through them.',
  ],
} as const;
