import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { machineStop, systemCode } from './machine-error.js';
import { LARGEST_DESIGN } from './read-design-file.js';
import { readOrdinary, servedDesign } from './served-design.js';
import { servedPage } from './served-page.js';
import { type Answer, type Asked, GUARDING_HEADERS, refusal, words } from './server-guard.js';
import { EXIT, Stop } from './stop.js';
import type { Terminal } from './terminal.js';

/** Any free number would do; a fixed one lets the browser remember the address. */
export const USUAL_PORT = 8457;

/** Where compiling leaves the page, seen from the source and from what is shipped. */
const PAGE = fileURLToPath(new URL('../../dist/page/', import.meta.url));

/** Serves the page on this machine, to this machine, until it is broken off. */
export async function serve(
  file: string | undefined,
  { port = String(USUAL_PORT) }: { readonly port?: string },
  terminal: Terminal,
): Promise<never> {
  if (!/^\d{1,5}$/.test(port) || Number(port) > 65535)
    throw new Stop(EXIT.wrongCall, `--port: "${port}" is no port. Write a number such as ${USUAL_PORT}.`);
  if (file !== undefined) readOrdinary(file, { noun: 'design file', largest: LARGEST_DESIGN });
  const page = servedPage(PAGE, file === undefined ? '' : basename(file));
  if (page === null)
    throw new Stop(
      EXIT.machineFailed,
      `${PAGE}: the page is not there. In a copy of the source, npm run compile makes it.`,
    );
  const design = file === undefined ? null : servedDesign(file);

  const server = createServer(async (request, response) => {
    const asked = askedIn(request);
    try {
      const answer = refusal(asked, portOf(server)) ?? (await design?.(asked, () => bodyOf(request))) ?? page(asked);
      give(response, answer);
    } catch (error) {
      give(response, words(500, error instanceof Error ? error.message : String(error)));
    }
  });
  await listening(server, Number(port));
  await terminal.err(`${file === undefined ? 'No design is served' : `Serving ${file}`}; Ctrl-C ends it.\n`);
  await terminal.out(`http://127.0.0.1:${portOf(server)}/\n`);
  // the process ends by a signal alone
  return new Promise(() => {});
}

const askedIn = ({ method = '', url = '', headers, headersDistinct }: IncomingMessage): Asked => ({
  method,
  target: url,
  headers,
  hosts: headersDistinct.host ?? [],
});

function give(response: ServerResponse, { status, headers, body }: Answer): void {
  response.writeHead(status, {
    ...GUARDING_HEADERS,
    ...headers,
    ...(status === 204 || status === 304 ? {} : { 'content-length': String(body.length) }),
  });
  response.end(body);
}

/** What was sent, or null where it is more than a design file holds: the rest of it is then left unread. */
async function bodyOf(request: IncomingMessage): Promise<Uint8Array | null> {
  if (Number(request.headers['content-length'] ?? 0) > LARGEST_DESIGN) return null;
  const pieces: Uint8Array[] = [];
  let length = 0;
  for await (const piece of request.iterator({ destroyOnReturn: false })) {
    length += piece.length;
    if (length > LARGEST_DESIGN) return null;
    pieces.push(piece);
  }
  return Buffer.concat(pieces);
}

const listening = (server: Server, port: number): Promise<void> =>
  new Promise((resolve, reject) => {
    server.once('error', (error) => {
      const code = systemCode(error);
      if (code === 'EADDRINUSE')
        reject(
          new Stop(
            EXIT.machineFailed,
            `Port ${port} is taken, perhaps by another tailboard serve. Give another one: --port ${port < 65535 ? port + 1 : USUAL_PORT}.`,
          ),
        );
      else if (code === 'EACCES')
        reject(
          new Stop(EXIT.machineFailed, `Port ${port} may not be opened. Give one above 1023: --port ${USUAL_PORT}.`),
        );
      else reject(machineStop(`Port ${port}`, error));
    });
    server.listen(port, '127.0.0.1', resolve);
  });

function portOf(server: Server): number {
  const address = server.address();
  return typeof address === 'object' && address !== null ? address.port : 0;
}
