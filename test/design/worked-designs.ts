/** Two invented designs, as a builder writes them. */
export const heron = `# a 5x7
name: Heron
format: { width: 127 mm, height: 177.8 mm, image: [120.6 mm, 171.4 mm] }   # 5x7
lens:
  name: 210 mm f/6.3 process lens
  focalLength: 210 mm
  flangeDistance: 203.5 mm
  maxAperture: f/6.3
  coverage: { diameter: 420 mm, at: 1:1 }
  pupilMagnification: 1
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

export const bittern = `# an 8x10
name: Bittern
format: { width: 203.2 mm, height: 254 mm, image: [196.8 mm, 247.6 mm] }   # 8x10
lens:
  name: 240 mm f/6.8 copying lens
  focalLength: 240 mm
  flangeDistance: 226 mm
  maxAperture: f/6.8
  coverage: { diameter: 576 mm, at: 1:1 }
  pupilMagnification: 1
  barrel: { diameter: 76 mm, grip: 14 mm, front: 34 mm, rear: 30 mm, frontDiameter: 74 mm, rearDiameter: 66 mm, mass: 1150 g }
  flange: { diameter: 100 mm, boltCircle: 89 mm, screws: 6, thickness: 3 mm }
  mount: { by: flange, side: inside }
focus: { nearest: 1:3, pastInfinity: 5 mm }
plywood: { thickness: 5.9 mm, sheet: [900 mm, 600 mm] }
laser: { kerf: 0.2 mm }
groundGlass: { thickness: 2.8 mm, depth: 6.5 mm, frosted: lens }
holders:
  - { name: film holder, filmDepth: 6.5 mm, width: 236 mm, length: 320 mm, thickness: 15 mm, mass: 700 g }
  - { name: processing holder, filmDepth: 27 mm, width: 242 mm, length: 296 mm, thickness: 42 mm, mass: 1900 g }
shims: [0.1 mm, 0.25 mm, 0.5 mm]
`;

/** The fewest keys that make a design: a lens that is screwed into a ring, and the published holder of its format. */
export const fewest = `name: Wren
format: 4x5
lens: { focalLength: 150 mm, flangeDistance: 141.5 mm, mount: { by: ring } }
plywood: { thickness: 4.05 mm }
laser: { kerf: 0.15 mm }
`;
