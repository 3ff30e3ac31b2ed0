/** The view in space itself. The only file that names its package. */
import {
  AmbientLight,
  Mesh as Body,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  DoubleSide,
  MeshStandardMaterial,
  PerspectiveCamera,
  Plane,
  Scene as Space,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { LiveBody } from '../core.ts';

export interface Scene {
  /** Puts bodies in place of those that are shown. */
  show(bodies: readonly LiveBody[]): void;
  /** Pulls the bodies apart by so many mm, and cuts them open along the axis. */
  place(apart: number, isCut: boolean): void;
}

const colours: Readonly<Record<LiveBody['id'], number>> = { adapter: 0x9fb4c8, wheel: 0xc8a39f };

/** Opens a view on a canvas. Throws where the browser has no WebGL. */
export function openScene(canvas: HTMLCanvasElement): Scene {
  const renderer = new WebGLRenderer({ canvas, antialias: true });
  renderer.localClippingEnabled = true;
  const space = new Space();
  space.background = new Color(0xf4f5f6);
  const camera = new PerspectiveCamera(32, canvas.width / canvas.height, 1, 5000);
  camera.up.set(0, 0, 1);
  const sun = new DirectionalLight(0xffffff, 2.4);
  sun.position.set(200, -300, 400);
  space.add(new AmbientLight(0xffffff, 1.4), sun);
  const orbit = new OrbitControls(camera, canvas);
  const half = new Plane(new Vector3(0, 1, 0), 0);
  let shown: {
    readonly id: LiveBody['id'];
    readonly body: Body<BufferGeometry, MeshStandardMaterial>;
    readonly z: number;
  }[] = [];
  let isFirst = true;
  const draw = () => renderer.render(space, camera);
  orbit.addEventListener('change', draw);

  return {
    show(bodies) {
      for (const { body } of shown) {
        space.remove(body);
        body.geometry.dispose();
        body.material.dispose();
      }
      let reach = 1;
      shown = bodies.map(({ id, mesh, z }) => {
        const geometry = new BufferGeometry();
        geometry.setAttribute('position', new BufferAttribute(Float32Array.from(mesh.positions), 3));
        geometry.setIndex(new BufferAttribute(mesh.triangles, 1));
        // Flat facets show edges as the mill leaves them.
        const faceted = geometry.toNonIndexed();
        faceted.computeVertexNormals();
        geometry.dispose();
        faceted.computeBoundingSphere();
        reach = Math.max(reach, faceted.boundingSphere?.radius ?? 1);
        const material = new MeshStandardMaterial({
          color: colours[id],
          roughness: 0.6,
          metalness: 0.15,
          side: DoubleSide,
        });
        const body = new Body(faceted, material);
        space.add(body);
        return { id, body, z };
      });
      if (isFirst) camera.position.set(1.6 * reach, -2.4 * reach, 1.8 * reach);
      isFirst = false;
      orbit.update();
      draw();
    },
    place(apart, isCut) {
      for (const { id, body, z } of shown) {
        body.position.z = z + (id === 'wheel' ? apart : 0);
        body.material.clippingPlanes = isCut ? [half] : [];
        body.material.needsUpdate = true;
      }
      draw();
    },
  };
}
