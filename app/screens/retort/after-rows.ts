/** Where Enter leads after the last row of a list: the first fold or field behind it, never the button that keeps, so that a stray Enter keeps nothing. */
export function afterRows(rows: HTMLElement | undefined): HTMLElement | null {
  for (let next = rows?.nextElementSibling; next; next = next.nextElementSibling) {
    const stop = next.querySelector<HTMLElement>('summary, input, select, textarea');
    if (stop) return stop;
  }
  return null;
}
