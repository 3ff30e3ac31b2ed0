/** Labels of a face: sizes, fits, hole groups and the flange that bolts on. */
import type { Feature } from '../model/part.ts';
import { cos } from '../units/trig.ts';
import { anchorsOnCircle, type Caption } from './captions.ts';
import { holeGroups, polar, type Scene, surfaceOver, unturned, widest } from './face-scene.ts';
import { holeGroupLines } from './hole-text.ts';
import { diameterText, lengthText, limitsText } from './length-text.ts';
import { featureText } from './register-text.ts';
import { drillingEdges, outerEdges } from './round-edges.ts';

/** A label that may touch a circle about the axis anywhere on its right. */
function circleCaption(feature: Feature, lines: string[], r: number): Caption {
  return { lines, anchors: anchorsOnCircle({ x: 0, y: 0 }, r, 0, 80, 7), feature: feature.id };
}

const isFit = (feature: Feature): boolean => ['spigot', 'recess', 'wheel seat'].includes(feature.purpose);

/** Whether an edge of the outside shows on this face. */
const shows = (scene: Scene, r: number): boolean =>
  outerEdges(scene.outer, () => false).some((edge) => Math.abs(edge.r - r) < 1e-3);

/** All labels of a face, in the order of the part's features. */
export function faceCaptions(scene: Scene): Caption[] {
  const { input, rim } = scene;
  const { units, adapter, from } = input;
  const out: Caption[] = [];
  for (const feature of adapter.features) {
    const { diameter, limits } = feature;
    if (feature.purpose === 'flats' && adapter.flats) {
      const side = scene.seen(adapter.flats.angle);
      const near = cos((side * Math.PI) / 180) < -0.1 ? side + 180 : side;
      const half = Math.sqrt(Math.max(0, rim * rim - (adapter.flats.across / 2) ** 2));
      const anchors = [0.3, -0.3, 0.6, -0.6].map((k) => {
        const foot = polar(adapter.flats ? adapter.flats.across / 2 : 0, near);
        const along = polar(k * half, near + 90);
        return { x: foot.x + along.x, y: foot.y + along.y };
      });
      out.push({
        lines: [`${lengthText(adapter.flats.across, units)} across flats`],
        anchors,
        feature: feature.id,
      });
    }
    if (diameter === undefined) continue;
    if (feature.purpose === 'body') {
      out.push(circleCaption(feature, [`${diameterText(diameter, units)} outside`], diameter / 2));
    } else if (isFit(feature) && (feature.side === from || (feature.side === 'wheel' && shows(scene, diameter / 2)))) {
      const zone = limits ? ` ${limits.zone}` : '';
      const lines = [`${diameterText(diameter, units)}${zone.length <= 8 ? zone : ''}`, featureText(adapter, feature)];
      if (limits) lines.push(limitsText(limits.lower, limits.upper, units));
      out.push(circleCaption(feature, lines, diameter / 2));
    } else if (feature.purpose === 'bore') {
      out.push(circleCaption(feature, [`${diameterText(diameter, units)} bore`], diameter / 2));
    }
  }
  for (const { feature, holes } of holeGroups(scene)) {
    const edges = holes.flatMap((h) => {
      const open = drillingEdges(h, surfaceOver(scene, h));
      const r = open[0]?.r ?? widest(h);
      return [0, 25, -25, 50, -50].map((a) => ({ x: h.x + polar(r, a).x, y: h.y + polar(r, a).y }));
    });
    const right = edges.filter((p) => p.x > -0.2 * rim);
    out.push({
      lines: holeGroupLines(feature, unturned(scene, holes), units),
      anchors: right.length > 0 ? right : edges,
      feature: feature.id,
    });
  }
  if (input.mate !== null) {
    const r = input.mate / 2;
    const lines = [`${diameterText(input.mate, units)} flange`, `outside of the ${from} flange`];
    out.push({ lines, anchors: anchorsOnCircle({ x: 0, y: 0 }, r, 0, 80, 7) });
  }
  return out;
}
