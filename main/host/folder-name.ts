/** The folder a new daybook gets from its name: one plain folder, never a path, and a name every file system takes. */
import { bad, good, problem, type Result } from '../../app/core/result.ts';

// names Windows keeps for devices
const devices = /^(con|prn|aux|nul|(?:com|lpt)[\d¹²³])$/i;

/** "Stamp battery, upper creek" → "Stamp battery upper creek". Letters, digits, blanks, hyphens and underscores stay; at most 80 of them. */
export function folderFor(name: string): Result<string> {
  const plain = name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}_-]+/gu, ' ')
    .trim()
    .slice(0, 80)
    // half of a letter that takes two places
    .replace(/[\ud800-\udbff]$/, '')
    // a command would take what begins with a hyphen for an option
    .replace(/^[\s-]+/, '')
    .trim();
  return plain === '' || devices.test(plain) || !/[\p{L}\p{N}]/u.test(plain)
    ? bad(problem('no-folder-name', 'make'))
    : good(plain);
}
