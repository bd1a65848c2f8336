import type { IncomingHttpHeaders } from 'node:http';

/** What the server says to one request. */
export interface Answer {
  readonly status: number;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array;
}

/** What stands at the head of a request. */
export interface Asked {
  readonly method: string;
  /** As it came over the wire: nothing in it is decoded, now or later. */
  readonly target: string;
  readonly headers: IncomingHttpHeaders;
  /** Each host that is named; among the headers stands the first alone. */
  readonly hosts: readonly string[];
}

/**
 * On every answer. The page runs its own scripts and the solid kernel, and talks to its own server alone; no other page
 * may frame it, hold it or read from it.
 */
export const GUARDING_HEADERS: Readonly<Record<string, string>> = {
  'content-security-policy': [
    "default-src 'self'",
    "script-src 'self' 'wasm-unsafe-eval'",
    "style-src 'self'",
    "img-src 'self' data: blob:",
    "worker-src 'self'",
    "connect-src 'self'",
    "frame-ancestors 'none'",
    "base-uri 'none'",
    "form-action 'none'",
    "object-src 'none'",
  ].join('; '),
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer',
  'cross-origin-opener-policy': 'same-origin',
  'cross-origin-resource-policy': 'same-origin',
};

/**
 * Why a request is refused before anything is looked up; null where it is not.
 *
 * The machine's own address is no protection by itself: any page that the user has open can send requests to it. So a
 * request must name this server as its host, which a foreign name that was made to point here does not (RFC 9110,
 * 15.5.20), and what could change something must come from the page itself.
 */
export function refusal({ method, target, headers, hosts }: Asked, port: number): Answer | null {
  const { origin, 'sec-fetch-site': site } = headers;
  // RFC 9112, 3.2
  if (hosts.length > 1) return words(400, 'A request goes to one host.');
  const [host = ''] = hosts;
  // the usual port of the web is left out of a host (RFC 9110, 4.2.1)
  const suffix = port === 80 ? '' : `:${port}`;
  if (host !== `127.0.0.1${suffix}` && host !== `localhost${suffix}`)
    return words(421, `This server answers to http://127.0.0.1:${port}/ alone.`);
  if (!target.startsWith('/')) return words(404, 'There is nothing here.');
  if (method === 'GET' || method === 'HEAD') return null;
  const isOwn = origin === undefined ? site === 'same-origin' : origin === `http://${host}`;
  return isOwn ? null : words(403, 'Only the page itself may change anything here.');
}

/** Whether a browser says that another site asked for this. */
export const isForeign = ({ headers }: Asked): boolean =>
  !['none', 'same-origin'].includes(String(headers['sec-fetch-site'] ?? 'none'));

/** An answer in a line of words. */
export const words = (status: number, text: string, headers: Readonly<Record<string, string>> = {}): Answer => ({
  status,
  headers: { 'content-type': 'text/plain; charset=utf-8', 'cache-control': 'no-store', ...headers },
  body: Buffer.from(`${text}\n`),
});

/** What to do instead of a method that a thing has not got (RFC 9110, 15.5.6). */
export const notAllowed = (...methods: readonly string[]): Answer =>
  words(405, `This can be asked for by ${methods.join(', ')}.`, { allow: methods.join(', ') });

/** Whether one of the entity tags of a condition is this one, by the weak comparison (RFC 9110, 8.8.3.2 and 13.1.2). */
export const namesTag = (condition: string | undefined, tag: string): boolean =>
  condition !== undefined &&
  (condition.trim() === '*' || condition.split(',').some((one) => one.trim().replace(/^W\//, '') === tag));
