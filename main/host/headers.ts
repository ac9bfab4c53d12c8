/**
 * The headers of every answer: what a page of ours may load (only its own files), and that nothing is stored, guessed or shared with other
 * origins. No CORS header is ever sent. Source: Content Security Policy Level 3, Trusted Types, Fetch (W3C, WHATWG).
 */

/** What the window may load. Images may also come from memory (a picture just chosen). The one policy name is Svelte's. */
export const windowPolicy = [
  "default-src 'none'",
  "script-src 'self'",
  "style-src 'self'",
  "font-src 'self'",
  "connect-src 'self'",
  "worker-src 'self'",
  "img-src 'self' data: blob:",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "object-src 'none'",
  "require-trusted-types-for 'script'",
  'trusted-types svelte-trusted-html',
].join('; ');

/** Anything that is not a page of the window: it may load nothing and run nothing. */
export const barePolicy = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; sandbox";

/** Headers of an answer with this media type. */
export const headersFor = (type: string, policy: string): Record<string, string> => ({
  'content-type': type,
  'content-security-policy': policy,
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'no-referrer',
  'cache-control': 'no-store',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
  'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()',
});
