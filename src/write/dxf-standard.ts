/**
 * DXF, standard flavour: release AC1021, closed LWPOLYLINE with true bulges, circles as CIRCLE, units
 * declared.
 */
import { DxfWriter, LWPolylineFlags, point3d, Units } from '@tarikjabiri/dxf';
import type { SheetPart } from '../model/sheet.ts';
import { CUT_LAYER, cutsOf } from './dxf-cuts.ts';

/**
 * The DXF of a sheet part as text, in mm, every cut one closed entity on the layer CUT. Same part, same
 * bytes.
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
  return dxf.stringify();
}
