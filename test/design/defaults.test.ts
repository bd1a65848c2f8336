import { describe, expect, test } from 'vitest';
import { isDefaulted } from '../../src/design/defaulted.js';
import { workshopPalette } from '../../src/model/palette.js';
import { changed, designOf } from './reading.js';
import { bittern, fewest, heron } from './worked-designs.js';

describe('where nothing is written', () => {
  const wren = designOf(fewest);

  test('the promised defaults hold', () => {
    // The table "where it is not given" of the contract.
    expect(wren.lens).toMatchObject({ maxAperture: 8, coverage: null, pupilMagnification: 1, flange: null });
    expect(wren.focus).toEqual({ nearest: 0.2, farthest: 0, pastInfinity: 4, pastNearest: null });
    expect(wren.plywood.sheet).toEqual({ width: 600, height: 400 });
    expect(wren.groundGlass).toMatchObject({ thickness: 2, frosted: 'lens', refractiveIndex: 1.52 });
    expect(wren.groundGlass.depth).toBe(wren.holders[0]?.filmDepth);
    expect(wren.shims).toEqual([0.1, 0.25, 0.5]);
    expect(wren.stock).toEqual([]);
    expect(wren.laser).toEqual({
      kerf: 0.15,
      kerfUncertainty: 0.02,
      cutSpeed: 10,
      engraveSpeed: 200,
      travelSpeed: 300,
      pierceTime: 0.5,
      palette: workshopPalette,
    });
    expect(wren.workshop).toEqual({
      slideClearance: 1.5,
      railPlay: 0.25,
      fits: { press: -0.02, glueSlip: 0.08, slide: 0.3, dropIn: 0.6 },
      glueLine: 0.05,
      friction: 0.35,
      density: 680,
      modulus: 7000,
      spacing: 2,
      margin: 5,
      boreAllowance: 0.2,
      nozzle: 0.4,
      boards: { channel: 1.25, lip: 0.5, slide: 1, velvet: 1 },
    });
    expect(wren.book).toEqual({ paper: 'A4' });
    expect(designOf(changed(heron, '  mount: { by: clamp, side: inside, screws: 4 }\n', '')).lens.mount).toEqual({
      by: 'clamp',
      side: 'inside',
      screws: 4,
    });
  });

  test('the published holder stands in, its film ahead of the slot', () => {
    // V1.21: 4x5, T 5.004, film 0.007 in: 4.826, tol 0.002 [verified: S16a]
    expect(wren.holders).toHaveLength(1);
    expect(Math.abs((wren.holders[0]?.filmDepth ?? 0) - 4.826)).toBeLessThanOrEqual(0.002);
    expect(wren.holders[0]).toMatchObject({ locating: 'well', rib: null, window: null, closedEnd: null });
  });

  test('a lens without a barrel is a stand-in of f/N across', () => {
    expect(wren.lens.barrel).toMatchObject({ diameter: 150 / 8, frontDiameter: 150 / 8, rearDiameter: 150 / 8 });
    expect(wren.defaulted).toContain('lens.barrel');
  });

  test('each key that was left out is named once, a group that was left out by its own name', () => {
    expect(wren.defaulted).toEqual([
      'lens.name',
      'lens.uncertainty',
      'lens.maxAperture',
      'lens.coverage',
      'lens.pupilMagnification',
      'lens.barrel',
      'lens.mount.side',
      'lens.mount.screws',
      'lens.mount.opening',
      'focus',
      'builtFor',
      'plywood.sheet',
      'plywood.material',
      'stock',
      'laser.kerfUncertainty',
      'laser.cutSpeed',
      'laser.engraveSpeed',
      'laser.travelSpeed',
      'laser.pierceTime',
      'laser.palette',
      'groundGlass',
      'holders',
      'shims',
      'boxes',
      'baffle',
      'handle',
      'filterHolder',
      'shutter',
      'hood',
      'cap',
      'masks',
      'stops',
      'workshop',
      'book',
      'sitting',
    ]);
    expect(isDefaulted(wren, 'focus.nearest')).toBe(true);
    expect(isDefaulted(wren, 'holders[0].depthTo')).toBe(true);
    expect(isDefaulted(wren, 'lens.focalLength')).toBe(false);
    expect(isDefaulted(wren, 'laser.kerf')).toBe(false);
  });

  test('what was written is not among them', () => {
    const { defaulted } = designOf(`${fewest}focus: { nearest: 1:3 }\n`);
    expect(defaulted).toContain('focus.farthest');
    expect(defaulted).not.toContain('focus.nearest');
    expect(defaulted).not.toContain('focus');
    expect(designOf(heron).defaulted).toContain('holders[1].closedEnd');
    expect(designOf(heron).defaulted).not.toContain('holders[0].mass');
  });
});

describe('defaults that depend on other keys', () => {
  const holder = (keys: string) =>
    designOf(changed(heron, 'filmDepth: 5.8 mm,', `filmDepth: 5.8 mm, ${keys}`)).holders[0];

  test('the dark slide of a home-made holder begins behind its face ply, and always ahead of the film', () => {
    expect(holder('')?.slideDepth).toBe(4.05);
    expect(designOf(changed(heron, '4.05 mm', '5.9 mm')).holders[0]?.slideDepth).toBeCloseTo(4.8, 9);
    expect(holder('slideDepth: 2 mm,')?.slideDepth).toBe(2);
  });

  test('a holder of the user is located by pins, one with a rib by its rib', () => {
    expect(holder('')?.locating).toBe('pins');
    expect(holder('rib: { fromAxis: 98 mm, width: 4 mm, height: 1.5 mm },')).toMatchObject({
      locating: 'rib',
      rib: { fromAxis: 98 },
    });
    expect(holder('locating: well,')?.locating).toBe('well');
  });

  test('what was not weighed is estimated', () => {
    // 150 x 210 x 12 mm at 680 kg/m³ [arithmetic]
    const light = designOf(changed(heron, ', mass: 330 g', '')).holders[0];
    expect(light?.massKg).toBeCloseTo(0.25704, 9);
    // Cylinders of 64 x 18, 58 x 22, 52 x 31 mm at 3600 kg/m³ [arithmetic: 181 865 mm³]
    const barrel = designOf(changed(heron, ', mass: 640 g', '')).lens.barrel;
    expect(barrel.massKg).toBeCloseTo(0.6547, 4);
  });

  test('other stock is of the same word and size as the plywood', () =>
    expect(
      designOf(
        `${changed(heron, 'sheet: [600 mm, 400 mm]', 'sheet: [60 cm, 30 cm], material: birch')}stock: [{ thickness: 3 mm }]\n`,
      ).stock,
    ).toEqual([
      {
        material: 'birch-3',
        thickness: 3,
        sheet: { width: 600, height: 300 },
        count: null,
        first: false,
        remnant: null,
      },
    ]));

  test('a format of your own loses the rebates of sheet film', () => {
    // camera.md section 2: nominal less 6.4 each way; common practice, no source
    const { image } = designOf(changed(bittern, ', image: [196.8 mm, 247.6 mm]', '')).format;
    expect(image.short).toBeCloseTo(196.8, 9);
    expect(image.long).toBeCloseTo(247.6, 9);
  });
});
