/**
 * Exact geometry of closed contours of lines and true arcs: what other rooms may ask of a contour. mm,
 * radians.
 */
export {
  type AreaMoments,
  areaMoments,
  contourArea,
  contourCentroid,
  faceMoments,
  sheetMass,
} from './contour-area.ts';
export { type ContourFault, contourFaults } from './contour-faults.ts';
export { type Gap, leastGap } from './contour-gap.ts';
export { type PolarNode, polarRun, radiusAlong } from './contour-polar.ts';
export { type PolygonSide, polygonise } from './contour-polygon.ts';
export {
  type ArcStretch,
  type Box,
  contourBox,
  contourLength,
  type LineStretch,
  pointInContour,
  type Stretch,
  stretchBetween,
  stretchesOf,
  stretchLength,
} from './contour-stretch.ts';
export { holesStandApart } from './holes-apart.ts';
