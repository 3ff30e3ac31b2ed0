/** Bytes that call themselves a DXF: the text of one, or what they really are. */
import type { PlacedFinding } from '../model/preflight.ts';
import { mostBytes } from './limits.ts';

export type FileText =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly finding: PlacedFinding };

/** Beginnings by which other files are known, and what to do about them. */
const others: readonly { readonly start: RegExp; readonly what: string }[] = [
  { start: /^%PDF/, what: 'a PDF' },
  { start: /^PK../s, what: 'a packed archive (ZIP)' },
  { start: /^ISO-10303-21/, what: 'a STEP file' },
  { start: /^\s*(<\?xml|<svg)/i, what: 'an SVG or another XML file' },
  { start: /^solid\b/, what: 'an STL file' },
  { start: /^\x89PNG|^\xff\xd8\xff|^GIF8|^BM/, what: 'a picture' },
  { start: /^%!PS/, what: 'a PostScript file' },
];

/** One finding about a file of which nothing could be read. */
export function unreadable(code: string, title: string, why: string, remedy: string): FileText {
  const finding: PlacedFinding = {
    code,
    feature: 'file',
    title,
    verdict: 'fail',
    value: null,
    limit: null,
    unit: '',
    margin: null,
    why,
    remedy,
    source: 'DXF reference, as published',
    places: [],
  };
  return { ok: false, finding };
}

const saveAgain = 'Save it as an ASCII DXF, release 2000 or later, from the program that drew it.';

/**
 * The text of a DXF. UTF-8 where it is that, else Western European (as releases before 2007 were written).
 * Other formats are known by their first bytes and named.
 */
export function readFileText(bytes: Uint8Array): FileText {
  if (bytes.length > mostBytes) {
    const size = `${(bytes.length / 1024 / 1024).toFixed(0)} MB`;
    return unreadable(
      'dxf-too-large',
      'size of the file',
      `The file has ${size}; at most ${mostBytes / 1024 / 1024} MB are read. A flat part is a few kilobytes.`,
      'Send the outline alone, as lines and arcs.',
    );
  }
  const start = String.fromCharCode(...bytes.subarray(0, 64));
  if (start.startsWith('AutoCAD Binary DXF')) {
    return unreadable(
      'dxf-binary',
      'binary DXF',
      'This is a DXF in its binary form, which few readers know.',
      saveAgain,
    );
  }
  if (/^AC10\d\d|^AC1\.\d|^MC0\.0/.test(start)) {
    return unreadable(
      'dxf-is-dwg',
      'DWG under the name of a DXF',
      'The file starts as a DWG does: it was renamed, not exported.',
      saveAgain,
    );
  }
  const other = others.find(({ start: known }) => known.test(start));
  if (other) {
    return unreadable(
      'dxf-other-format',
      'another format under the name of a DXF',
      `By its first bytes this is ${other.what}, whatever its name says.`,
      saveAgain,
    );
  }
  if (/^(\xff\xfe|\xfe\xff)/.test(start) || bytes.subarray(0, 4096).includes(0)) {
    return unreadable(
      'dxf-other-format',
      'another format under the name of a DXF',
      'The file holds bytes that no text has (zero bytes): it is no DXF, or was saved in two-byte characters.',
      saveAgain,
    );
  }
  const text = decode(bytes);
  if (text.trim() === '') {
    return unreadable('dxf-empty-file', 'empty file', 'There is nothing in this file.', 'Export the drawing again.');
  }
  return { ok: true, text };
}

function decode(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}
