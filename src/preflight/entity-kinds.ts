/** Kinds of entities that are no cut, and the fault that each of them is. */
import type { FaultCode } from './fault-kinds.ts';

const named: Readonly<Partial<Record<FaultCode, readonly string[]>>> = {
  'dxf-text': ['TEXT', 'MTEXT', 'ATTRIB', 'ATTDEF', 'RTEXT', 'ARCALIGNEDTEXT', 'ACAD_TABLE', 'SHAPE'],
  'dxf-dimensions': [
    'DIMENSION',
    'ARC_DIMENSION',
    'LARGE_RADIAL_DIMENSION',
    'LEADER',
    'MULTILEADER',
    'MLEADER',
    'TOLERANCE',
  ],
  'dxf-hatch': ['HATCH', 'MPOLYGON', 'SOLID', 'TRACE'],
  'dxf-points': ['POINT'],
  'dxf-pictures': [
    'IMAGE',
    'WIPEOUT',
    'OLEFRAME',
    'OLE2FRAME',
    'PDFUNDERLAY',
    'DWFUNDERLAY',
    'DGNUNDERLAY',
    'UNDERLAY',
  ],
  'dxf-construction': ['XLINE', 'RAY'],
  'dxf-solids': [
    '3DFACE',
    '3DSOLID',
    'BODY',
    'REGION',
    'MESH',
    'SURFACE',
    'EXTRUDEDSURFACE',
    'LOFTEDSURFACE',
    'REVOLVEDSURFACE',
    'SWEPTSURFACE',
    'PLANESURFACE',
    'NURBSURFACE',
    'HELIX',
  ],
};

const faultOf = new Map<string, FaultCode>(
  (Object.entries(named) as [FaultCode, readonly string[]][]).flatMap(([code, kinds]) =>
    kinds.map((kind): [string, FaultCode] => [kind, code]),
  ),
);

/** The fault that an entity of this kind is when it stands among the cuts. */
export const faultOfKind = (type: string): FaultCode => faultOf.get(type) ?? 'dxf-unknown-entity';

/** Parts of other entities, and windows of paper space: nothing by themselves. */
export const silentKinds: ReadonlySet<string> = new Set(['SEQEND', 'VERTEX', 'VIEWPORT', 'ENDBLK']);

/** Layers whose lines are bent, engraved or marked, not cut, by the words in their names. */
const markWords = /(^|[^a-z])(bend|fold|engrav\w*|etch\w*|mark\w*|scor\w*|scrib\w*)([^a-z]|$|s|ing|line|lines)/i;

/** True for a layer that says by its name that it is not cut through. */
export const isMarkLayer = (layer: string): boolean => markWords.test(layer.replace(/([a-z])([A-Z])/g, '$1 $2'));

/** A layer that drawing programs keep for the feet of dimensions and never plot. */
export const neverPlotted = 'defpoints';
