/** Strengths and shop tables, as the prints named here have them. */
import type { SecondEntry } from './entry.ts';

export const strengthEntries: readonly SecondEntry[] = [
  {
    id: 'iso898-1',
    source: 'four prints of ISO 898-1 that agree',
    columns: 'cls over upTo Rm Rp Sp',
    rows: `
      8.8 0 16 800 640 580
      8.8 16 39 830 660 600
      10.9 0 39 1040 940 830
      12.9 0 39 1220 1100 970`,
  },
  {
    id: 'iso898-1-proof',
    source: 'prints of ISO 898-1; stress area times proof stress',
    columns: 'size 8.8 10.9 12.9',
    rows: `
      M3 2920 4180 4880
      M4 5100 7290 8520
      M5 8230 11800 13800
      M6 11600 16700 19500
      M8 21200 30400 35500
      M10 33700 48100 56300
      M12 48900 70000 81800
      M16 91000 130000 152000
      M20 147000 203000 238000
      M24 212000 293000 342000`,
  },
  {
    id: 'sae-j429',
    source: 'four prints of SAE J429; ASTM A574 from vendor tables',
    columns: 'cls over upTo proof yield tensile',
    rows: `
      5 0 1 85 92 120
      5 1 1.5 74 81 105
      8 0 1.5 120 130 150
      A574 0 0.5 140 - 180
      A574 0.5 1.5 135 - 170`,
  },
  {
    id: 'vdi2230-pressure',
    source: 'a fastener handbook',
    columns: 'Rm pG',
    rows: `
      340 490; 470 710; 510 760; 700 630; 1000 870; 1200 1080; 500 630; 250 900; 400 700; 290 260; 260 230
      260 230; 540 410; 180 220; 250 380; 890 890`,
  },
  {
    id: 'k-values',
    source: 'Shigley, 9th edition, table 8-15',
    columns: 'K',
    rows: `
      0.3; 0.2; 0.18; 0.16; 0.12`,
  },
  {
    id: 'en1993-1-8-slip',
    source: 'EN 1993-1-8 table 3.7',
    columns: 'cls mu',
    rows: `
      A 0.5; B 0.4; C 0.3; D 0.2`,
  },
  {
    id: 'materials',
    source: 'handbooks and data sheets, one a row',
    columns: 'id density E nu cte yield tensile shear',
    rows: `
      6061-T6 2700 69 0.33 23.6 276 310 207
      7075-T6 2810 71.7 0.33 23.6 503 572 331
      2024-T351 2780 73.1 0.33 23.2 324 469 283
      1018-CD 7870 205 0.29 11.7 370 440 -
      1045 7850 206 0.29 11.5 310 565 -
      4140-Q&T 7850 205 0.29 12.3 655 930 -
      A36 7850 200 0.26 11.7 250 400 -
      S235JR 7850 210 0.3 12 235 360 -
      S355 7850 210 0.3 12 355 470 -
      DC01 7850 210 0.3 12 200 300 -
      304 8000 193 0.29 17.2 215 515 -
      430 7740 200 0.28 10.4 275 480 -
      EN-GJS-500-7 7100 170 0.275 11 320 500 450
      PLA 1240 3.5 0.36 68 45 50 -
      PETG 1270 2.1 0.4 65 45 48 -
      ABS 1050 2.2 0.37 90 40 42 -
      PA6 1150 2.9 0.39 82 70 75 -
      PA12 1010 1.7 0.4 110 45 48 -`,
  },
  {
    id: 'air-dies',
    source: 'an air-bending force chart',
    columns: 'V b r',
    rows: `
      4 2.8 0.7; 6 4 1; 7 5 1.1; 8 5.5 1.3; 10 7 1.6; 12 8.5 2; 14 10 2.3; 16 11 2.6; 18 13.5 3; 25 17.5 4
      40 28 6.5; 50 35 8; 63 45 10; 80 55 13`,
  },
  {
    id: 'cut-tolerance',
    source: 'a published laser tolerance note',
    columns: 'upTo tol',
    rows: `
      1 0.12; 3 0.15; 6 0.2; 15 0.25; 20 0.75`,
  },
  {
    id: 'iso21940-11',
    source: 'a reprint of ISO 21940-11 table 1',
    columns: 'G',
    rows: `
      4000; 1600; 630; 250; 100; 40; 16; 6.3; 2.5; 1; 0.4`,
  },
  {
    id: 'joint-angle-by-speed',
    source: "a joint maker's published table",
    columns: 'n angle',
    rows: `
      5000 3.2; 4500 3.7; 4000 4.2; 3000 5.8; 2500 7; 2000 8.7; 1500 11.5`,
  },
];
