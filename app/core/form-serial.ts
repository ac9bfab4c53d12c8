/**
 * The check character of the number of a blank form, so that a mistyped number is refused instead of naming another sheet. Method: ISO/IEC 7064:2003,
 * pure system MOD 37-2 (digits and letters; the check character is one of these or *), which finds every single wrong character and every two
 * neighbours exchanged. Marks between the characters and upper or lower case do not count.
 */
const alphabet = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*';

/** Digits and letters of a text, upper case. */
const plain = (text: string): string => text.toUpperCase().replace(/[^0-9A-Z]/g, '');

/** The check character of a text of digits and letters. */
export function checkCharacter(text: string): string {
  const sum = [...plain(text)].reduce((so, character) => ((so + alphabet.indexOf(character)) * 2) % 37, 0);
  return alphabet.charAt((38 - sum) % 37);
}

/** "212-3f9a01c4" with its check character behind it: "212-3f9a01c4-K". */
export const withCheck = (serial: string): string => `${serial}-${checkCharacter(serial)}`;

const ours = /^\d+-[0-9a-z]{7,9}(\W+\d+-[0-9a-z]{7,9})*(-[0-9a-z*])?$/i;

/**
 * Whether a number of a form is right by its check character; null where it is no number of a form of this program, such as that of a printed pad. A
 * number of this program's kind with its check character left out is not right.
 */
export function serialStands(text: string): boolean | null {
  const tidy = text.trim();
  if (!ours.test(tidy)) return null;
  return /-[0-9a-z*]$/i.test(tidy) && checkCharacter(tidy.slice(0, -1)) === tidy.slice(-1).toUpperCase();
}
