import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { extname, join, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import { type Answer, type Asked, namesTag, notAllowed, words } from './server-guard.js';

interface Kind {
  readonly type: string;
  readonly shrinks: boolean;
}

const KINDS: Readonly<Record<string, Kind>> = {
  '.html': { type: 'text/html; charset=utf-8', shrinks: true },
  '.js': { type: 'text/javascript; charset=utf-8', shrinks: true },
  '.css': { type: 'text/css; charset=utf-8', shrinks: true },
  '.json': { type: 'application/json', shrinks: true },
  '.yaml': { type: 'application/yaml', shrinks: true },
  '.txt': { type: 'text/plain; charset=utf-8', shrinks: true },
  '.wasm': { type: 'application/wasm', shrinks: true },
  '.ttf': { type: 'font/ttf', shrinks: true },
  '.svg': { type: 'image/svg+xml', shrinks: true },
};
const OTHER: Kind = { type: 'application/octet-stream', shrinks: false };

interface Held {
  readonly kind: Kind;
  readonly plain: Uint8Array;
  /** The same packed; null where that is not worth the while. */
  readonly packed: Uint8Array | null;
  readonly hash: string;
}

/**
 * The page that a program serves is not kept for later, and where one was kept under this address, perhaps from a server
 * that was here before, its worker would go on answering: it is told to stand down by the script that it looks for.
 */
const STANDS_IN: ReadonlyMap<string, string> = new Map([['offline-worker.js', 'stand-down-worker.js']]);

/** Answers what asks for a file of the page. */
export type ServedPage = (asked: Asked) => Answer;

/**
 * The files of a folder, under their own names and no others: the list is made once, and a path that is not on it, however
 * it is spelt, is not there. Null where the folder holds no page.
 *
 * @param design name of the design that is served with it, empty where there is none
 */
export function servedPage(folder: string, design: string): ServedPage | null {
  const names = namesIn(folder);
  if (!names.has('index.html')) return null;
  const held = new Map<string, Held>();
  const hold = (name: string): Held => {
    const before = held.get(name);
    if (before !== undefined) return before;
    const bytes = readFileSync(join(folder, STANDS_IN.get(name) ?? name));
    const now = heldFile(name, name === 'index.html' ? tellServed(bytes.toString('utf8'), design) : bytes);
    held.set(name, now);
    return now;
  };
  return ({ method, target, headers }) => {
    const path = target.replace(/\?.*$/s, '').slice(1);
    const name = path === '' ? 'index.html' : path;
    if (!names.has(name)) return words(404, 'There is nothing here.');
    if (method !== 'GET' && method !== 'HEAD') return notAllowed('GET', 'HEAD');
    const { kind, plain, packed, hash } = hold(name);
    const body = packed !== null && takesGzip(headers['accept-encoding']) ? packed : plain;
    // the two are different bytes, so they have different tags (RFC 9110, 8.8.3.3)
    const tag = body === packed ? `"${hash}-gzip"` : `"${hash}"`;
    // asked for anew each time and answered in a line where nothing changed: the next program serves another page here
    const common = { 'cache-control': 'no-cache', etag: tag, ...(kind.shrinks ? { vary: 'accept-encoding' } : {}) };
    if (namesTag(headers['if-none-match'], tag)) return { status: 304, headers: common, body: new Uint8Array() };
    const encoding = body === packed ? { 'content-encoding': 'gzip' } : {};
    return { status: 200, headers: { ...common, ...encoding, 'content-type': kind.type }, body };
  };
}

function namesIn(folder: string): ReadonlySet<string> {
  try {
    const entries = readdirSync(folder, { recursive: true, withFileTypes: true });
    return new Set(
      entries
        .filter((entry) => entry.isFile())
        .map(({ parentPath, name }) => join(parentPath, name).slice(join(folder, sep).length).replaceAll(sep, '/')),
    );
  } catch {
    return new Set();
  }
}

function heldFile(name: string, plain: Uint8Array): Held {
  const kind = KINDS[extname(name)] ?? OTHER;
  return {
    kind,
    plain,
    packed: kind.shrinks ? gzipSync(plain) : null,
    hash: createHash('sha256').update(plain).digest('base64url'),
  };
}

/** The page learns from its own head that a program serves it, and which design. */
const tellServed = (html: string, design: string): Uint8Array =>
  Buffer.from(
    html.replace('<head>', () => `<head>\n    <meta name="tailboard-served" content="${attribute(design)}" />`),
  );

const attribute = (text: string): string => text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);

/** RFC 9110, 12.5.3: what is named with a weight of 0 is not wanted. */
const takesGzip = (accepted: string | readonly string[] | undefined): boolean =>
  String(accepted ?? '')
    .split(',')
    .some((one) => /^\s*gzip\s*(?:;\s*q=(?!0(?:\.0*)?\s*$).*)?$/i.test(one));
