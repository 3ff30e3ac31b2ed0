/** Every fault that a drawing file can have, with its stable code, how bad it is, why it matters and what cures it. */
import type { Verdict } from '../model/finding.ts';

export interface FaultKind {
  readonly title: string;
  readonly verdict: Verdict;
  readonly why: string;
  readonly cure: string;
}

const fault = (title: string, verdict: Verdict, why: string, cure: string): FaultKind => ({
  title,
  verdict,
  why,
  cure,
});

/** Faults of entities, lines and contours. What concerns the whole file or a service's limits is in files of its own. */
export const faultKinds = {
  'dxf-truncated': fault(
    'file that breaks off',
    'fail',
    'The file does not end as a DXF ends (0, EOF): part of it is missing, and nobody can tell which.',
    'Save or send the file again, and compare its size.',
  ),
  'dxf-bad-number': fault(
    'number that is none',
    'fail',
    'A coordinate, radius or angle is missing, is not a number, or is beyond any drawing. Each reader puts the entity somewhere else.',
    'Delete the entity and draw it again, or save the file again. A comma as decimal mark is a common slip: DXF wants a point.',
  ),
  'dxf-bad-bulge': fault(
    'arc without ends',
    'fail',
    'A bulge between two corners at one place describes no arc: a whole circle cannot be written so.',
    'Draw a CIRCLE, or two half-circles with a corner each.',
  ),
  'dxf-far-away': fault(
    'drawing far from its origin',
    'caution',
    'Far from the origin single-precision readers lose hundredths of a millimetre, and zooming to the part fails.',
    'Move the part to the origin and save it again.',
  ),
  'dxf-text': fault(
    'text in the drawing',
    'caution',
    'Text is dropped by one reader and cut by another.',
    'Delete it, or turn it into outlines on a layer of its own that is named as engraving; give words in the order.',
  ),
  'dxf-dimensions': fault(
    'dimensions in the drawing',
    'caution',
    'Dimension lines and leaders get cut, or stop an automatic quotation.',
    'Delete them from the file that is sent; keep them in the paper drawing.',
  ),
  'dxf-hatch': fault(
    'hatches or filled areas in the drawing',
    'caution',
    'A hatch or a fill is no cut, and some readers turn it into hundreds of lines.',
    'Delete it.',
  ),
  'dxf-points': fault(
    'points or centre marks in the drawing',
    'caution',
    'A point is no cut: some machines pierce it.',
    'Delete it, or order the centre punching in words.',
  ),
  'dxf-pictures': fault(
    'pictures in the drawing',
    'caution',
    'An embedded picture is no cut and is often a link to a file that nobody else has.',
    'Delete it.',
  ),
  'dxf-construction': fault(
    'endless construction lines in the drawing',
    'fail',
    'A line without end cannot be cut and spoils the extents of the part.',
    'Delete it.',
  ),
  'dxf-solids': fault(
    'solid or surface in the drawing',
    'fail',
    'A solid, region, mesh or face is no outline: most readers drop it, and the cut with it.',
    'Export the flat outline as lines and arcs.',
  ),
  'dxf-unknown-entity': fault(
    'entity of an unknown kind',
    'caution',
    'This kind is not of the published format or is not read here. Other readers may drop it too.',
    'Explode it into lines and arcs, or delete it.',
  ),
  'dxf-splines': fault(
    'splines',
    'caution',
    'Splines are chopped into short lines by each importer in its own way: bores become polygons. Here they were followed within 0.002 mm.',
    'Convert them to arcs and lines within 0.01 mm before sending.',
  ),
  'dxf-spline-points': fault(
    'spline without control points',
    'fail',
    'Only points that the curve passes are given: the way between them is every program’s own guess.',
    'Save the spline with its control points, or convert it to arcs.',
  ),
  'dxf-ellipses': fault(
    'ellipses',
    'caution',
    'Many machines know no ellipse and chop it into lines. Here it was followed within 0.002 mm. A circle drawn as an ellipse often comes from a view that was not square on.',
    'Draw circles as circles; convert true ellipses to arcs.',
  ),
  'dxf-wide-lines': fault(
    'polyline with a width',
    'caution',
    'A line drawn thick has two edges: some importers cut both.',
    'Set the width of the polyline to 0.',
  ),
  'dxf-height': fault(
    'drawing that does not lie at height 0',
    'caution',
    'A cut has no height: some readers refuse one, others project it.',
    'Flatten the drawing to z = 0.',
  ),
  'dxf-not-flat': fault(
    'drawing that is not flat',
    'fail',
    'Entities stand at different heights, so ends that look joined are not.',
    'Flatten the drawing to z = 0 and join it again.',
  ),
  'dxf-tilted': fault(
    'entity in a tilted plane',
    'fail',
    'Its plane is not the plane of the sheet: seen from above it has another shape, or none.',
    'Draw it flat, or project it to the plane of the sheet.',
  ),
  'dxf-mirrored-plane': fault(
    'entity seen from behind',
    'caution',
    'Its plane faces down (extrusion 0, 0, -1). Readers that pass that over draw it mirrored. Here it was turned back.',
    'Draw it anew in the plane of the sheet, or explode and mirror it twice.',
  ),
  'dxf-mirrored-block': fault(
    'block put in mirrored',
    'caution',
    'A mirrored block is turned back wrongly by some readers: a left part becomes a right one.',
    'Explode the block, then check which hand the part has.',
  ),
  'dxf-stretched-block': fault(
    'block stretched unevenly',
    'caution',
    'Scaled differently along x and y, its circles become ellipses.',
    'Explode the block and draw its circles anew.',
  ),
  'dxf-missing-block': fault(
    'block that is not in the file',
    'fail',
    'The drawing puts in a block that the file does not hold: a part of the drawing is missing.',
    'Bind or explode the block, then save again.',
  ),
  'dxf-block-loop': fault(
    'block that holds itself, or more entities than any part has',
    'fail',
    'The blocks call each other without end, or come to more than any part has.',
    'Explode the blocks, and send one part a file.',
  ),
  'dxf-hidden-layers': fault(
    'entities on layers that are off, frozen or not plotted',
    'caution',
    'One reader cuts what is hidden, another leaves it out. Here it was left out.',
    'Delete what is not to be cut; show what is.',
  ),
  'dxf-paper-space': fault(
    'entities in paper space',
    'caution',
    'Title blocks and views are not the part, at another scale at that. Here they were left out.',
    'Send model space only.',
  ),
  'dxf-zero-length': fault(
    'entities without length',
    'fail',
    'The machine pierces, goes nowhere, and burns a pit.',
    'Delete them (an "overkill" or clean-up of the drawing does).',
  ),
  'dxf-tiny-segments': fault(
    'segments too short to cut',
    'caution',
    'Segments under 0.01 mm make the machine stutter and are what is left of bad joins.',
    'Simplify the contour, or draw it anew from lines and arcs.',
  ),
  'dxf-duplicates': fault(
    'entities drawn twice',
    'fail',
    'The same cut is made twice: it burns the edge and is paid twice.',
    'Delete one of each pair.',
  ),
  'dxf-overlap': fault(
    'lines or arcs that lie on one another',
    'fail',
    'Part of a cut is made twice, and the contour cannot be followed.',
    'Trim or join them so that each edge is drawn once.',
  ),
  'dxf-open-contour': fault(
    'open contours',
    'fail',
    'A contour that does not close has no inside: the part does not come out, or the file is refused.',
    'Close the gap: extend, trim or join the two ends.',
  ),
  'dxf-branch': fault(
    'more than two ends at one place',
    'fail',
    'Where three lines meet nobody can tell which two are the contour.',
    'Delete the line that does not belong to the contour.',
  ),
  'dxf-self-crossing': fault(
    'contours that cross themselves',
    'fail',
    'A contour that crosses or touches itself has no clear inside.',
    'Trim it where it crosses.',
  ),
  'dxf-crossing': fault(
    'contours that cross or touch each other',
    'fail',
    'Two cuts meet: a piece falls out that was meant to stay, or the web between them has no width.',
    'Move or trim them, or unite them into one contour.',
  ),
  'dxf-island': fault(
    'contours deeper than a hole in a part',
    'caution',
    'A contour inside a hole is a part of its own in the scrap of the first, or was meant as something else.',
    'Send it as a part of its own, or delete it.',
  ),
  'dxf-hole-outside': fault(
    'hole outside the part',
    'fail',
    'A small round contour lies beside the outline: a hole that slid off its part.',
    'Move it back, or delete it.',
  ),
  'dxf-several-parts': fault(
    'several parts in one file',
    'caution',
    'A service that counts one part a file quotes and nests this wrongly.',
    'Send one part a file, with its quantity.',
  ),
} as const satisfies Readonly<Record<string, FaultKind>>;

export type FaultCode = keyof typeof faultKinds;
