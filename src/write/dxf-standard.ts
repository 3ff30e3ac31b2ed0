/**
 * DXF, standard flavour: release AC1021, closed LWPOLYLINE with true bulges, circles as CIRCLE, units
 * declared.
 */
import { DxfWriter, LWPolylineFlags, point3d, Units } from '@tarikjabiri/dxf';
import type { SheetPart } from '../model/sheet.ts';
import { bendLayersOf, bendMarksOf, CUT_LAYER, cutsOf, LAYER_COLOURS } from './dxf-cuts.ts';

/**
 * The DXF of a sheet part as text, in mm, every cut one closed entity on the layer CUT, bend lines as LINE on BEND_UP and
 * BEND_DOWN. Same part, same bytes.
 */
export function writeDxfStandard(part: SheetPart): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  dxf.setVariable('$MEASUREMENT', { 70: 1 });
  dxf.setVariable('$LASTSAVEDBY', { 1: 'flangewright' });
  dxf.addLayer(CUT_LAYER, 7, 'Continuous');
  dxf.setCurrentLayerName(CUT_LAYER);
  for (const cut of cutsOf(part)) {
    if (cut.kind === 'circle') {
      dxf.addCircle(point3d(cut.x, cut.y, 0), cut.r);
      continue;
    }
    const vertices = cut.vertices.map(({ x, y, bulge }) => ({
      point: { x, y },
      ...(bulge === 0 ? {} : { bulge }),
    }));
    dxf.addLWPolyline(vertices, { flags: LWPolylineFlags.Closed });
  }
  for (const layer of bendLayersOf(part)) dxf.addLayer(layer, LAYER_COLOURS[layer], 'Continuous');
  for (const { layer, x1, y1, x2, y2 } of bendMarksOf(part)) {
    dxf.addLine(point3d(x1, y1, 0), point3d(x2, y2, 0), { layerName: layer });
  }
  return dxf.stringify();
}
