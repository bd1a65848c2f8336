import { PerspectiveCamera, Spherical, Vector2, Vector3, WebGLRenderer, WebGLRenderTarget } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { ShownSolids } from '../../model/shown.js';
import { type CameraScene, cameraScene, type Standing } from './scene.js';
import type { ViewName } from './views.js';
import { directions } from './views.js';

/** What the panel may have done on the canvas. */
export interface Stage {
  /**
   * Shows a camera in a set-up: from where one stood, since one wants to see what a change did.
   *
   * @param another whether it is that of another design: then it fills the picture as the first one does
   */
  readonly show: (solids: ShownSolids, setup: string, another: boolean) => void;
  readonly stand: (standing: Standing) => void;
  readonly lookFrom: (view: ViewName) => void;
  /** Turns to some pieces, by key or by part, and comes near. */
  readonly turnTo: (about: readonly string[]) => void;
  /** All of the camera again, from where one looks. */
  readonly showAll: () => void;
  /** By so much of a turn to the right and upwards. */
  readonly turn: (right: number, up: number) => void;
  /** Nearer below 1, farther above. */
  readonly approach: (by: number) => void;
  /** The part at a place of the canvas, in CSS px from its corner. */
  readonly partAt: (x: number, y: number) => string | null;
  /** As PNG, twice as fine as on the screen, on paper of this colour. */
  readonly picture: (paper: string) => Promise<Blob | null>;
}

/** So long after the last change the picture is drawn fine, ms. */
const REST = 150;
/** And at the latest so long after it; a camera that is new waits as long, for its sheets come before its finer picture. */
const MOST_REST = 600;
/** A fine picture has so many dots for each of the screen's. */
const FINE = 2;
/** A draft should take no longer, ms; where it does, it has so many dots for each of the screen's. */
const SLOW = 30;
const COARSE = 0.7;
/** Narrow as a long lens sees: nearly without perspective. */
const FIELD = 20;
/** Width of an edge on the screen, px. */
const LINE = 0.85;
/** How long the eye takes from one place to another, ms. */
const TURNING = 450;

/** Throws where the browser has no WebGL. */
export function openStage(canvas: HTMLCanvasElement): Stage {
  const renderer = new WebGLRenderer({
    canvas,
    antialias: false,
    alpha: true,
    stencil: true,
    powerPreference: 'low-power',
  });
  renderer.autoClear = true;
  renderer.setClearColor(0x000000, 0);
  renderer.sortObjects = true;
  const camera = new PerspectiveCamera(FIELD, 1, 10, 10_000);
  const orbit = new OrbitControls(camera, canvas);
  orbit.enableDamping = false;
  orbit.zoomToCursor = true;
  // the style says which touches are the page's own: where it scrolls, a finger that goes up or down
  canvas.style.touchAction = '';
  const target = new WebGLRenderTarget(1, 1);
  const now = {
    camera: null as CameraScene | null,
    asked: false,
    resting: 0,
    /** Whether a button is down, or a finger. */
    held: false,
    last: 0,
    turning: 0,
    /** From how far all fills the picture, from where one looks. */
    filled: 1,
    standing: null as Standing | null,
    drawn: 0,
    /** When a draft was drawn last, how long one takes of late, ms, and whether that is too long. */
    drafted: 0,
    pace: 0,
    coarse: false,
  };

  function draw(quality: 'draft' | 'fine'): void {
    const { camera: built } = now;
    if (built === null || canvas.clientWidth === 0) return;
    const ratio = quality === 'fine' ? FINE * Math.min(1.5, devicePixelRatio) : draftRatio();
    if (renderer.getPixelRatio() !== ratio) renderer.setPixelRatio(ratio);
    render(built, quality === 'fine' ? LINE * ratio : null);
    now.drawn += 1;
    canvas.dataset.drawn = String(now.drawn);
    canvas.dataset.quality = quality;
    canvas.dataset.calls = String(renderer.info.render.calls);
  }

  /** Where one picture is long in following another, the next ones have fewer dots, until all is at rest again. */
  function draftRatio(): number {
    const time = performance.now();
    const own = time - now.drafted;
    now.drafted = time;
    now.pace = own > REST ? 0 : now.pace + (own - now.pace) / 4;
    if (now.pace > SLOW) now.coarse = true;
    return now.coarse ? COARSE : 1;
  }

  function render(built: CameraScene, line: number | null): void {
    placeEyeDepth(built);
    const room = renderer.getDrawingBufferSize(new Vector2());
    built.measure({ eye: camera.position, room, line, depth: camera.far - camera.near });
    renderer.render(built.scene, camera);
  }

  /** The depths that are told apart lie round what is shown, and no farther: the lines need that. */
  function placeEyeDepth(built: CameraScene): void {
    const { middle, radius } = built.bounds();
    const away = camera.position.distanceTo(middle);
    camera.near = Math.max(1, away - radius * 1.05);
    camera.far = away + radius * 1.05;
    camera.updateProjectionMatrix();
    camera.updateMatrixWorld();
  }

  /** Draws before the next picture, roughly; when nothing has changed for a while, finely. */
  function ask(least = REST): void {
    canvas.dataset.quality = 'draft';
    clearTimeout(now.resting);
    const time = performance.now();
    // on a slow machine a hand that drags seems to rest between two pictures
    const pause = Math.min(MOST_REST, Math.max(least, 3 * (time - now.last)));
    now.last = time;
    now.resting = window.setTimeout(rest, pause);
    if (now.asked) return;
    now.asked = true;
    requestAnimationFrame(() => {
      now.asked = false;
      draw('draft');
    });
  }

  /** Not under a hand that still holds something: it would wait for the fine picture before it could go on. */
  function rest(): void {
    if (now.held) return;
    now.coarse = false;
    requestAnimationFrame(() => draw('fine'));
  }

  function fillFrom(from: Vector3): void {
    if (now.camera === null) return;
    const { middle, corners } = now.camera.bounds();
    now.filled = distanceFor(middle, corners, from);
    moveTo(middle, from, now.filled);
  }

  /** From how far corners fill the picture, for an eye in this direction that looks at the middle. */
  function distanceFor(middle: Vector3, corners: readonly Vector3[], from: Vector3): number {
    const back = from.clone().normalize();
    const right = new Vector3(0, 1, 0).cross(back).normalize();
    const up = back.clone().cross(right);
    const high = Math.tan(((FIELD / 2) * Math.PI) / 180);
    const wide = high * camera.aspect;
    let distance = 1;
    for (const corner of corners) {
      const at = corner.clone().sub(middle);
      const own = Math.max(Math.abs(at.dot(right)) / wide, Math.abs(at.dot(up)) / high) + at.dot(back);
      distance = Math.max(distance, own);
    }
    return distance * MARGIN;
  }

  /** At once, or by and by where the reader has nothing against motion. */
  function moveTo(at: Vector3, from: Vector3, distance: number, slowly = false): void {
    cancelAnimationFrame(now.turning);
    const end = { at: at.clone(), ball: new Spherical().setFromVector3(from.clone()) };
    end.ball.makeSafe();
    const set = (middle: Vector3, ball: Spherical) => {
      orbit.target.copy(middle);
      camera.position.setFromSpherical(ball).add(middle);
      orbit.update();
    };
    end.ball.radius = distance;
    if (!slowly || matchMedia('(prefers-reduced-motion: reduce)').matches) {
      set(end.at, end.ball);
      ask();
      return;
    }
    const begin = {
      at: orbit.target.clone(),
      ball: new Spherical().setFromVector3(camera.position.clone().sub(orbit.target)),
      time: performance.now(),
    };
    // the short way round
    const round = ((end.ball.theta - begin.ball.theta + 3 * Math.PI) % (2 * Math.PI)) - Math.PI;
    const step = (time: number) => {
      const share = Math.min(1, Math.max(0, (time - begin.time) / TURNING));
      const t = share * share * (3 - 2 * share);
      set(
        begin.at.clone().lerp(end.at, t),
        new Spherical(
          begin.ball.radius * (end.ball.radius / begin.ball.radius) ** t,
          begin.ball.phi + (end.ball.phi - begin.ball.phi) * t,
          begin.ball.theta + round * t,
        ),
      );
      ask();
      if (share < 1) now.turning = requestAnimationFrame(step);
    };
    now.turning = requestAnimationFrame(step);
  }

  document.addEventListener('pointerdown', () => (now.held = true), true);
  for (const end of ['pointerup', 'pointercancel'])
    document.addEventListener(
      end,
      () => {
        now.held = false;
        if (canvas.dataset.quality === 'draft') ask();
      },
      true,
    );
  orbit.addEventListener('start', () => cancelAnimationFrame(now.turning));
  orbit.addEventListener('change', () => ask());
  new ResizeObserver(() => {
    const { clientWidth: width, clientHeight: height } = canvas;
    if (width === 0 || height === 0) return;
    renderer.setSize(width, height, false);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    if (now.camera !== null) fillAgain(now.camera, orbit.target.clone());
    // a canvas of another size is empty until it is drawn
    draw('draft');
    ask();
  }).observe(canvas);
  canvas.addEventListener('webglcontextrestored', () => ask());

  return {
    show: (solids, setup, another) => {
      const before = now.camera;
      const wasWhole = before !== null && isInSight(before);
      now.camera = cameraScene(solids, setup);
      if (now.standing !== null) now.camera.stand(now.standing);
      before?.free();
      canvas.dataset.pieces = String(now.camera.pieces.length);
      orbit.minDistance = 60;
      orbit.maxDistance = 9000;
      if (before === null) {
        const { clientWidth, clientHeight } = canvas;
        if (clientWidth > 0 && clientHeight > 0) {
          renderer.setSize(clientWidth, clientHeight, false);
          camera.aspect = clientWidth / clientHeight;
        }
        fillFrom(directions.corner);
      } else if (another) fillFrom(camera.position.clone().sub(orbit.target));
      // what was seen whole stays so when it has grown
      else if (wasWhole && !isInSight(now.camera)) fillFrom(camera.position.clone().sub(orbit.target));
      ask(MOST_REST);
    },
    stand: (standing) => {
      const wasApart = (now.standing?.out.size ?? 0) > 0;
      now.standing = standing;
      if (now.camera === null) return;
      now.camera.stand(standing);
      if (wasApart || standing.out.size > 0) keepInSight(now.camera);
      ask();
    },
    lookFrom: (view) => {
      if (now.camera === null) return;
      const { middle, corners } = now.camera.bounds();
      now.filled = distanceFor(middle, corners, directions[view]);
      moveTo(middle, directions[view], now.filled, true);
    },
    turnTo: (about) => {
      if (now.camera === null) return;
      const whole = now.camera.bounds();
      const own = now.camera.bounds(({ piece }) => about.includes(piece.key) || about.includes(piece.part));
      const outwards = own.middle.clone().sub(whole.middle);
      const from = directions.corner
        .clone()
        .normalize()
        .multiplyScalar(0.7)
        .add(outwards.multiplyScalar(1.6 / whole.radius));
      if (from.length() < 0.1) from.copy(directions.corner);
      const distance = distanceFor(own.middle, own.corners, from);
      moveTo(own.middle, from, Math.max(1.5 * distance, 0.45 * distanceFor(whole.middle, whole.corners, from)), true);
    },
    showAll: () => {
      if (now.camera === null) return;
      const { middle, corners } = now.camera.bounds();
      const away = camera.position.clone().sub(orbit.target);
      now.filled = distanceFor(middle, corners, away);
      moveTo(middle, away, now.filled, true);
    },
    turn: (right, up) => {
      const ball = new Spherical().setFromVector3(camera.position.clone().sub(orbit.target));
      ball.theta += right;
      ball.phi -= up;
      ball.makeSafe();
      camera.position.setFromSpherical(ball).add(orbit.target);
      orbit.update();
      ask();
    },
    approach: (by) => {
      camera.position.sub(orbit.target).multiplyScalar(by).add(orbit.target);
      orbit.update();
      ask();
    },
    partAt: (x, y) => {
      const { camera: built } = now;
      if (built === null) return null;
      placeEyeDepth(built);
      camera.setViewOffset(canvas.clientWidth, canvas.clientHeight, Math.floor(x), Math.floor(y), 1, 1);
      built.picking(true);
      renderer.setRenderTarget(target);
      renderer.render(built.scene, camera);
      const met = new Uint8Array(4);
      renderer.readRenderTargetPixels(target, 0, 0, 1, 1, met);
      renderer.setRenderTarget(null);
      built.picking(false);
      if (now.standing !== null) built.stand(now.standing);
      camera.clearViewOffset();
      const number = (met[0] as number) + 256 * (met[1] as number) - 1;
      return built.pieces[number]?.piece.part ?? null;
    },
    picture: (paper) => {
      const { camera: built } = now;
      if (built === null) return Promise.resolve(null);
      renderer.setClearColor(paper, 1);
      renderer.setPixelRatio(FINE);
      render(built, LINE * FINE);
      const made = new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
      renderer.setClearColor(0x000000, 0);
      ask();
      return made;
    },
  };

  /** Whether no corner is cut off by the edge of the picture. */
  function isInSight(built: CameraScene): boolean {
    camera.updateMatrixWorld();
    return built.bounds().corners.every((corner) => {
      const { x, y } = corner.clone().project(camera);
      return Math.abs(x) <= 1 && Math.abs(y) <= 1;
    });
  }

  /** A camera that comes apart stays in the middle, and fills as much of the picture as before. */
  function keepInSight(built: CameraScene): void {
    fillAgain(built, built.bounds().middle);
  }

  /** Looks at another middle from so far that as much is filled as before. */
  function fillAgain(built: CameraScene, middle: Vector3): void {
    const away = camera.position.clone().sub(orbit.target);
    const filled = distanceFor(middle, built.bounds().corners, away);
    orbit.target.copy(middle);
    camera.position.copy(middle).addScaledVector(away, filled / now.filled);
    now.filled = filled;
    orbit.update();
  }
}

/** Round what fills the picture. */
const MARGIN = 1.04;
