import loadModule, { type Manifold } from 'manifold-3d';
import { corners } from './facets.js';
import { isClosed, type Mesh, meshVolume, rounded, withoutSlivers } from './mesh.js';
import type { Matrix4, Point3 } from './placement.js';
import type { Prism, SolidRecipe } from './solid.js';

/**
 * Edges that booleans leave behind where two curves just meet are drawn together below this length, mm: ten steps of the
 * grid on which meshes are written, a tenth of the sagitta.
 */
const CRUMB = 1e-3;

/** A solid on the bench: a number that means nothing once the stage is over. */
export interface Solid {
  readonly shelf: number;
}

/** What a stage may do with solids. Everything made here is freed when the stage ends, also when it throws. */
export interface Bench {
  /** A solid from its surface, placed by a rigid motion. */
  readonly solid: (mesh: Mesh, matrix?: Matrix4) => Solid;
  /** A solid drawn out of a profile with holes, its curves cut into chords on the side of air. */
  readonly prism: (prism: Prism, role: 'add' | 'cut') => Solid;
  readonly moved: (solid: Solid, matrix: Matrix4) => Solid;
  readonly joined: (solids: readonly Solid[]) => Solid;
  readonly cut: (from: Solid, tools: readonly Solid[]) => Solid;
  readonly common: (a: Solid, b: Solid) => Solid;
  /** mm³. Two parts that only touch share up to 1e-5: corners are 32-bit floats. */
  readonly volume: (solid: Solid) => number;
  /** The least distance between two solids, mm, or `within` where they are farther apart; 0 where they touch or overlap. */
  readonly gap: (a: Solid, b: Solid, within: number) => number;
  /** What two solids have in common, in one look: nothing of it stays on the bench. */
  readonly shared: (a: Solid, b: Solid) => Shared;
  readonly boundary: (solid: Solid) => Boundary;
  /** What of a solid lies on the side of a plane that its normal points to: the points p with p · normal ≥ offset. */
  readonly trimmed: (solid: Solid, normal: Point3, offset: number) => Solid;
  /** Its surface as the kernel has it: closed, for looking at. What is printed goes through `boundary`. */
  readonly surface: (solid: Solid) => Mesh;
}

/** What two solids have in common. */
export interface Shared {
  /** mm³ */
  readonly volume: number;
  /**
   * Thickness of the thickest of its pieces, mm: twice its volume over its surface, which for a sheet or a shell is how
   * thick it is, and for a block less than that.
   */
  readonly depth: number;
  /** Middle of that piece. */
  readonly at: Point3;
}

/** A finished solid, copied out of the kernel. */
export interface Boundary {
  /** Rounded as it is written. */
  readonly mesh: Mesh;
  /** Of that mesh, mm³. */
  readonly volume: number;
  /** Separate pieces. */
  readonly bodies: number;
  /** Handles through all of them. */
  readonly genus: number;
}

const NOTHING: Shared = { volume: 0, depth: 0, at: { x: 0, y: 0, z: 0 } };

/** The solid kernel, loaded. It knows no prisms and no parts: stages bring surfaces and take figures away. */
export interface Kernel {
  readonly stage: <T>(work: (bench: Bench) => T) => T;
}

/**
 * Starts the kernel. To be awaited once, where the program starts, and handed in from there: no stage waits for anything.
 *
 * @param wasm where a browser finds the kernel's code; Node finds it alone
 */
export async function loadKernel(wasm?: string): Promise<Kernel> {
  const module = await (wasm === undefined ? loadModule() : loadModule({ locateFile: () => wasm }));
  module.setup();
  const { Manifold: Solids, Mesh: Surface, CrossSection: Section } = module;

  const stage = <T>(work: (bench: Bench) => T): T => {
    const shelf: Manifold[] = [];
    const keep = (made: Manifold): Solid => {
      const place = shelf.push(made) - 1;
      if (made.status() !== 'NoError') throw new Error(`the solid kernel refuses a solid: ${made.status()}`);
      return { shelf: place };
    };
    const take = ({ shelf: place }: Solid): Manifold => {
      const found = shelf[place];
      if (!found) throw new Error('a solid was used outside its stage');
      return found;
    };
    const moved = (solid: Solid, matrix: Matrix4) => keep(take(solid).transform([...matrix] as Mat4));
    const surface = (solid: Solid): Mesh => {
      const { vertProperties, triVerts, numProp } = take(solid).getMesh();
      if (numProp !== 3) throw new Error(`the solid kernel gave ${numProp} numbers a corner`);
      return { positions: [...vertProperties], triangles: [...triVerts] };
    };
    const outOf = (solid: Solid): Mesh => rounded(surface(solid));
    const bench: Bench = {
      solid: ({ positions, triangles }, matrix) => {
        const surface = new Surface({
          numProp: 3,
          vertProperties: Float32Array.from(positions),
          triVerts: Uint32Array.from(triangles),
        });
        surface.merge();
        const solid = keep(Solids.ofMesh(surface));
        return matrix ? moved(solid, matrix) : solid;
      },
      prism: ({ profile, holes, height, matrix, taper = 1 }, role) => {
        const loops = [profile, ...holes].map((loop) =>
          corners(loop, role).map(({ x, y }): [number, number] => [x, y]),
        );
        // made here, for the kernel would make one of its own and forget it
        const section = new Section(loops, 'Positive');
        const upright = section.extrude(height, 0, 0, [taper, taper]);
        section.delete();
        const solid = keep(upright.transform([...matrix] as Mat4));
        upright.delete();
        return solid;
      },
      moved,
      joined: (solids) => keep(Solids.union(solids.map(take))),
      cut: (from, tools) => keep(Solids.difference([take(from), ...tools.map(take)])),
      common: (a, b) => keep(Solids.intersection(take(a), take(b))),
      volume: (solid) => take(solid).volume(),
      gap: (a, b, within) => take(a).minGap(take(b), within),
      shared: (a, b) => {
        const common = Solids.intersection(take(a), take(b));
        const pieces = common.volume() > 0 ? common.decompose() : [];
        const shares = pieces.map((piece) => {
          const { min, max } = piece.boundingBox();
          const at = { x: (min[0] + max[0]) / 2, y: (min[1] + max[1]) / 2, z: (min[2] + max[2]) / 2 };
          return { volume: piece.volume(), depth: (2 * piece.volume()) / piece.surfaceArea(), at };
        });
        for (const made of [common, ...pieces]) made.delete();
        const volume = shares.reduce((sum, share) => sum + share.volume, 0);
        const { depth, at } = shares.reduce((most, share) => (share.depth > most.depth ? share : most), NOTHING);
        return { volume, depth, at };
      },
      trimmed: (solid, { x, y, z }, offset) => keep(take(solid).trimByPlane([x, y, z], offset)),
      surface,
      boundary: (solid) => {
        const bodies = take(solid).decompose();
        const genus = bodies.reduce((sum, body) => sum + body.genus(), 0);
        for (const body of bodies) body.delete();
        // taken in as a new solid the mesh forgets which faces it came from, and crumbs can be drawn together
        const mesh = withoutSlivers(outOf(keep(take(bench.solid(outOf(solid))).simplify(CRUMB))));
        if (!isClosed(mesh)) throw new Error('rounding opened a solid');
        return { mesh, volume: meshVolume(mesh), bodies: bodies.length, genus };
      },
    };
    try {
      return work(bench);
    } finally {
      for (const made of shelf) made.delete();
    }
  };
  return { stage };
}

/** The kernel's own matrix type, which it does not export as a value would need. */
type Mat4 = Parameters<Manifold['transform']>[0];

/** Makes what a recipe describes. The builder of prisms is handed in, so that only who prints has to load it. */
export const realise = (
  kernel: Kernel,
  { add, cut }: SolidRecipe,
  build: (prism: Prism, role: 'add' | 'cut') => Mesh,
): Boundary =>
  kernel.stage(({ solid, joined, cut: without, boundary }) => {
    const body = joined(add.map((prism) => solid(build(prism, 'add'))));
    const tools = cut.map((prism) => solid(build(prism, 'cut')));
    return boundary(tools.length === 0 ? body : without(body, tools));
  });
