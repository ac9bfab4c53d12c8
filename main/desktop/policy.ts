/**
 * What the desktop window may do, as plain rules without Electron: where it lives, what it may load, what it may ask the system for. The scheme,
 * the host and the partition are the address of the window's database: changing one of them would hide every draft.
 */

/** Scheme, origin and storage partition of the window. Part of the format: never renamed. */
export const scheme = 'retort-daybook';
export const origin = `${scheme}://window`;
export const partition = 'persist:daybook';

/** The page that is shown. */
export const startPage = `${origin}/`;

/** Settings of the page's process: all that could widen it is said out loud, so that a changed default changes nothing. */
export const webPreferences = {
  partition,
  contextIsolation: true,
  sandbox: true,
  nodeIntegration: false,
  nodeIntegrationInWorker: false,
  nodeIntegrationInSubFrames: false,
  webSecurity: true,
  allowRunningInsecureContent: false,
  experimentalFeatures: false,
  webviewTag: false,
  navigateOnDragDrop: false,
  spellcheck: false,
} as const;

/** True for an address of our own origin and no other. */
export function isOurs(url: string): boolean {
  // the parser of addresses gives schemes of one's own no origin: scheme and host are compared as parsed
  try {
    const { protocol, host, username, password } = new URL(url);
    return protocol === `${scheme}:` && host === 'window' && username === '' && password === '';
  } catch {
    return false;
  }
}

/** True for what the page may load: its own files and answers, what it holds in memory, and pictures written into an address. */
export function mayLoad(url: string, resourceType: string): boolean {
  if (url.startsWith('blob:')) return isOurs(url.slice('blob:'.length));
  if (url.startsWith('data:')) return resourceType === 'image';
  return isOurs(url);
}

const permissions: readonly string[] = ['persistent-storage', 'clipboard-sanitized-write'];

/** The only two things the page may ask the system for, and only our page. */
export const mayAsk = (permission: string, from: string): boolean => permissions.includes(permission) && isOurs(from);

/**
 * The request as the host wants it, with the origin it came from. For a scheme of one's own Chromium leaves the Origin header out: the part of
 * it that adds the header is not on the way. So where there is none, what can be known stands in for it: this carrier serves one session, which
 * loads nothing but our origin and has neither frames nor other windows, and the body is of a type that no form can send. A header that is there
 * is never replaced, and the host refuses any but ours.
 */
export function withOrigin(request: Request): Request {
  const { method, headers } = request;
  if (method !== 'POST' || headers.has('origin') || !isOurs(request.url)) return request;
  const site = headers.get('sec-fetch-site');
  const type = (headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase();
  if ((site !== null && site !== 'same-origin') || (type !== 'application/json' && type !== 'application/octet-stream'))
    return request;
  const own = new Headers(headers);
  own.set('origin', origin);
  return new Request(request, { headers: own });
}

/** The daybook folder named on the command line, or null. `packaged` false: the word after the executable is the program's own folder. */
export function folderFrom(argv: readonly string[], packaged: boolean): string | null {
  const words = argv.slice(1).filter((word) => !word.startsWith('-'));
  return words[packaged ? 0 : 1] ?? null;
}
