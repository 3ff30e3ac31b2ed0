/** The box of a drawing: everything in it, and a margin. */
import type { Drawing, Shape } from '../model/drawing.ts';
import { type Box, textBox } from './text-size.ts';

/** Box round a shape, mm; an arc counts as its whole circle. */
export function shapeBox(shape: Shape): Box {
  switch (shape.kind) {
    case 'line':
      return {
        xMin: Math.min(shape.from.x, shape.to.x),
        yMin: Math.min(shape.from.y, shape.to.y),
        xMax: Math.max(shape.from.x, shape.to.x),
        yMax: Math.max(shape.from.y, shape.to.y),
      };
    case 'circle':
    case 'arc':
      return {
        xMin: shape.centre.x - shape.r,
        yMin: shape.centre.y - shape.r,
        xMax: shape.centre.x + shape.r,
        yMax: shape.centre.y + shape.r,
      };
    case 'path': {
      let [xMin, yMin, xMax, yMax] = [Infinity, Infinity, -Infinity, -Infinity];
      // A bulge of b reaches b times half the chord beyond it; the whole chord is a safe guess for b <= 2.
      for (const loop of shape.loops) {
        for (const { x, y } of loop) {
          xMin = Math.min(xMin, x);
          yMin = Math.min(yMin, y);
          xMax = Math.max(xMax, x);
          yMax = Math.max(yMax, y);
        }
      }
      return { xMin, yMin, xMax, yMax };
    }
    case 'text':
      return textBox(shape);
  }
}

/** Makes a drawing of shapes, with a box that holds them all and `margin` mm round them. */
export function frame(
  about: { readonly id: string; readonly title: string; readonly description: string },
  shapes: readonly Shape[],
  margin: number,
): Drawing {
  let box: Box = { xMin: 0, yMin: 0, xMax: 0, yMax: 0 };
  shapes.forEach((shape, i) => {
    const b = shapeBox(shape);
    box =
      i === 0
        ? b
        : {
            xMin: Math.min(box.xMin, b.xMin),
            yMin: Math.min(box.yMin, b.yMin),
            xMax: Math.max(box.xMax, b.xMax),
            yMax: Math.max(box.yMax, b.yMax),
          };
  });
  return {
    ...about,
    box: {
      xMin: box.xMin - margin,
      yMin: box.yMin - margin,
      xMax: box.xMax + margin,
      yMax: box.yMax + margin,
    },
    shapes,
  };
}
