/** Pre-flight of our own flat parts, for the report's sheet order: the very files that are made, read back. */
import { preflightDxf } from '../preflight/preflight.ts';
import type { SheetOrder } from '../report/sheet-lines.ts';
import { flatParts } from './order.ts';
import type { Making } from './product.ts';

/** One order a flat part; of several flavours the first is read: all show the same part. */
export async function sheetOrders(making: Making): Promise<SheetOrder[]> {
  const { joint } = making;
  const orders: SheetOrder[] = [];
  for (const { name, material, thickness, files, undersize } of flatParts(joint)) {
    const drawing = (await files.make(making)).find((file) => file.name.endsWith('.dxf'));
    if (drawing === undefined) continue;
    const { findings, facts } = preflightDxf(drawing.bytes, { thickness, material, profile: joint.job.sheet });
    const quantity = joint.job.sheet.quantity;
    orders.push({
      part: name,
      file: drawing.name,
      material: material.name,
      thickness,
      quantity,
      undersize,
      findings,
      facts,
    });
  }
  return orders;
}
