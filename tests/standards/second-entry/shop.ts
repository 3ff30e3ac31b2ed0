/** Nuts, lengths, sheet, printing and shaft practice, as the prints named here have them; where the standard was only remembered it says so. */
import type { SecondEntry } from './entry.ts';

const remembered = 'the standard as remembered (no copy could be read)';

export const shopEntries: readonly SecondEntry[] = [
  {
    id: 'iso4032',
    source: `ISO 4032: ${remembered}`,
    columns: 'size s m',
    rows: `
      M3 5.5 2.4; M4 7 3.2; M5 8 4.7; M6 10 5.2; M8 13 6.8; M10 16 8.4; M12 18 10.8; M14 21 12.8; M16 24 14.8;
      M18 27 15.8; M20 30 18; M22 34 19.4; M24 36 21.5`,
  },
  {
    id: 'asme-b18.2.2',
    source: `ASME B18.2.2: ${remembered}`,
    columns: 'size F H',
    rows: `
      #10 0.375 0.13; 1/4 0.438 0.226; 5/16 0.5 0.273; 3/8 0.562 0.337; 7/16 0.688 0.385; 1/2 0.75 0.448;
      5/8 0.938 0.559; 3/4 1.125 0.665`,
  },
  {
    id: 'asme-b18.2.1',
    source: `ASME B18.2.1 in three reprints, and ${remembered}`,
    columns: 'size F H',
    rows: '1/4 0.438 0.163; 5/16 0.5 0.211; 3/8 0.562 0.243; 7/16 0.625 0.291; 1/2 0.75 0.323; 5/8 0.938 0.403; 3/4 1.125 0.483',
  },
  {
    id: 'iso4017-lengths',
    source: `ISO 4017: ${remembered}; makers end the larger sizes differently`,
    columns: 'size shortest longest',
    rows: 'M3 6 30; M4 8 40; M5 10 50; M6 12 60; M8 16 80; M10 20 100; M12 25 120; M14 30 140',
    leavesOut: 'M16 M18 M20 M22 M24',
  },
  {
    id: 'iso8734',
    source: `ISO 8734: ${remembered}`,
    columns: 'd c',
    rows: '3 0.5; 4 0.63; 5 0.8; 6 1.2; 8 1.6; 10 2; 12 2.5; 16 3; 20 3.5',
  },
  {
    id: 'iso4762-lengths',
    source: `ISO 4762: ${remembered}; M18 and M22 are no sizes of it`,
    columns: 'size shortest longest',
    rows: `
      M3 5 30; M4 6 40; M5 8 50; M6 10 60; M8 12 80; M10 16 100; M12 20 120; M14 25 140; M16 25 160; M20 30 200;
      M24 40 200`,
    leavesOut: 'M18 M22',
  },
  {
    id: 'iso10642-lengths',
    source: `ISO 10642: ${remembered}`,
    columns: 'size shortest longest',
    rows: 'M3 8 30; M4 8 40; M5 8 50; M6 8 60; M8 10 80; M10 12 100; M12 20 100; M14 25 100; M16 30 100; M20 35 100',
  },
  {
    id: 'iso7380-1-lengths',
    source: `ISO 7380-1: ${remembered}`,
    columns: 'size shortest longest',
    rows: 'M3 6 12; M4 8 16; M5 10 30; M6 10 30; M8 10 40; M10 16 40; M12 16 50; M16 20 50',
  },
  {
    id: 'asme-b18.3-button',
    source: 'ASME B18.3 in two reprints; #10 from one of them',
    columns: 'size A H',
    rows: '#10 0.361 0.101; 1/4 0.437 0.132; 5/16 0.547 0.166; 3/8 0.656 0.199; 1/2 0.875 0.265; 5/8 1 0.331',
  },
  {
    id: 'thread-engagement',
    source: 'a fastener handbook, trials with M6 to M16; strong aluminium is a choice of this project',
    columns: 'RmOver 8.8 10.9 12.9',
    rows: '360 1 1.25 1.4; 500 0.9 1 1.2; 800 0.8 0.9 1; 220 1 1.25 1.4; 180 2 2.5 -',
    leavesOut: '290',
  },
  {
    id: 'sheet-rules',
    source: 'six public design guides for laser cutting; the corner is common practice',
    columns: 'what strictest usual loosest',
    rows: 'hole 1.5 1 0.5; web 1.5 1 0.7; slot 1 1 0.7; edge 1.5 1 1; pitch 2 2 2',
    leavesOut: 'corner',
  },
  {
    id: 'laser-kerf',
    source: 'a book on industrial laser cutting, section 4.2; 6 mm from the trade: 0.2 to 0.3 mm',
    columns: 't kerf',
    rows: '3 0.15; 6 0.25; 19 0.38',
  },
  {
    id: 'machining-rules',
    source: 'machining guides; edges, walls of tapped holes and chamfers are common practice',
    columns: 'rule value',
    rows: `
      wall 0.8; tapped_wall 1; tapped_wall_least 0.5; edge_steel 1.5; edge_aluminium 2; hole_depth 10; thread_depth 2;
      tolerance 0.13; chamfer 0.5`,
    leavesOut: 'web hole_position parallelism parallelism_one_chucking',
  },
  {
    id: 'k-factors',
    source: "an encyclopaedia's table of K-factors",
    columns: 'upTo soft medium hard',
    rows: '1 0.33 0.38 0.4; 3 0.4 0.43 0.45; 1000 0.5 0.5 0.5',
  },
  {
    id: 'din76-1',
    source: `DIN 76-1, blind holes: ${remembered}`,
    columns: 'P e1 e2',
    rows: `
      0.5 2.8 1.8; 0.7 3.8 2.4; 0.8 4.2 2.7; 1 5.1 3.2; 1.25 6.2 3.9; 1.5 7.3 4.6; 1.75 8.3 5.2; 2 9.3 5.8;
      2.5 11.2 7; 3 13.1 8.2`,
  },
  {
    id: 'printed-holes',
    source: 'a published filament-printing tolerance reference; where its ranges leave gaps the smaller size counts',
    columns: 'upTo least most',
    rows: '3 0.4 0.5; 6 0.3 0.4; 12 0.2 0.3; 25 0.2 0.3; 1000 0.1 0.2',
  },
  {
    id: 'printed-fits',
    source: 'a published filament-printing tolerance reference',
    columns: 'fit plaLeast plaMost otherLeast otherMost',
    rows: 'press 0 0.1 0.05 0.15; snug 0.1 0.15 0.1 0.2; slide 0.15 0.25 0.2 0.3; loose 0.3 0.4 0.3 0.5',
  },
  {
    id: 'print-shrinkage',
    source: 'a published filament-printing guide',
    columns: 'material least most',
    rows: 'PLA 0.1 0.3; PETG 0.2 0.4; ABS 0.4 0.8; PA 0.4 0.6',
  },
  {
    id: 'iso1302-grades',
    source: 'ISO 1302: three reprints that agree',
    columns: 'grade Ra microinches',
    rows: `
      N1 0.025 1; N2 0.05 2; N3 0.1 4; N4 0.2 8; N5 0.4 16; N6 0.8 32; N7 1.6 63; N8 3.2 125; N9 6.3 250;
      N10 12.5 500; N11 25 1000; N12 50 2000`,
  },
  {
    id: 'vdi2230-alpha',
    source: "a fastener maker's page after VDI 2230:1986 (scatter), and (1 + x)/(1 - x) of it",
    columns: 'scatterFrom scatterTo alphaFrom alphaTo',
    rows: '5 12 1.2 1.4; 17 23 1.4 1.6; 23 28 1.6 2; 43 60 2.5 4',
    leavesOut: '26',
  },
  {
    id: 'critical-speed-shares',
    source: "a propeller-shaft supplier's technical data; a cardan shaft maker's page",
    columns: 'share',
    rows: '0.65; 0.7; 0.75',
  },
  {
    id: 'face-friction',
    source: 'a research laboratory page after a formula handbook, two friction tables, DIN 7190',
    columns: 'from to',
    rows: '0.15 0.3; 0.1 0.1; 0.15 0.2; 0.27 0.39; 0.23 0.31; 0.45 0.8; 0.1 0.15; 0.47 0.61; 0.15 0.6',
  },
];
