import { Resvg } from '@resvg/resvg-js';
import { afterEach, describe, expect, test } from 'vitest';
import { pageSvg } from '../../src/files/page-svg.js';
import { pagePdf } from '../../src/files/pdf.js';
import { samplePage, shapes, words } from './page-sample.js';
import { drawPdf, fonts, readPdf } from './read-pdf.js';

const second = { ...samplePage, description: 'The same on less paper.', width: 98, height: 138.5 };
const bytes = pagePdf([samplePage, second], fonts, { title: 'Größe <5x7> & "friends"' });
const read = await readPdf(bytes);

describe('a document, read by another program', () => {
  test('says what it is called, what it shows and in which language', () => {
    expect(read.info).toMatchObject({
      Title: 'Größe <5x7> & "friends"',
      Subject: 'One of each mark. The same on less paper.',
      Language: 'en',
    });
    // no clock: a date has to be there, and it says nothing
    expect(read.info).toMatchObject({ CreationDate: 'D:19700101000000Z', ModDate: 'D:19700101000000Z' });
    expect(read.preferences).toMatchObject({ DisplayDocTitle: true });
  });

  // Extensible metadata are XML (ISO 16684-1), in which & and < have to be escaped; the library does not
  test('says it once, and never in XML that a title would break', () =>
    expect(Buffer.from(bytes).toString('latin1')).not.toMatch(/<\?xpacket|<rdf:/));

  test('has a page for each drawing, of its true size', () => {
    // the writer of the file prints six decimals of a point
    const sizes = read.pages.map(({ width, height }) => [width, height]);
    expect(sizes).toEqual([
      [expect.closeTo(100, 5), expect.closeTo(140, 5)],
      [expect.closeTo(98, 5), expect.closeTo(138.5, 5)],
    ]);
  });

  test.each(words)('has words that can be read and searched, where they were put: $text', (mark) => {
    for (const { lines } of read.pages) {
      const line = lines.find(({ text }) => text === mark.text);
      if (line === undefined) throw new Error(`not found: ${lines.map(({ text }) => text).join(' | ')}`);
      expect(line.size).toBeCloseTo(mark.size, 4);
      expect(line.turned).toBeCloseTo(mark.turned ?? 0, 6);
      const share = { start: 0, middle: 0.5, end: 1 }[mark.anchor];
      // matrices are in the file with six decimals, which a turn puts before lengths of hundreds;
      // kerning is in the file in ten thousandths of the size
      expect(line.x + share * line.width * Math.cos(line.turned)).toBeCloseTo(mark.at.x, 2);
      expect(line.y).toBeCloseTo(mark.at.y, 3);
    }
  });

  test('has all its letters in it, of two faces, and only those that are used', () => {
    const found = new Map(read.pages.flatMap(({ lines }) => lines.map(({ font }) => [font.name, font.embedded])));
    expect([...found].sort()).toEqual([
      [expect.stringMatching(/^[A-Z]{6}\+DejaVuSansCondensed$/), true],
      [expect.stringMatching(/^[A-Z]{6}\+DejaVuSansCondensed-Bold$/), true],
    ]);
    const named = [
      ...Buffer.from(bytes)
        .toString('latin1')
        .matchAll(/\/BaseFont \/(\S+)/g),
    ].map(([, name]) => name);
    expect(new Set(named)).toEqual(new Set(found.keys()));
    expect(bytes.length).toBeLessThan(fonts.regular.length / 10);
  });
});

describe('the same drawing', () => {
  const zone = process.env.TZ;
  afterEach(() => {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  });

  test('gives the same bytes, also in another time zone', () => {
    const offsets = ['America/St_Johns', 'Pacific/Auckland'].map((name) => {
      process.env.TZ = name;
      const again = pagePdf([samplePage, second], fonts, { title: 'Größe <5x7> & "friends"' });
      expect(Buffer.compare(again, bytes)).toBe(0);
      return new Date(0).getTimezoneOffset();
    });
    expect(offsets[0]).not.toBe(offsets[1]);
  });

  test('looks the same as a picture and as a document, drawn by two other programs', async () => {
    const plain = { ...samplePage, marks: shapes };
    const scale = 4;
    const document = await drawPdf(pagePdf([plain], fonts, { title: 'shapes' }), scale);
    // the library copies the pixels each time that they are asked for
    const { width, height, pixels } = new Resvg(pageSvg(plain), {
      fitTo: { mode: 'width', value: 100 * scale },
    }).render();
    expect([document.width, document.height]).toEqual([width, height]);
    let different = 0;
    let inked = 0;
    for (let i = 0; i < pixels.length; i += 4) {
      const channels = [0, 1, 2].map((k) => [document.pixels[i + k] ?? 0, pixels[i + k] ?? 0] as const);
      if (channels.some(([, b]) => b < 200)) inked++;
      // two programs shade the edges of a line a little differently
      if (channels.some(([a, b]) => Math.abs(a - b) > 48)) different++;
    }
    expect(inked).toBeGreaterThan(10_000);
    expect(different).toBeLessThan(0.001 * width * height);
  });

  test('a mark that cannot be seen is a mistake of ours', () => {
    const unseen = { ...samplePage, marks: [{ kind: 'circle', centre: { x: 5, y: 5 }, radius: 2 }] } as const;
    expect(() => pagePdf([unseen], fonts, { title: 'nothing' })).toThrow('cannot be seen');
  });
});
