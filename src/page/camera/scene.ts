import {
  AlwaysDepth,
  AlwaysStencilFunc,
  BackSide,
  BufferAttribute,
  BufferGeometry,
  DataTexture,
  DoubleSide,
  EqualStencilFunc,
  FloatType,
  FrontSide,
  GLSL3,
  InterleavedBuffer,
  InterleavedBufferAttribute,
  LineSegments,
  Mesh,
  type Object3D,
  RawShaderMaterial,
  ReplaceStencilOp,
  RGBAFormat,
  Scene,
  type ShaderMaterialParameters,
  type Side,
  Vector2,
  Vector3,
  Vector4,
} from 'three';
import type { ShownPiece, ShownSolids, TakenStep } from '../../model/shown.js';
import { coneGeometries } from './light-cone.js';
import { cutColours, faceColours, inks, markColours, stuffs } from './materials.js';
import { type Merged, type MergedPiece, mergedPieces, PER_LINE } from './merged.js';
import {
  CHOSEN,
  coneFragment,
  coneVertex,
  FAINT,
  facesFragment,
  facesVertex,
  linesFragment,
  linesVertex,
  PLAIN,
  POINTED,
  pickFragment,
  planeFragment,
  planeVertex,
  quickFragment,
  quickVertex,
  TOUCHED,
  thinVertex,
  WHOLE,
} from './shaders.js';

/** How the pieces stand and are lit up in one picture. */
export interface Standing {
  readonly rear: number;
  readonly out: ReadonlyMap<string, TakenStep['by']>;
  readonly sawn: boolean;
  readonly cone: boolean;
  readonly chosen: string | null;
  readonly touched: string | null;
  readonly pointed: readonly string[];
}

/** A camera ready to be drawn: faces, lines and light in a handful of calls. */
export interface CameraScene {
  readonly scene: Scene;
  readonly pieces: readonly MergedPiece[];
  readonly stand: (standing: Standing) => void;
  /** Told before each picture: width and height of it in dots, and how wide a line is; null where it moves, and lines are drawn the quick way. */
  readonly measure: (view: { eye: Vector3; room: Vector2; line: number | null; depth: number }) => void;
  /** Turns the scene to what is met where, and back. */
  readonly picking: (on: boolean) => void;
  /** Round all that is shown, as it stands. */
  readonly bounds: (only?: (piece: MergedPiece) => boolean) => Bounds;
  readonly free: () => void;
}

export interface Bounds {
  readonly middle: Vector3;
  readonly radius: number;
  /** Of all boxes, as they stand. */
  readonly corners: readonly Vector3[];
}

export function cameraScene(solids: ShownSolids, setupName: string): CameraScene {
  const merged = mergedPieces(solids, setupName);
  const told = pieceTexture(merged);
  const shared = {
    pieces: { value: told.texture },
    eye: { value: new Vector3() },
    room: { value: new Vector2(1, 1) },
    width: { value: 1 },
    nearer: { value: 0 },
    sawn: { value: 0 },
  };
  const tints = {
    stuffs: { value: faceColours.map((colour) => new Vector3(...colour)) },
    cuts: { value: cutColours.map((colour) => new Vector3(...colour)) },
    marks: { value: markColours.map((colour) => new Vector3(...colour)) },
  };
  const faces = (
    own: BufferGeometry,
    pass: number,
    more: FacesMore = {},
    quickly: FacesMore = { defines: { DRAFT: '' } },
  ): Faces => {
    const material = (quality: FacesMore) =>
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: facesVertex,
        fragmentShader: facesFragment,
        side: FrontSide,
        polygonOffset: true,
        polygonOffsetFactor: 1,
        polygonOffsetUnits: 1,
        uniforms: {
          ...shared,
          ...tints,
          pass: { value: pass },
        },
        ...more,
        ...quality,
        defines: { ...more.defines, ...quality.defines },
      });
    const draft = material(quickly);
    return { mesh: still(new Mesh(own, draft)), draft, fine: material({}) };
  };
  const geometry = facesGeometry(merged);
  const clearly = { transparent: true, depthWrite: false };
  const shaded = {
    opaque: faces(
      withIndex(geometry, merged.opaque),
      0,
      {},
      { vertexShader: quickVertex, fragmentShader: quickFragment },
    ),
    clear: faces(withIndex(geometry, merged.clear), 0, clearly),
    faint: faces(withIndex(geometry, merged.opaque), 1, clearly),
  };
  const { opaque, clear, faint } = { opaque: shaded.opaque.mesh, clear: shaded.clear.mesh, faint: shaded.faint.mesh };
  const sawn = sawnOpen(withIndex(geometry, joined(merged.opaque, merged.clear)), faces);
  const allFaces = [...Object.values(shaded), ...sawn.faces];
  const lines = still(
    new Mesh(
      new BufferGeometry(),
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: linesVertex,
        fragmentShader: linesFragment,
        transparent: true,
        depthWrite: false,
        side: DoubleSide,
        uniforms: { ...shared, inks: { value: inks.map((ink) => new Vector4(...ink)) } },
      }),
    ),
  );
  const thin = still(
    new LineSegments(
      thinGeometry(merged),
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: thinVertex,
        fragmentShader: linesFragment,
        transparent: true,
        depthWrite: false,
        uniforms: lines.material.uniforms,
      }),
    ),
  );
  const cone = lightOf(solids, setupName, shared.sawn);
  const picked = new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader: facesVertex,
    fragmentShader: pickFragment,
    side: DoubleSide,
    uniforms: { ...shared, pass: { value: 2 } },
  });
  clear.renderOrder = 2;
  lines.renderOrder = 1;
  thin.renderOrder = 1;
  faint.renderOrder = 3;
  const scene = new Scene();
  scene.add(opaque, ...sawn.objects, lines, thin, clear, faint, ...cone.objects);
  const moved = { sawn: false, out: new Map() as Standing['out'], rear: 0, isLined: false };

  return {
    scene,
    pieces: merged.pieces,
    stand: (standing) => {
      const pointing = standing.pointed.length > 0;
      moved.out = standing.out;
      moved.rear = standing.rear;
      told.write(standing);
      faint.visible = pointing;
      shared.sawn.value = standing.sawn ? 1 : 0;
      cone.stand(standing);
      if (moved.sawn === standing.sawn) return;
      moved.sawn = standing.sawn;
      for (const object of sawn.objects) object.visible = moved.sawn;
      for (const object of [opaque, clear]) object.visible = !moved.sawn;
      for (const material of [shaded.faint.draft, shaded.faint.fine]) {
        material.side = moved.sawn ? DoubleSide : FrontSide;
        if (moved.sawn) material.defines.SAWN = '';
        else delete material.defines.SAWN;
        material.needsUpdate = true;
      }
    },
    measure: ({ eye, room, line, depth }) => {
      for (const { mesh, draft, fine } of allFaces) mesh.material = line === null ? draft : fine;
      thin.visible = line === null;
      lines.visible = line !== null;
      // half of the work of a new camera, and not wanted before all is at rest
      if (line !== null && !moved.isLined) {
        moved.isLined = true;
        lines.geometry.dispose();
        lines.geometry = linesGeometry(merged);
      }
      shared.eye.value.copy(eye);
      shared.room.value.copy(room);
      shared.width.value = line ?? 1;
      shared.nearer.value = LINE_NEARER / depth;
    },
    picking: (on) => {
      for (const { mesh, draft } of [shaded.opaque, shaded.clear]) mesh.material = on ? picked : draft;
      for (const object of on ? [lines, thin, ...cone.objects] : []) object.visible = false;
      for (const object of [opaque, clear]) object.visible = on || !moved.sawn;
      for (const object of sawn.objects) object.visible = !on && moved.sawn;
      if (on) faint.visible = false;
      else cone.show();
    },
    bounds: (only = () => true) => bounds(merged.pieces.filter(only), moved),
    // not the materials: the next camera has the same ones, and what they were compiled to would go with the last of them
    free: () => {
      told.texture.dispose();
      for (const { geometry } of [lines, thin, ...allFaces.map(({ mesh }) => mesh), ...sawn.objects, ...cone.objects])
        geometry.dispose();
    },
  };
}

/** Faces with both of their looks: while all moves, and at rest. */
interface Faces {
  readonly mesh: Mesh<BufferGeometry, RawShaderMaterial>;
  readonly draft: RawShaderMaterial;
  readonly fine: RawShaderMaterial;
}

type FacesMore = Partial<ShaderMaterialParameters>;

/** Half of this many mm a line lies before the faces that meet in it. */
const LINE_NEARER = 0.8;

/**
 * A camera that is sawn open: outsides, then insides, which remember where they were seen (1 in the stencil), and last the
 * plane of the saw itself, which is put before them there, so that no edge beyond shines through the cut.
 */
function sawnOpen(
  geometry: BufferGeometry,
  facesOf: (geometry: BufferGeometry, pass: number, more: FacesMore) => Faces,
) {
  const side = (which: Side, stencilRef: number) =>
    facesOf(geometry, 0, {
      defines: which === BackSide ? { SAWN: '', CUT: '' } : { SAWN: '' },
      side: which,
      // where two pieces touch, the inside of the one that is cut comes before the outside of the next
      ...(which === BackSide ? { polygonOffsetFactor: 0, polygonOffsetUnits: -8 } : {}),
      stencilWrite: true,
      stencilRef,
      stencilFunc: AlwaysStencilFunc,
      stencilZPass: ReplaceStencilOp,
    });
  const plane = new BufferGeometry().setAttribute(
    'position',
    new BufferAttribute(
      new Float32Array([0, -FAR, -FAR, 0, FAR, -FAR, 0, FAR, FAR, 0, -FAR, -FAR, 0, FAR, FAR, 0, -FAR, FAR]),
      3,
    ),
  );
  const cut = still(
    new Mesh(
      plane,
      new RawShaderMaterial({
        glslVersion: GLSL3,
        vertexShader: planeVertex,
        fragmentShader: planeFragment,
        side: DoubleSide,
        colorWrite: false,
        depthFunc: AlwaysDepth,
        stencilWrite: true,
        stencilRef: 1,
        stencilFunc: EqualStencilFunc,
      }),
    ),
  );
  const faces = [side(FrontSide, 0), side(BackSide, 1)];
  const objects = [...faces.map(({ mesh }) => mesh), cut];
  objects.forEach((object, i) => {
    object.visible = false;
    object.renderOrder = i / 10;
  });
  return { faces, objects };
}

/** Farther than any part of a camera, mm. */
const FAR = 1e4;

function joined(a: Uint32Array, b: Uint32Array): Uint32Array {
  const both = new Uint32Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

/** Nothing has a place of its own: the shaders move each piece. */
function still<T extends Object3D>(object: T): T {
  object.frustumCulled = false;
  object.matrixAutoUpdate = false;
  return object;
}

/** A list of numbers for each piece, as a picture two dots high. */
function pieceTexture({ pieces }: Merged) {
  const count = Math.max(1, pieces.length);
  const data = new Float32Array(8 * count);
  const texture = new DataTexture(data, count, 2, RGBAFormat, FloatType);
  const ends = lensEnds(pieces);
  pieces.forEach(({ piece, body, box }, i) => {
    const isGlazed = box.low[2] === ends.front || box.high[2] === ends.rear;
    const round = body.stuff !== 'lens' ? (body.thickness ?? 1) : isGlazed ? body.size[0] / 2 : ALL_RIM;
    data.set([stuffs.indexOf(body.stuff), round, PLAIN, toneOf(piece.key)], 4 * (count + i));
  });
  const write = ({ rear, out, chosen, touched, pointed }: Standing) => {
    pieces.forEach(({ piece }, i) => {
      const { x, y, z } = out.get(piece.key) ?? { x: 0, y: 0, z: 0 };
      data[4 * i] = x;
      data[4 * i + 1] = y;
      data[4 * i + 2] = z + slidBy(piece, rear);
      const isPointed = pointed.includes(piece.part) || pointed.includes(piece.key);
      data[4 * i + 3] = pointed.length === 0 || isPointed ? WHOLE : FAINT;
      data[4 * (count + i) + 2] =
        piece.part === chosen ? CHOSEN : isPointed ? POINTED : piece.part === touched ? TOUCHED : PLAIN;
    });
    texture.needsUpdate = true;
  };
  return { texture, write };
}

/** A lens has its glass at both ends: what stands out between them, such as a flange, is rim all over. */
function lensEnds(pieces: readonly MergedPiece[]): { readonly front: number; readonly rear: number } {
  const lens = pieces.filter(({ body }) => body.stuff === 'lens');
  return {
    front: Math.min(...lens.map(({ box }) => box.low[2])),
    rear: Math.max(...lens.map(({ box }) => box.high[2])),
  };
}

/** A radius, mm, that no point of a lens lies within. */
const ALL_RIM = 1e-3;

/** A tone for each piece, from 0 to 1, that stays the same: no two boards of one sheet are quite alike. */
function toneOf(key: string): number {
  let mixed = 7;
  for (const letter of key) mixed = (mixed * 31 + (letter.codePointAt(0) ?? 0)) % 997;
  return mixed / 997;
}

function facesGeometry({ positions, normals, local, numbers }: Merged): BufferGeometry {
  return new BufferGeometry()
    .setAttribute('position', new BufferAttribute(positions, 3))
    .setAttribute('normal', new BufferAttribute(normals, 3))
    .setAttribute('local', new BufferAttribute(local, 4))
    .setAttribute('number', new BufferAttribute(numbers, 1));
}

function withIndex(geometry: BufferGeometry, index: Uint32Array): BufferGeometry {
  const own = new BufferGeometry();
  for (const [name, attribute] of Object.entries(geometry.attributes)) own.setAttribute(name, attribute);
  return own.setIndex(new BufferAttribute(index, 1));
}

/** Shorter than this, mm, a line is a chord of a small hole or of a screw: half of all lines, and not missed while all moves. */
const CHORD = 0.5;

/** Both ends of each line that is long enough. */
function thinGeometry({ lines }: Merged): BufferGeometry {
  const way = (from: number, axis: number) => (lines[from + 3 + axis] as number) - (lines[from + axis] as number);
  const room = new Float32Array((10 * lines.length) / PER_LINE);
  let size = 0;
  for (let from = 0; from < lines.length; from += PER_LINE) {
    const isLong = way(from, 0) ** 2 + way(from, 1) ** 2 + way(from, 2) ** 2 > CHORD ** 2;
    if (!isLong && lines[from + 7] !== 1) continue;
    for (let end = 0; end < 2; end++) {
      for (let i = 0; i < 3; i++) room[size++] = lines[from + 3 * end + i] as number;
      for (let i = 6; i < 8; i++) room[size++] = lines[from + i] as number;
    }
  }
  const each = new InterleavedBuffer(room.slice(0, size), 5);
  return new BufferGeometry()
    .setAttribute('position', new InterleavedBufferAttribute(each, 3, 0))
    .setAttribute('kind', new InterleavedBufferAttribute(each, 2, 3));
}

/**
 * Four corners for each line. Instances would be less to hand over, but software that draws takes each of them as a call of
 * its own: thirty times as slow.
 */
function linesGeometry({ lines }: Merged): BufferGeometry {
  const count = lines.length / PER_LINE;
  const size = PER_LINE + 2;
  const corners = new Float32Array(4 * size * count);
  const index = new Uint32Array(6 * count);
  for (let line = 0; line < count; line++) {
    const own = lines.subarray(PER_LINE * line, PER_LINE * (line + 1));
    for (let corner = 0; corner < 4; corner++) {
      const at = size * (4 * line + corner);
      corners.set(own, at);
      corners[at + PER_LINE] = corner >> 1;
      corners[at + PER_LINE + 1] = 2 * (corner & 1) - 1;
    }
    const first = 4 * line;
    index.set([first, first + 1, first + 2, first + 2, first + 1, first + 3], 6 * line);
  }
  const each = new InterleavedBuffer(corners, size);
  return new BufferGeometry()
    .setAttribute('from', new InterleavedBufferAttribute(each, 3, 0))
    .setAttribute('to', new InterleavedBufferAttribute(each, 3, 3))
    .setAttribute('kind', new InterleavedBufferAttribute(each, 2, 6))
    .setAttribute('corner', new InterleavedBufferAttribute(each, 2, PER_LINE))
    .setIndex(new BufferAttribute(index, 1));
}

/** What is out of sight in wood is drawn through it, faintly, as a drawing draws what is hidden. */
function lightOf({ light, setups }: ShownSolids, setupName: string, sawn: { value: number }) {
  const setup = setups.find(({ name }) => name === setupName);
  const { skin, lines, hidden } = coneGeometries(light, setup?.orientation === 'lengthwise');
  const film = light.films.find(({ holder }) => holder === setup?.holder) ?? light.films[0];
  const ends = { value: new Vector2(light.pupil.z, film?.z ?? 0) };
  const material = (alpha: number, hidden: boolean) =>
    new RawShaderMaterial({
      glslVersion: GLSL3,
      vertexShader: coneVertex,
      fragmentShader: coneFragment,
      transparent: true,
      depthWrite: false,
      depthTest: !hidden,
      side: DoubleSide,
      uniforms: { ends, sawn, tint: { value: new Vector4(...LIGHT, alpha) } },
    });
  const body = still(new Mesh(skin, material(0.2, false)));
  const seen = still(new LineSegments(lines, material(0.95, false)));
  const ghost = still(new LineSegments(hidden, material(0.2, true)));
  body.renderOrder = 4;
  seen.renderOrder = 5;
  ghost.renderOrder = 6;
  const shown = { is: false };
  const show = () => {
    for (const object of [body, seen, ghost]) object.visible = shown.is;
  };
  return {
    objects: [body, seen, ghost],
    stand: ({ rear, cone, out }: Standing) => {
      // a camera in pieces has no light in it
      shown.is = cone && out.size === 0;
      ends.value.y = (film?.z ?? 0) + rear;
      show();
    },
    show,
  };
}

/** How far along +z a piece stands, the rear slid by `rear`: a middle box comes along when its stop takes it. */
function slidBy({ group, drawnFrom }: ShownPiece, rear: number): number {
  if (group !== 'front') return rear;
  return drawnFrom === undefined ? 0 : Math.max(0, rear - drawnFrom);
}

/** Lamp light. */
const LIGHT = [0.86, 0.55, 0.1] as const;

function bounds(pieces: readonly MergedPiece[], { out, rear }: { out: Standing['out']; rear: number }): Bounds {
  const low = new Vector3(Infinity, Infinity, Infinity);
  const high = new Vector3(-Infinity, -Infinity, -Infinity);
  const corners: Vector3[] = [];
  for (const { piece, box } of pieces) {
    const { x, y, z } = out.get(piece.key) ?? { x: 0, y: 0, z: 0 };
    const by = new Vector3(x, y, z + slidBy(piece, rear));
    for (const a of [box.low[0], box.high[0]])
      for (const b of [box.low[1], box.high[1]])
        for (const c of [box.low[2], box.high[2]]) {
          const corner = new Vector3(a, b, c).add(by);
          low.min(corner);
          high.max(corner);
          corners.push(corner);
        }
  }
  if (pieces.length === 0) return { middle: new Vector3(), radius: 1, corners };
  const middle = low.clone().add(high).multiplyScalar(0.5);
  return { middle, radius: high.distanceTo(middle), corners };
}
