import { mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { request } from 'node:http';
import { connect, createServer } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { describe, expect, onTestFinished, test } from 'vitest';
import { USUAL_PORT } from '../../src/cli/serve.js';
import { servedPage } from '../../src/cli/served-page.js';
import { heronDesign, spoiled } from './heron-design.js';
import { runHere } from './run-here.js';
import { scratch, snapshot, tailboard } from './scratch.js';
import { type Serving, serving } from './serving.js';

interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly body: Buffer;
}

interface Sent {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string | Buffer;
}

/** One request as it is written here: no path is tidied up, no header added but a host where none is given. */
const ask = (
  { port }: Pick<Serving, 'port'>,
  path: string,
  { method = 'GET', headers, body }: Sent = {},
): Promise<Reply> =>
  new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, agent: false, headers: { ...headers } }, (reply) => {
      const pieces: Buffer[] = [];
      reply.on('data', (piece) => pieces.push(piece));
      reply.on('end', () =>
        resolve({ status: reply.statusCode ?? 0, headers: reply.headers, body: Buffer.concat(pieces) }),
      );
    });
    sent.on('error', reject);
    sent.end(body);
  });

/** What stands on the wire is sent as it is; the first line of the answer comes back. */
const raw = ({ port }: Pick<Serving, 'port'>, text: string): Promise<string> =>
  new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(text));
    let said = '';
    socket.setEncoding('latin1').on('data', (more) => {
      said += more;
      if (said.includes('\r\n')) socket.end();
    });
    socket.on('close', () => resolve(said.split('\r\n')[0] ?? ''));
    socket.on('error', reject);
  });

/** The same, until the server hangs up. */
const all = ({ port }: Pick<Serving, 'port'>, text: string): Promise<string> =>
  new Promise((resolve, reject) => {
    let said = '';
    const socket = connect(port, '127.0.0.1', () => socket.write(text)).setEncoding('latin1');
    socket.on('data', (more) => {
      said += more;
    });
    socket.on('end', () => resolve(said)).on('error', reject);
  });

const own = ({ port }: Pick<Serving, 'port'>) => ({
  origin: `http://127.0.0.1:${port}`,
  'content-type': 'application/yaml',
});

async function servingHeron(text = heronDesign) {
  const folder = scratch();
  const file = join(folder, 'heron.yaml');
  writeFileSync(file, text);
  const server = await serving(folder, 'heron.yaml');
  const tag = String((await ask(server, '/design')).headers.etag);
  return { folder, file, server, tag };
}

describe('the page and the design', () => {
  test('are given to their own address, with the name of the design in the head of the page', async () => {
    const { server } = await servingHeron();
    expect(server.url).toBe(`http://127.0.0.1:${server.port}/`);
    const page = await ask(server, '/');
    expect(page.status).toBe(200);
    expect(page.headers['content-type']).toBe('text/html; charset=utf-8');
    expect(page.body.toString()).toContain('<meta name="tailboard-served" content="heron.yaml" />');
    const design = await ask(server, '/design');
    expect(design.body.toString()).toBe(heronDesign);
    expect(design.headers).toMatchObject({ 'cache-control': 'no-store', 'content-type': 'application/yaml' });
    expect((await ask(server, '/design', { headers: { host: `localhost:${server.port}` } })).status).toBe(200);
  });

  test('without a design the page opens, and there is none to read or to write', async () => {
    const server = await serving(scratch());
    expect((await ask(server, '/')).body.toString()).toContain('<meta name="tailboard-served" content="" />');
    expect((await ask(server, '/design')).status).toBe(404);
    expect((await ask(server, '/design', { method: 'PUT', headers: own(server), body: 'x' })).status).toBe(404);
  });

  test('a name with signs of HTML in it stays a name', async () => {
    const folder = scratch();
    const name = '"><script>1<!--&.yaml';
    writeFileSync(join(folder, name), heronDesign);
    const server = await serving(folder, name);
    const html = (await ask(server, '/')).body.toString();
    expect(html).not.toContain('<script>1');
    expect(html).toContain('content="&#34;&#62;&#60;script&#62;1&#60;!--&#38;.yaml"');
  });

  test('a design that is none is served all the same: the page shows what is wrong', async () => {
    const { server } = await servingHeron('name: [');
    expect((await ask(server, '/design')).body.toString()).toBe('name: [');
    expect(JSON.parse((await ask(server, '/remnants')).body.toString())).toEqual({});
  });

  test('what was got already is not sent again, and packed only for those who unpack it', async () => {
    const { server, tag } = await servingHeron();
    // RFC 9110, 13.1.2 and 15.4.5, from memory
    const same = await ask(server, '/design', { headers: { 'if-none-match': `W/"other", ${tag}` } });
    expect({ status: same.status, length: same.body.length }).toEqual({ status: 304, length: 0 });
    const plain = await ask(server, '/main.js');
    const packed = await ask(server, '/main.js', { headers: { 'accept-encoding': 'br, gzip' } });
    const refused = await ask(server, '/main.js', { headers: { 'accept-encoding': 'gzip;q=0, identity' } });
    expect(plain.headers['content-encoding']).toBeUndefined();
    expect(refused.headers['content-encoding']).toBeUndefined();
    expect(packed.headers).toMatchObject({ 'content-encoding': 'gzip', vary: 'accept-encoding' });
    expect(gunzipSync(packed.body).equals(plain.body)).toBe(true);
    expect(packed.headers.etag).not.toBe(plain.headers.etag);
    const again = { 'accept-encoding': 'gzip', 'if-none-match': String(packed.headers.etag) };
    expect((await ask(server, '/main.js', { headers: again })).status).toBe(304);
    const head = await ask(server, '/main.js', { method: 'HEAD' });
    expect({ status: head.status, length: head.body.length }).toEqual({ status: 200, length: 0 });
    expect(head.headers['content-length']).toBe(String(plain.body.length));
  });

  test('every answer carries what keeps other pages out', async () => {
    const { server } = await servingHeron();
    for (const path of ['/', '/main.js', '/design', '/nowhere']) {
      const { headers } = await ask(server, path);
      expect(headers).toMatchObject({
        'content-security-policy':
          "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data: blob:; worker-src 'self'; connect-src 'self'; frame-ancestors 'none'; base-uri 'none'; form-action 'none'; object-src 'none'",
        'x-content-type-options': 'nosniff',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
      });
      expect(headers['access-control-allow-origin']).toBeUndefined();
    }
  });
});

describe('what others send is refused, and nothing is written', () => {
  let file: string;
  let server: Serving;
  let tag: string;
  const servedOnce = async () => {
    ({ file, server, tag } = await servingHeron());
  };

  test('a foreign name that was made to point here', async () => {
    await servedOnce();
    const hosts = [
      'evil.example',
      `evil.example:${server.port}`,
      '127.0.0.1',
      `127.0.0.1:${server.port + 1}`,
      `127.0.0.1:${server.port}.evil.example`,
      `[::1]:${server.port}`,
      `LOCALHOST.evil.example:${server.port}`,
    ];
    for (const host of hosts) expect((await ask(server, '/design', { headers: { host } })).status, host).toBe(421);
    expect(await raw(server, 'GET /design HTTP/1.0\r\n\r\n')).toContain(' 421 ');
    expect(await raw(server, 'GET /design HTTP/1.1\r\n\r\n')).toContain(' 400 ');
  });

  test('paths that lead out', async () => {
    await servedOnce();
    const paths = [
      '/../heron.yaml',
      '/../../package.json',
      '/..%2fpackage.json',
      '/%2e%2e/%2e%2e/package.json',
      '/%2e%2e%2f%2e%2e%2fpackage.json',
      '/..\\..\\package.json',
      '/..%5c..%5cpackage.json',
      '/main.js%00.html',
      '/./main.js',
      '//main.js',
      '/%6dain.js',
      '/main.js/',
      '/main.js/../../../package.json',
      '/%',
      '/%ff',
      '/c:/windows/win.ini',
      '/etc/passwd',
      `/${file}`,
      `/remnants/${file}`,
      '/design/../package.json',
      '/design/',
      '/remnants?name=../../etc/passwd',
    ];
    for (const path of paths) expect((await ask(server, path)).status, path).toBe(404);
    for (const target of ['http://evil.example/design', '*', 'file:///etc/passwd'])
      expect(await raw(server, `GET ${target} HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\n\r\n`), target).toMatch(
        / 40[04] /,
      );
    expect(await raw(server, `GET /main.js\0.html HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\n\r\n`)).toContain(
      ' 400 ',
    );
  });

  test('writing from another site, and reading the design from there', async () => {
    await servedOnce();
    const type = { 'content-type': 'application/yaml', 'if-match': tag };
    const foreign: Readonly<Record<string, string>>[] = [
      {},
      { origin: 'http://evil.example' },
      { origin: 'null' },
      { origin: `http://127.0.0.1:${server.port + 1}` },
      { origin: `https://127.0.0.1:${server.port}` },
      { origin: `http://localhost:${server.port}` },
      { origin: 'http://evil.example', 'sec-fetch-site': 'same-origin' },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
    ];
    for (const headers of foreign)
      for (const method of ['PUT', 'POST', 'DELETE', 'PATCH', 'OPTIONS']) {
        const { status } = await ask(server, '/design', {
          method,
          headers: { ...type, ...headers },
          body: 'name: Owl',
        });
        expect(status, `${method} ${JSON.stringify(headers)}`).toBe(403);
      }
    for (const site of ['cross-site', 'same-site'])
      expect((await ask(server, '/design', { headers: { 'sec-fetch-site': site } })).status).toBe(403);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('other methods, other kinds of content, and saving without saying what is replaced', async () => {
    await servedOnce();
    for (const [method, path, allow] of [
      ['POST', '/design', 'GET, HEAD, PUT'],
      ['DELETE', '/design', 'GET, HEAD, PUT'],
      ['PUT', '/remnants', 'GET, HEAD'],
      ['PUT', '/main.js', 'GET, HEAD'],
      ['POST', '/', 'GET, HEAD'],
    ] as const) {
      const reply = await ask(server, path, { method, headers: { ...own(server), 'if-match': tag } });
      expect({ status: reply.status, allow: reply.headers.allow }, `${method} ${path}`).toEqual({ status: 405, allow });
    }
    const put = (headers: Readonly<Record<string, string>>) =>
      ask(server, '/design', { method: 'PUT', headers: { origin: own(server).origin, ...headers }, body: 'name: Owl' });
    for (const kind of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data', 'application/yamlx'])
      expect((await put({ 'content-type': kind, 'if-match': tag })).status, kind).toBe(415);
    expect((await put({ 'if-match': tag })).status).toBe(415);
    expect((await put({ 'content-type': 'application/yaml' })).status).toBe(428);
    expect((await put({ 'content-type': 'application/yaml', 'if-match': '*' })).status).toBe(428);
    expect((await put({ 'content-type': 'application/yaml', 'if-match': `W/${tag}` })).status).toBe(412);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('more than a design holds, whether its length is told or not', async () => {
    await servedOnce();
    const body = Buffer.alloc(256 * 1024 + 1, '#');
    const headers = { ...own(server), 'if-match': tag };
    expect((await ask(server, '/design', { method: 'PUT', headers, body })).status).toBe(413);
    const unknown = { ...headers, 'transfer-encoding': 'chunked' };
    expect((await ask(server, '/design', { method: 'PUT', headers: unknown, body })).status).toBe(413);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
    // the largest that is let through is still read back
    const largest = Buffer.alloc(256 * 1024, '#');
    expect((await ask(server, '/design', { method: 'PUT', headers, body: largest })).status).toBe(204);
    expect((await ask(server, '/design')).body.equals(largest)).toBe(true);
  });

  // RFC 9112, 2.2 to 3.2, 5, 6.1 and 6.3; the length of a head is Node's own limit of 16 KiB
  test('what is no request, written by hand', async () => {
    await servedOnce();
    const host = `Host: 127.0.0.1:${server.port}\r\n`;
    const save = `PUT /design HTTP/1.1\r\n${host}Origin: http://127.0.0.1:${server.port}\r\nContent-Type: application/yaml\r\nIf-Match: ${tag}\r\n`;
    const sent: Readonly<Record<string, readonly [text: string, status: string]>> = {
      'not a word of it': ['\x16\x03\x01\x02\0\x01\0\x01', '400'],
      'another version': [`GET /design HTTP/9.9\r\n${host}\r\n`, '400'],
      'a method of its own': [`SAVE /design HTTP/1.1\r\n${host}\r\n`, '400'],
      'a way through to elsewhere': [`CONNECT evil.example:443 HTTP/1.1\r\n${host}\r\n`, ''],
      'two hosts': [`GET /design HTTP/1.1\r\n${host}Host: evil.example\r\n\r\n`, '400'],
      'a second host behind a stray line end': [
        `GET /design HTTP/1.1\r\n${host.trim()}\nHost: evil.example\r\n\r\n`,
        '400',
      ],
      'a space in a name': [`GET /design HTTP/1.1\r\nHost : 127.0.0.1:${server.port}\r\n\r\n`, '400'],
      'a host that a line goes on from': [
        `GET /design HTTP/1.1\r\nHost: evil.example\r\n 127.0.0.1:${server.port}\r\n\r\n`,
        '400',
      ],
      'a head without end': [`GET /design HTTP/1.1\r\n${host}X: ${'x'.repeat(17 * 1024)}\r\n\r\n`, '431'],
      'two lengths': [`${save}Content-Length: 9\r\nContent-Length: 3\r\n\r\nname: Owl`, '400'],
      'a length and pieces': [`${save}Content-Length: 9\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n`, '400'],
      'a length below nothing': [`${save}Content-Length: -1\r\n\r\n`, '400'],
      'pieces of no length': [`${save}Transfer-Encoding: chunked\r\n\r\nowl\r\nname: Owl\r\n0\r\n\r\n`, '400'],
      'another protocol, which is not spoken here': [
        `GET /design HTTP/1.1\r\n${host}Upgrade: h2c\r\nConnection: Upgrade\r\n\r\n`,
        '200',
      ],
    };
    for (const [what, [text, status]] of Object.entries(sent))
      expect((await raw(server, text)).split(' ')[1] ?? '', what).toBe(status);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('a foreign save in the shadow of a reading of our own', async () => {
    await servedOnce();
    const host = `Host: 127.0.0.1:${server.port}\r\n`;
    const both = [
      `GET /design HTTP/1.1\r\n${host}\r\n`,
      `PUT /design HTTP/1.1\r\n${host}Origin: http://evil.example\r\nContent-Type: application/yaml\r\nIf-Match: ${tag}\r\nContent-Length: 9\r\nConnection: close\r\n\r\nname: Owl`,
    ].join('');
    const said = await all(server, both);
    expect(said.match(/^HTTP\/1\.1 \d+/gm)).toEqual(['HTTP/1.1 200', 'HTTP/1.1 403']);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('a save that is broken off leaves the file, and one that waits keeps nobody else out', async () => {
    await servedOnce();
    const head = `PUT /design HTTP/1.1\r\nHost: 127.0.0.1:${server.port}\r\nOrigin: http://127.0.0.1:${server.port}\r\nContent-Type: application/yaml\r\nIf-Match: ${tag}\r\nContent-Length: 900\r\n\r\nname: Owl`;
    const waiting = connect(server.port, '127.0.0.1', () => waiting.write(head));
    onTestFinished(() => void waiting.destroy());
    await new Promise((resolve) => waiting.on('ready', resolve));
    expect((await ask(server, '/design')).body.toString()).toBe(heronDesign);
    await new Promise((resolve) => waiting.on('close', resolve).destroy());
    expect((await ask(server, '/design')).body.toString()).toBe(heronDesign);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('other addresses of the machine are closed', async () => {
    await servedOnce();
    const others = Object.values(networkInterfaces())
      .flatMap((cards) => cards ?? [])
      .filter(({ family, internal }) => family === 'IPv4' && !internal)
      .map(({ address }) => address);
    for (const address of [...others, '127.0.0.2']) {
      const outcome = await new Promise((resolve) => {
        const socket = connect(server.port, address, () => resolve('open')).on('error', () => resolve('closed'));
        onTestFinished(() => void socket.destroy());
      });
      expect(outcome, address).toBe('closed');
    }
  });
});

describe('saving', () => {
  test('puts what was sent into the file, byte for byte, and nothing else into the folder', async () => {
    const { folder, server, tag } = await servingHeron();
    const text = `\ufeff${spoiled('210 mm\n', '211 mm # as read\r\n')}`;
    const saved = await ask(server, '/design', {
      method: 'PUT',
      headers: { ...own(server), 'if-match': tag },
      body: text,
    });
    expect(saved.status).toBe(204);
    expect(snapshot(folder)).toEqual({ 'heron.yaml': Buffer.from(text).toString('latin1') });
    expect((await ask(server, '/design')).headers.etag).toBe(saved.headers.etag);
    expect(saved.headers.etag).not.toBe(tag);
  });

  test('a browser that sends no origin but says that the page itself asks is let in', async () => {
    const { server, tag } = await servingHeron();
    const headers = { 'content-type': 'application/yaml', 'sec-fetch-site': 'same-origin', 'if-match': tag };
    expect((await ask(server, '/design', { method: 'PUT', headers, body: 'name: Owl' })).status).toBe(204);
  });

  test('never over what somebody else wrote meanwhile: what stands there now comes back', async () => {
    const { file, server, tag } = await servingHeron();
    const theirs = spoiled('Heron', 'Owl');
    writeFileSync(file, theirs);
    const refused = await ask(server, '/design', {
      method: 'PUT',
      headers: { ...own(server), 'if-match': tag },
      body: 'x',
    });
    // RFC 9110, 13.1.1 and 15.5.13, from memory
    expect(refused.status).toBe(412);
    expect(refused.body.toString()).toBe(theirs);
    expect(readFileSync(file, 'utf8')).toBe(theirs);
    const knowing = { ...own(server), 'if-match': String(refused.headers.etag) };
    expect((await ask(server, '/design', { method: 'PUT', headers: knowing, body: heronDesign })).status).toBe(204);
    expect(readFileSync(file, 'utf8')).toBe(heronDesign);
  });

  test('where the file is gone it says so and makes none', async () => {
    const { folder, file, server, tag } = await servingHeron();
    rmSync(file);
    const reply = await ask(server, '/design', {
      method: 'PUT',
      headers: { ...own(server), 'if-match': tag },
      body: 'x',
    });
    expect(reply.status).toBe(404);
    expect(reply.body.toString()).toContain('no such file');
    expect(snapshot(folder)).toEqual({});
  });

  test('a link keeps leading to the file that it leads to', async () => {
    const folder = scratch();
    const elsewhere = scratch();
    writeFileSync(join(elsewhere, 'kept.yaml'), heronDesign);
    symlinkSync(join(elsewhere, 'kept.yaml'), join(folder, 'heron.yaml'));
    const server = await serving(folder, 'heron.yaml');
    const tag = String((await ask(server, '/design')).headers.etag);
    await ask(server, '/design', { method: 'PUT', headers: { ...own(server), 'if-match': tag }, body: 'name: Owl' });
    expect(readFileSync(join(elsewhere, 'kept.yaml'), 'utf8')).toBe('name: Owl');
    expect(snapshot(folder)).toEqual({ 'heron.yaml': '(link)' });
  });
});

describe('remnants', () => {
  const named = (...files: readonly string[]) =>
    `${heronDesign}\nstock:\n${files.map((file) => `  - { remnant: ${JSON.stringify(file)} }`).join('\n')}\n`;

  test('come with the design that names them, from inside its folder alone', async () => {
    const outside = scratch();
    writeFileSync(join(outside, 'secret.json'), '{"secret":true}');
    const folder = scratch();
    mkdirSync(join(folder, 'rack'));
    writeFileSync(join(folder, 'rack', 'a.json'), '{"a":1}');
    writeFileSync(join(folder, 'unnamed.json'), '{"unnamed":true}');
    writeFileSync(join(folder, 'large.json'), ' '.repeat(1024 * 1024 + 1));
    symlinkSync(join(outside, 'secret.json'), join(folder, 'rack', 'link.json'));
    symlinkSync(outside, join(folder, 'away'));
    const out = `../${outside.split('/').at(-1)}/secret.json`;
    writeFileSync(
      join(folder, 'heron.yaml'),
      named('rack/a.json', 'rack/link.json', 'away/secret.json', out, 'missing.json', 'rack', 'large.json'),
    );
    const server = await serving(folder, 'heron.yaml');
    const reply = await ask(server, '/remnants');
    expect(reply.status).toBe(200);
    expect(reply.body.toString()).not.toContain('secret":');
    expect(JSON.parse(reply.body.toString())).toEqual({
      'rack/a.json': { text: '{"a":1}' },
      'rack/link.json': { why: expect.stringContaining('outside') },
      'away/secret.json': { why: expect.stringContaining('outside') },
      [out]: { why: expect.stringContaining('outside') },
      'missing.json': { why: expect.stringContaining('no such file') },
      rack: { why: expect.stringContaining('folder') },
      'large.json': { why: expect.stringContaining('1024 KB') },
    });
  });
});

describe('what cannot be served', () => {
  test.each([
    { what: 'a design that is missing', words: ['no-such.yaml'], code: 2, says: 'there is no such file' },
    { what: 'a folder', words: ['.'], code: 2, says: 'this is a folder' },
    { what: 'no file at all', words: ['/dev/zero'], code: 2, says: 'no ordinary file' },
    { what: 'a port that is a word', words: ['--port', 'http'], code: 2, says: '"http" is no port' },
    { what: 'a port beyond the last', words: ['--port', '65536'], code: 2, says: '"65536" is no port' },
    { what: 'a port below the first', words: ['--port=-1'], code: 2, says: '"-1" is no port' },
  ])('$what', async ({ words, code, says }) => {
    const ended = await tailboard(['serve', ...words], scratch());
    expect(ended).toMatchObject({ code, out: '' });
    expect(ended.err).toContain(says);
    expect(ended.err.trim().split('\n')).toHaveLength(1);
  });

  test('on a port that is taken, it says which other to give', async () => {
    const taken = createServer();
    onTestFinished(() => void taken.close());
    await new Promise<void>((resolve) => taken.listen(0, '127.0.0.1', resolve));
    const { port } = taken.address() as { readonly port: number };
    const { code, out, err } = await tailboard(['serve', '--port', String(port)], scratch());
    expect({ code, out }).toEqual({ code: 3, out: '' });
    expect(err).toContain(`Port ${port} is taken`);
    expect(err).toMatch(/--port \d+/);
    expect(err.trim().split('\n')).toHaveLength(1);
  });

  test('where the page was not compiled, it says so', async () => {
    expect(servedPage(join(scratch(), 'no-page'), '')).toBeNull();
    expect(servedPage(scratch(), '')).toBeNull();
  });
});

test.each([
  ['SIGINT', 130],
  ['SIGTERM', 143],
] as const)('%s ends it with the code that shells expect', async (name, code) => {
  const server = await serving(scratch());
  // a browser that keeps its connection must not keep the program
  const socket = connect(server.port, '127.0.0.1');
  onTestFinished(() => void socket.destroy());
  await new Promise((resolve) => socket.once('connect', resolve));
  server.signal(name);
  expect(await server.ended).toMatchObject({ code, out: `${server.url}\n` });
});

test('the usual port stands in the help', async () => {
  expect((await runHere('serve', '--help')).out).toContain(`(default: ${USUAL_PORT})`);
});
