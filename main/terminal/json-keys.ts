/**
 * Finds a key that stands twice in one object of a JSON text. `JSON.parse` keeps the last one in silence, and a weight would be lost without a
 * word. The text must already be known to be JSON.
 */

/** The first key given twice, as a path from the top (`firings[0].sponge`), or null. */
export function keyTwice(json: string): string | null {
  /** What is open around the place read: for an object its keys so far, for a list the index. */
  const open: ({ keys: Set<string>; key: string } | { index: number })[] = [];
  const path = (): string =>
    open.reduce((at, o) => ('index' in o ? `${at}[${o.index}]` : at === '' ? o.key : `${at}.${o.key}`), '');
  const tokens = /"(?:[^"\\]|\\.)*"|[{}[\],:]/g;
  let text: string | null = null;
  for (const [token] of json.matchAll(tokens)) {
    const here = open.at(-1);
    if (token === '{') open.push({ keys: new Set(), key: '' });
    else if (token === '[') open.push({ index: 0 });
    else if (token === '}' || token === ']') open.pop();
    else if (token === ',') {
      if (here && 'index' in here) here.index++;
    } else if (token !== ':') text = token;
    else if (here && 'keys' in here && text !== null) {
      here.key = JSON.parse(text) as string;
      if (here.keys.has(here.key)) return path();
      here.keys.add(here.key);
    }
  }
  return null;
}
