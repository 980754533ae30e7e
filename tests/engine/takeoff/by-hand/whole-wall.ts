import type { HandJob } from './job.ts';

/** Every line of the list by hand; each rule is that of the family which teaches it alone. */
export const wholeWall: readonly HandJob[] = [
  {
    family: 'whole-wall',
    givens: {
      run: '150 ft',
      inside: '1',
      outside: '2',
      ends: '2',
      'turn-up': '9 1/2 in',
      shelf: '4 in',
      edge: 'no',
      backing: 'yes',
      'stud-spacing': '16 in',
      'weep-kind': 'yes',
    },
    // Tape by the foot, so that every seam shows.
    numbers: { 'tape-roll-length': '1 ft' },
    answers: {
      // 9 1/2 + 4, held back 1/2.
      girth: '13 in',
      // Sheets of 50 ft reach 50'-0", 99'-10", 149'-8": a fourth, 3 seams of 2 in lie double, + 6 in. Each of 3
      // corners covers 6 in to both sides, 2 of them under the sheet: 3 x 8 in = 2 ft less. Two ends up 1 in.
      membrane: '148 ft 8 in',
      // 148.67 + 14.87 = 163.53 ft: three rolls are 150; 13 in come off 18 once.
      rolls: '4',
      // Up the sheet 3 times at seams and 6 times at corners: 9 x 13 = 117 in. 159.75 + 15.98 = 175.7 ft.
      tape: '176',
      'corner-pieces': '3',
      // 1'-1" wide, 162 1/2 ft² a face, 325 in all, 357.5 with waste: one can covers 250.
      primer: '2',
      // 150 + 7 1/2 ft: fifteen bars are 150.
      bars: '16',
      // 15 pieces. In each, 118 in between the first and the last: 15 spaces, 16 fasteners.
      fasteners: '240',
      // 1890 in with waste; 7 spaces of 16 in are 112: sixteen reach 1792.
      strap: '17',
      // 165 ft. Published: 24.30 ft a cartridge at 1/4 x 1/4. Six make 145.8.
      sealant: '7',
      // Published: 12.15 ft at 1/2 x 1/4. Thirteen make 158.
      mastic: '14',
      'drip-edge': '0',
      // 1800 in: 75 spaces of 24.
      weeps: '76',
    },
  },
  {
    family: 'whole-wall',
    givens: {
      run: '226 ft 4 in',
      inside: '2',
      outside: '3',
      ends: '0',
      'turn-up': '12 in',
      shelf: '6 in',
      edge: 'yes',
      backing: 'no',
      'stud-spacing': '24 in',
      'weep-kind': 'no',
    },
    answers: {
      // 12 + 6 + 1/4 past the edge.
      girth: '18 1/4 in',
      // Four sheets reach 199'-6": a fifth, 4 seams, + 8 in. Five corners, 8 in each: 40 in less. 32 in less.
      membrane: '223 ft 8 in',
      // 223.67 + 22.37 = 246.0 ft: four rolls are 200. Too wide for 18; comes off 36 once.
      rolls: '5',
      // 4 + 10 times up 18 1/4 in: 255 1/2 in = 21.29 ft. 247.62 + 24.76 = 272.4 ft: five rolls are 250.
      tape: '6',
      'corner-pieces': '5',
      // 226.33 x 1.5208 = 344.2 ft² a face, 688.4 in all, 757.3 with waste: three cans cover 750.
      primer: '4',
      // 226.33 + 11.32 = 237.65 ft.
      bars: '24',
      // 23 pieces of 16.
      fasteners: '368',
      strap: '0',
      // 248.97 ft: ten cartridges make 243.
      sealant: '11',
      // Twenty make 243.
      mastic: '21',
      // Each piece after the first gets 9'-10" further: 23 reach 226'-4" exactly.
      'drip-edge': '23',
      // 2716 in: 169 spaces of 16 are 2704, so 170.
      weeps: '171',
    },
  },
  {
    family: 'whole-wall',
    givens: {
      run: '149 ft 8 in',
      inside: '1',
      outside: '1',
      ends: '2',
      'turn-up': '8 in',
      shelf: '4 in',
      edge: 'no',
      backing: 'no',
      'stud-spacing': '16 in',
      'weep-kind': 'no',
    },
    numbers: {
      'tape-roll-length': '1 ft',
      'bar-end-distance': '4 in',
      'end-dam-height': '1 1/2 in',
    },
    answers: {
      girth: '11 1/2 in',
      // Exactly as far as three sheets reach: 2 seams, + 4 in. Two corners, - 16 in; two dams, + 3 in.
      membrane: '148 ft 11 in',
      // 148.92 + 14.89 = 163.8 ft.
      rolls: '4',
      // 2 + 4 times up 11 1/2 in: 69 in = 5.75 ft. 155.42 + 15.54 = 170.96 ft.
      tape: '171',
      'corner-pieces': '2',
      // 149.67 x 0.9583 = 143.4 ft² a face, 286.9 in all, 315.5 with waste.
      primer: '2',
      // 149.67 + 7.48 = 157.15 ft.
      bars: '16',
      // 15 pieces. 4, 12, ... 116: 15 fasteners in each.
      fasteners: '225',
      strap: '0',
      // 164.6 ft: six cartridges make 145.8.
      sealant: '7',
      // Thirteen make 158.
      mastic: '14',
      'drip-edge': '0',
      // 1796 in: 112 spaces of 16 are 1792, so 113.
      weeps: '114',
    },
  },
  {
    family: 'whole-wall',
    givens: {
      run: '100 ft',
      inside: '0',
      outside: '1',
      ends: '2',
      'turn-up': '10 in',
      shelf: '4 1/2 in',
      edge: 'yes',
      backing: 'yes',
      'stud-spacing': '24 in',
      'weep-kind': 'yes',
    },
    numbers: { 'roll-width': '30 in' },
    answers: {
      girth: '14 3/4 in',
      // Two sheets reach 99'-10": a third, 2 seams, + 4 in; one corner, - 8 in; two ends, + 2 in.
      membrane: '99 ft 10 in',
      // Two strips of 14 3/4 in come off 30, so a roll is 100 ft: 109.8 ft with waste.
      rolls: '2',
      // 2 + 2 times up 14 3/4 in: 59 in = 4.92 ft. 115.4 ft with waste.
      tape: '3',
      'corner-pieces': '1',
      // 100 x 1.229 = 122.9 ft² a face, 245.8 in all, 270.4 with waste.
      primer: '2',
      bars: '11',
      fasteners: '160',
      // 105 ft, and 5 spaces of 24 in are a whole piece.
      strap: '11',
      // 110 ft: four cartridges make 97.2.
      sealant: '5',
      // Nine make 109.4.
      mastic: '10',
      // Ten reach 98'-6".
      'drip-edge': '11',
      weeps: '51',
    },
  },
];
