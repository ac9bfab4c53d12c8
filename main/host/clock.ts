/** The machine's clock as a moment: local time, seconds, and how far it is from UTC ("2026-03-14T09:20:05+13:00"). The host's only clock. */

const two = (n: number): string => String(n).padStart(2, '0');

/** `at` in the zone this machine is set to. */
export function momentText(at: Date): string {
  const offset = -at.getTimezoneOffset();
  const far = Math.abs(offset);
  const day = `${String(at.getFullYear()).padStart(4, '0')}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  const clock = `${two(at.getHours())}:${two(at.getMinutes())}:${two(at.getSeconds())}`;
  return `${day}T${clock}${offset < 0 ? '-' : '+'}${two(Math.floor(far / 60))}:${two(far % 60)}`;
}

/** Now. */
export const machineClock = (): string => momentText(new Date());
