/** The view in space itself. The only file that names its package. */
import {
  AmbientLight,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  Group,
  InstancedMesh,
  Matrix4,
  MeshStandardMaterial,
  PerspectiveCamera,
  Plane,
  Scene as Space,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { LiveBody } from '../../core.ts';

export interface SceneView {
  /** Pulls the bodies apart by so many mm. */
  readonly apart: number;
  /** Cuts them open along a plane through the axis, turned by so many degrees; null: whole. */
  readonly cut: number | null;
  /** Whether what was there before is shown, as ghosts. */
  readonly ghosts: boolean;
}

export interface Scene {
  /** Puts bodies in place of those that are shown. @param isOther the eye goes back to where it sees all of them */
  show(bodies: readonly LiveBody[], view: SceneView, isOther: boolean): void;
  place(view: SceneView): void;
  /** Gives back the graphics memory. */
  close(): void;
}

/** A ghost lets so much of what lies behind it be seen. */
const ghostly = 0.22;

/** Where a copy of a body stands, less what it is pulled apart. */
function standing({ x, y, z, turnedOver, axes }: LiveBody['places'][number]): Matrix4 {
  const [ax, az] = axes ? [axes.x, axes.z] : turnedOver ? [[1, 0, 0] as const, [0, 0, -1] as const] : [null, null];
  const matrix = new Matrix4();
  if (ax && az) {
    const [right, up] = [new Vector3(...ax), new Vector3(...az)];
    matrix.makeBasis(right, new Vector3().crossVectors(up, right), up);
  }
  return matrix.setPosition(x, y, z);
}

/** Flat facets show edges as the mill leaves them. */
function faceted({ positions, triangles }: LiveBody['meshes'][number]): BufferGeometry {
  const corners = new Float32Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    const from = 3 * (triangles[i] as number);
    corners[3 * i] = positions[from] as number;
    corners[3 * i + 1] = positions[from + 1] as number;
    corners[3 * i + 2] = positions[from + 2] as number;
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(corners, 3));
  geometry.computeVertexNormals();
  return geometry;
}

interface Shown {
  readonly of: LiveBody;
  readonly copies: InstancedMesh<BufferGeometry, MeshStandardMaterial>;
  readonly standing: readonly Matrix4[];
}

/** Opens a view on a canvas. Throws where the browser has no WebGL. */
export function openScene(canvas: HTMLCanvasElement): Scene {
  const renderer = new WebGLRenderer({ canvas, antialias: true });
  renderer.localClippingEnabled = true;
  const space = new Space();
  space.background = new Color(0xf4f5f6);
  const camera = new PerspectiveCamera(32, canvas.width / canvas.height, 1, 8000);
  camera.up.set(0, 0, 1);
  const sun = new DirectionalLight(0xffffff, 2.4);
  sun.position.set(200, -300, 400);
  const bench = new Group();
  space.add(new AmbientLight(0xffffff, 1.4), sun, bench);
  const orbit = new OrbitControls(camera, canvas);
  const half = new Plane(new Vector3(0, 1, 0), 0);
  let shown: Shown[] = [];
  let isDrawn = false;
  // However often something moves within a frame, it is drawn once.
  const draw = () => {
    if (isDrawn) return;
    isDrawn = true;
    requestAnimationFrame(() => {
      isDrawn = false;
      renderer.render(space, camera);
    });
  };
  orbit.addEventListener('change', draw);

  const clear = () => {
    for (const { copies } of shown) {
      bench.remove(copies);
      copies.geometry.dispose();
      copies.material.dispose();
      copies.dispose();
    }
    shown = [];
  };

  const place = ({ apart, cut, ghosts }: SceneView) => {
    const turn = ((cut ?? 0) * Math.PI) / 180;
    half.normal.set(Math.sin(turn), Math.cos(turn), 0);
    const lift = new Matrix4();
    for (const { of, copies, standing: at } of shown) {
      copies.visible = ghosts || of.role !== 'there';
      copies.material.clippingPlanes = cut === null ? [] : [half];
      for (const [i, matrix] of at.entries()) {
        lift.makeTranslation(0, 0, apart * (of.places[i]?.apart ?? 0));
        copies.setMatrixAt(i, lift.multiply(matrix));
      }
      copies.instanceMatrix.needsUpdate = true;
      copies.computeBoundingSphere();
    }
    draw();
  };

  /** The eye is set back until everything is in sight. */
  const look = () => {
    const middle = new Vector3();
    let reach = 1;
    for (const { copies } of shown) {
      const sphere = copies.boundingSphere;
      if (sphere) reach = Math.max(reach, sphere.center.length() + sphere.radius);
    }
    camera.position.set(1.5 * reach, -2.3 * reach, 1.7 * reach);
    orbit.target.copy(middle);
    orbit.update();
  };

  return {
    show(bodies, view, isOther) {
      clear();
      for (const of of bodies) {
        for (const mesh of of.meshes) {
          const isGhost = of.role === 'there';
          const material = new MeshStandardMaterial({
            color: new Color(of.colour),
            roughness: 0.6,
            metalness: 0.15,
            side: DoubleSide,
            ...(isGhost ? { transparent: true, opacity: ghostly, depthWrite: false } : {}),
          });
          const copies = new InstancedMesh(faceted(mesh), material, of.places.length);
          bench.add(copies);
          shown.push({ of, copies, standing: of.places.map(standing) });
        }
      }
      place(view);
      if (isOther) look();
      canvas.dataset.bodies = bodies.map(({ name }) => name).join('; ');
    },
    place,
    close() {
      clear();
      orbit.dispose();
      renderer.dispose();
    },
  };
}
