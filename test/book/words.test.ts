import { beforeAll, describe, expect, test } from 'vitest';
import { stands } from '../../src/assembly/setups.js';
import { spanOf, spansOf } from '../../src/assembly/span-of.js';
import { usingTheCamera } from '../../src/book/use.js';
import { stepsOf } from '../../src/camera/objects.js';
import { stepsOfCamera } from '../../src/model/assembly-steps.js';
import { lightJoints } from '../../src/proof/light-joints.js';
import { sceneOf } from '../../src/proof/light-scene.js';
import { faceOf } from '../camera/face-of.js';
import { changed, designOf } from '../design/reading.js';
import { heron as heronText } from '../design/worked-designs.js';
import { keptDesign, keptDesigns } from '../designs/kept-design.js';
import { chapterPages, linesOn, type PlainBook, plainBook, saidOn, saidUnder, WHOLE } from './plain-book.js';
import { textOf } from './text-rows.js';

describe.each(keptDesigns)('the book of %s', (name) => {
  let book: PlainBook;
  beforeAll(() => {
    book = plainBook(keptDesign(name));
  }, 180_000);

  test('tells each step with its own drawing and all that its objects say, in their order', () => {
    const { planned, pages } = book;
    const words = stepsOf(planned.camera.objects);
    for (const { key, number, title } of stepsOfCamera(planned.parts)) {
      const said = saidUnder(pages, `Step ${number}. ${title}`);
      expect(said.match(/\[step [a-z-]+\]/g), title).toEqual([`[step ${key}]`]);
      const own = words.filter(({ step }) => step === key);
      let from = 0;
      for (const text of [...own.flatMap(({ acts }) => acts), ...own.flatMap(({ checks = [] }) => checks)]) {
        const at = said.indexOf(text, from);
        expect(at, `step ${number}: ${text}`).toBeGreaterThanOrEqual(0);
        from = at + text.length;
      }
      for (const text of own.flatMap(({ cautions = [] }) => cautions)) {
        expect(said, `step ${number}`).toContain(text);
        // before what it is of
        expect(said.indexOf(text)).toBeLessThan(said.indexOf(own.flatMap(({ acts }) => acts)[0] ?? ''));
      }
      const [, lent] = /Have at hand too, without glue: (.*?\))\. /.exec(said) ?? [];
      for (const id of own.flatMap(({ borrows = [] }) => borrows)) expect(lent, `step ${number}`).toContain(`${id} (`);
    }
  });

  test('shows each drawing once, the cover’s first, and writes each as a file', () => {
    const { planned, pages } = book;
    const said = saidOn(pages);
    for (const name of ['cover', ...WHOLE]) expect(said.split(`[${name}]`).length - 1, name).toBe(1);
    expect(saidOn(pages.slice(0, 1))).toContain('[cover]');
    const steps = stepsOfCamera(planned.parts).map(({ key }) => `step ${key}`);
    const files = book.files.map(({ path }) => path).filter((path) => path.endsWith('.svg'));
    expect(files.sort()).toEqual(['cover', ...WHOLE, ...steps].map((name) => `drawings/${name}.svg`).sort());
  });

  test('says on its cover what it is the book of', () => {
    const { planned, pages } = book;
    const { design } = planned;
    const cover = saidOn(pages.slice(0, 1));
    expect(cover).toContain(design.name);
    expect(cover).toContain(`Revision ${planned.revision}`);
  });

  test('lists parts by the sheet that they are cut from, as many and as large as they are', () => {
    const { pages, parts, sheets, build } = book;
    const found: { sheet: string; id: string; count: number; size: string }[] = [];
    let sheet = '';
    const ids = new Set(parts.map(({ id }) => id));
    const names = sheets.map((one) => one.name);
    for (const line of chapterPages(pages, 'What you need').flatMap(linesOn)) {
      const texts = line.map(({ text }) => text);
      if (names.includes(texts[0] ?? '') && texts.includes('Part')) sheet = texts[0] ?? '';
      const at = texts.findIndex((text) => ids.has(text));
      if (sheet === '' || at < 0 || !/^\d+$/.test(texts[at + 1] ?? '')) continue;
      found.push({ sheet, id: texts[at] ?? '', count: Number(texts[at + 1]), size: texts.at(-1) ?? '' });
    }
    const cut = sheets.flatMap(({ name, placed }) =>
      [...new Set(placed.map(({ part }) => part))].map((id) => ({
        sheet: name,
        id,
        count: placed.filter(({ part }) => part === id).length,
      })),
    );
    const byName = (a: { sheet: string; id: string }, b: { sheet: string; id: string }) =>
      `${a.sheet} ${a.id}` < `${b.sheet} ${b.id}` ? -1 : 1;
    const flat = found.filter(({ id }) => parts.find((one) => one.id === id)?.kind === 'flat');
    expect(flat.map(({ size: _, ...rest }) => rest).sort(byName)).toEqual([...cut].sort(byName));
    for (const { id, kind, count } of parts.filter((one) => one.kind !== 'bought'))
      expect({
        id,
        kind,
        count: found.filter((one) => one.id === id).reduce((sum, one) => sum + one.count, 0),
      }).toEqual({ id, kind, count });
    for (const { id, size } of flat) {
      const part = build.parts.find((one) => one.id === id);
      if (part?.kind !== 'flat') throw new Error(`${id} is not cut`);
      const [width, height, thickness] = size.split(' × ').map(Number);
      const reach = (axis: 'x' | 'y') =>
        Math.max(...part.outline.map((at) => at[axis])) - Math.min(...part.outline.map((at) => at[axis]));
      expect(thickness, id).toBeCloseTo(part.thickness, 2);
      // a bulge may reach out over its ends: only what is all corners is measured here
      if (part.outline.some(({ bulge = 0 }) => bulge !== 0)) continue;
      expect(Math.abs((width ?? 0) - reach('x')), id).toBeLessThan(0.0051);
      expect(Math.abs((height ?? 0) - reach('y')), id).toBeLessThan(0.0051);
    }
  });

  test('lists all that is bought, with as many as the plan has', () => {
    const { pages, plan, sheets } = book;
    const said = saidUnder(pages, 'Bought parts');
    for (const { name, size, count, for: use } of plan.hardware)
      expect(said).toContain(`${count} ${name} ${size} ${use}`);
    const counted = new Map<string, number>();
    for (const { material } of sheets) counted.set(material, (counted.get(material) ?? 0) + 1);
    for (const [material, count] of counted)
      expect(saidOn(pages)).toContain(`${count === 1 ? '1 sheet' : `${count} sheets`} of ${material},`);
  });

  test('has every chapter, the test piece before the sheets and the sheets before the assembly', () => {
    const { pages } = book;
    const chapters = pages.flatMap(({ bookmarks = [] }) =>
      bookmarks.flatMap(({ title, level }) => (level === 0 ? [title] : [])),
    );
    const order = [
      'Contents',
      'What you need',
      'The test piece first',
      'Cutting and sorting the sheets',
      'Putting it together',
      'Setting the register with shims',
      'The leak test',
      'Using the camera',
      'Templates at true size',
    ].map((title) => chapters.indexOf(title));
    expect(Math.min(...order)).toBeGreaterThan(0);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  test('counts the pieces of each sheet', () => {
    const { pages, sheets } = book;
    const said = saidOn(chapterPages(pages, 'Cutting and sorting the sheets'));
    for (const { placed } of sheets) {
      const ids = placed.map(({ part }) => part);
      const each = [...new Set(ids)].map((id) => [ids.filter((other) => other === id).length, id] as const);
      expect(said).toContain(
        `${ids.length} piece${ids.length === 1 ? '' : 's'}: ${each.map(([many, id]) => (many === 1 ? id : `${many} × ${id}`)).join(', ')}`,
      );
    }
  });

  test('looks for light at every joint that the proof knows', () => {
    const { planned, pages } = book;
    const said = saidOn(chapterPages(pages, 'The leak test'));
    const joints = lightJoints(sceneOf(planned.build)).map(({ joint }) => joint);
    const apart = (joint: string) => joint.endsWith(' in the well');
    // a name is not found in a longer one: what stands after it begins with a capital
    for (const joint of joints.filter((one) => !apart(one)))
      expect(new RegExp(`${joint} [A-Z]`).test(said), joint).toBe(true);
    expect(joints.some(apart)).toBe(true);
    expect(said).toMatch(/holder in the well [A-Z]/);
  });

  test('the register to fill in: glass on its spacer stands as deep as the film', () => {
    const { pages, planned } = book;
    const { design } = planned;
    const said = saidUnder(pages, 'Your register');
    const { depth, frosted } = design.groundGlass;
    for (const { name, filmDepth, window } of design.holders) {
      const raised = new RegExp(`glass on the spacer for the ${name} ([\\d.]+)`).exec(said)?.[1];
      if (raised === undefined || frosted !== 'lens' || window !== null) {
        expect(frosted !== 'lens' || window !== null || filmDepth < depth + 0.05, name).toBe(true);
        continue;
      }
      expect(Math.abs(Number(raised) - filmDepth)).toBeLessThan(0.051);
    }
  });

  test('the place of the tripod, measured on the parts', () => {
    const { planned, pages } = book;
    const said = saidUnder(pages, 'Where the tripod goes');
    const screw = spanOf(planned.build, 'tripod-barrel').z;
    const middle = (screw[0] + screw[1]) / 2;
    const front = spanOf(planned.build, 'T1U').z[0];
    const numbers = (said.match(/\d+(\.\d+)?/g) ?? []).map(Number);
    expect(
      numbers.some((one) => Math.abs(one - (middle - front)) < 0.0051),
      `${middle - front}`,
    ).toBe(true);
    const knob = spanOf(planned.build, 'lock-knob').z[0];
    expect(said).toContain(`may reach ${Math.floor(knob - middle + 1e-9)} mm behind the middle of the hole`);
  });

  test('says what is laid on a spacer, and on which', () => {
    const { pages, planned } = book;
    const said = saidOn(chapterPages(pages, 'Using the camera'));
    const seat = spanOf(planned.build, 'B1').z[1];
    for (const [i, { name }] of planned.design.holders.entries()) {
      const id = `SP${i + 1}`;
      const own = planned.parts.filter(
        (part) => (part.id === `${id}T` || part.id.startsWith(`${id}-shim-`)) && part.placements.length > 0,
      );
      if (own.length === 0) continue;
      // either the holder stands off the seat, or the glass is raised for it
      const raised = spanOf(planned.build, faceOf(planned.parts, name).id).z[0] > seat + 0.01;
      const pattern = raised
        ? `${name} [\\d+]+ glass on the seat holder on its spacer \\(${id}, [\\d.]+ mm\\)`
        : `${name} ${i + 1} glass on its spacer \\(${id}, [\\d.]+ mm\\) holder on the seat`;
      expect(said).toMatch(new RegExp(pattern));
    }
  });

  test('tells as many pieces of each template as there are, and where the felt lies', () => {
    const { pages, planned } = book;
    const { build } = planned;
    const piecesOf = (id: string) => {
      const part = planned.parts.find((one) => one.id === id);
      const counts = build.setups.map(
        (setup) => part?.placements.filter((placement) => stands(placement, setup)).length ?? 0,
      );
      return Math.max(0, ...counts);
    };
    const inWords = (count: number) => (count === 1 ? 'one piece' : `${count} pieces`);
    const felt = saidUnder(pages, 'Felt round the rear box');
    expect(felt.match(/(one piece|\d+ pieces) of felt/g)).toEqual(
      ['felt-long', 'felt-side'].map((id) => `${inWords(piecesOf(id))} of felt`),
    );
    // how far a band lies from the front edge of the box
    const front = spanOf(build, 'R1L').z[0];
    const bands = [...new Set(spansOf(build, 'felt-long').map(({ z }) => z[0] - front))];
    const figures = (felt.match(/(?<![\d.])\d+(\.\d+)?/g) ?? []).map(Number);
    for (const band of bands)
      expect(
        figures.some((one) => Math.abs(one - band) < 0.0051),
        `band at ${band}`,
      ).toBe(true);
    const shims = planned.parts.filter(({ id }) => /-shim-/.test(id)).filter(({ id }) => piecesOf(id) > 0);
    if (shims.length === 0) return;
    const frames = saidUnder(pages, 'Frames of shim');
    const told = [...frames.matchAll(/(one piece|\d+ pieces) of ([\d.]+) mm\./g)].map(
      ([, many, thick]) => `${many} of ${thick}`,
    );
    const wanted = shims.map((part) => {
      const thickness = part.kind === 'bought' && part.shape.form === 'plate' ? part.shape.thickness : 0;
      return `${inWords(piecesOf(part.id))} of ${thickness}`;
    });
    expect([...told].sort()).toEqual([...wanted].sort());
  });

  test('the well is as deep as its fences stand apart', () => {
    const { pages, planned } = book;
    const upright = uprightOf(planned.build.setups);
    const figures = (saidUnder(pages, 'The seat, for holders that you make').match(/(?<![\d.])\d+(\.\d+)?/g) ?? []).map(
      Number,
    );
    const closed = -spanOf(planned.build, 'B4', upright).y[1];
    expect(
      figures.some((one) => Math.abs(one - closed) < 0.0051),
      `closed end ${closed}`,
    ).toBe(true);
  });

  test('pins are told as they stand, seen from behind', () => {
    const { planned, pages } = book;
    const pins = planned.parts
      .flatMap((part) =>
        /^seat-pin-/.test(part.id) && part.placements.length > 0 && part.kind === 'bought' ? [part] : [],
      )
      .map(({ id, shape }) => ({
        x: spanOf(planned.build, id, uprightOf(planned.build.setups)).x[0],
        diameter: shape.form === 'cylinder' ? shape.diameter : 0,
      }))
      .sort((a, b) => a.x - b.x);
    const told = /([\d.]+) mm thick at the left, ([\d.]+) mm at the right/.exec(saidOn(pages));
    if (pins.length === 2) expect(told?.slice(1).map(Number)).toEqual(pins.map(({ diameter }) => diameter));
  });

  test('loses nothing on the other paper', () => {
    const { pages, planned } = book;
    const { design } = planned;
    const { paper } = design.book;
    const other = book.on(paper === 'A4' ? 'Letter' : 'A4');
    const steps = stepsOfCamera(planned.parts).map(({ number, title }) => `Step ${number}. ${title}`);
    for (const title of steps.slice(0, -1)) expect(saidUnder(other, title)).toBe(saidUnder(pages, title));
    expect(other[0]?.width).not.toBe(pages[0]?.width);
  });
});

const uprightOf = <T extends { readonly orientation: string }>(setups: readonly T[]) => {
  const setup = setups.find(({ orientation }) => orientation === 'upright');
  return setup === undefined ? {} : { setup };
};

test.each(['3.6', '5.2'])('no figure of another sheet is left in the book of Heron from %s mm', (thickness) => {
  const text = (design: Parameters<typeof plainBook>[0]) => saidOn(plainBook(design, { laidOut: false }).pages);
  // 4.05 and what two, three and four plies of it measure
  const ofOld = /(?<![\d.])(4\.05|8\.1|12\.15|16\.2)(?![\d.]*\d)/g;
  expect(text(designOf(heronText)).match(ofOld)?.length).toBeGreaterThan(5);
  const other = text(designOf(changed(heronText, '4.05 mm', `${thickness} mm`)));
  expect([...other.matchAll(ofOld)].map(({ index }) => other.slice(index - 60, index + 20))).toEqual([]);
  expect(other).toContain(`${thickness} mm`);
});

test('the weight is ahead of the nut where it lies nearer to the lens', () => {
  const text = textOf(
    usingTheCamera({
      otherScale: null,
      lackingLine: null,
      format: '5x7',
      maxAperture: 6.3,
      rows: [],
      coversFrom: 0,
      holders: [
        { name: 'holder', mark: '1', offset: 0, spacer: { id: null, under: 'none', thickness: 0 }, locating: 'pins' },
      ],
      // z counts to the rear
      tripod: { thread: '1/4-20', massKg: 4, advice: '', balance: [50, 300], z: 170 },
      tongue: false,
      mount: 'clamp',
      lensKg: 0.6,
    }).blocks,
  );
  expect(text).toContain('120 mm ahead of the nut when closed and empty, 130 mm behind it when drawn out and loaded');
});
