/** The links of a drawing in turn: right and down lead to the next, left and up to the one before, and the last leads to the first. */
export function toNextLink(event: KeyboardEvent, drawing: SVGSVGElement | undefined): void {
  const by = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
  if (by === undefined || !drawing) return;
  const links = [...drawing.querySelectorAll<SVGAElement>('a')];
  const at = links.indexOf(document.activeElement as unknown as SVGAElement);
  if (at < 0) return;
  event.preventDefault();
  links[(at + by + links.length) % links.length]?.focus();
}
