/**
 * A drawer of lenses as they might lie in a shop that clears out copying shops, studios and schools: all data invented,
 * the same for the same seed. Some are measured through and through, of some only the engraving is known.
 */
export function randomDrawer(count: number, seed = 1): string {
  const next = numbers(seed);
  const between = (least: number, most: number) => least + (most - least) * next();
  const mm = (value: number) => `${value.toFixed(1)} mm`;
  const lenses = Array.from({ length: count }, (_, i) => {
    const f = Math.round(between(90, 420));
    const aperture = [2.8, 4.5, 5.6, 6.3, 8, 9, 11][Math.floor(next() * 7)] ?? 8;
    const diameter = Math.max(32, f / aperture + between(6, 26));
    const known = next();
    const keys = [
      `name: lens ${i + 1}`,
      `focalLength: ${f} mm`,
      ...(known > 0.1 ? [`flangeDistance: ${mm(f * between(0.72, 1.06))}`] : []),
      ...(known > 0.05 ? [`maxAperture: f/${aperture}`] : []),
      ...(known > 0.3
        ? [`coverage: { diameter: ${mm(f * between(0.5, 2.4))}, at: ${next() < 0.5 ? '1:1' : 'infinity'} }`]
        : []),
      ...(known > 0.2
        ? [
            `barrel: { diameter: ${mm(diameter)}, grip: ${mm(between(10, 40))}, front: ${mm(between(8, 60))}, rear: ${mm(between(2, 45))}, frontDiameter: ${mm(diameter + between(1, 12))}, rearDiameter: ${mm(diameter * between(0.75, 1))}, mass: ${Math.round(between(150, 1900))} g }`,
          ]
        : []),
      ...(known > 0.8
        ? [`flange: { diameter: ${mm(diameter + 40)}, boltCircle: ${mm(diameter + 28)}, screws: 3, thickness: 3 mm }`]
        : []),
      ...(known > 0.7 && known < 0.8 ? [`mount: { by: ring, side: ${next() < 0.5 ? 'front' : 'inside'} }`] : []),
    ];
    return `  - { ${keys.join(', ')} }`;
  });
  return [
    'plywood: { thickness: [4.02 mm, 4.05 mm, 4.06 mm], sheet: [800 mm, 600 mm] }',
    'focus: { nearest: 1:4 }',
    `formats: [4x5, 5x7, 8x10, 11x14, 9x12, 13x18, 18x24, whole-plate, half-plate-british, half-plate-american, quarter-plate, { name: square, width: 150 mm, height: 150 mm }]`,
    'holders:',
    '  - { format: 5x7, name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 13.9 mm }',
    '  - { format: 5x7, name: processing holder, filmDepth: 24 mm, width: 156 mm, length: 214 mm, thickness: 36 mm }',
    'lenses:',
    ...lenses,
    '',
  ].join('\n');
}

/** Numbers from 0 to 1 by a linear congruence modulo 2^32 (the constants that a well-known handbook of numerics prints, from memory). */
function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
