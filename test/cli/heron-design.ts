/** A design as somebody may write it; each test spoils one line of it. */
export const heronDesign = `name: Heron
format: 5x7
lens:
  name: 210 mm f/6.3 process lens
  focalLength: 210 mm
  flangeDistance: 203.5 mm
  maxAperture: f/6.3
  coverage: { diameter: 420 mm, at: 1:1 }
  barrel: { diameter: 58 mm, grip: 22 mm, front: 18 mm, rear: 31 mm, frontDiameter: 64 mm, rearDiameter: 52 mm, mass: 640 g }
  mount: { by: clamp, side: inside, screws: 4 }
focus: { nearest: 1:2.5, pastInfinity: 4 mm }
plywood: { thickness: 4.05 mm, sheet: [600 mm, 400 mm] }
laser: { kerf: 0.15 mm }
groundGlass: { thickness: 2 mm, depth: 5.8 mm, frosted: lens }
holders:
  - { name: paper holder, filmDepth: 5.8 mm, width: 150 mm, length: 210 mm, thickness: 12 mm, mass: 330 g }
  - { name: processing holder, filmDepth: 24 mm, width: 156 mm, length: 214 mm, thickness: 36 mm, mass: 900 g }
shims: [0.1 mm, 0.25 mm, 0.5 mm]
`;

/** The design with one text in it replaced. */
export function spoiled(from: string, to: string): string {
  if (!heronDesign.includes(from)) throw new Error(`the design does not hold ${from}`);
  return heronDesign.replace(from, to);
}
