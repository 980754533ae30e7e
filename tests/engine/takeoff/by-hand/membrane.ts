import type { HandJob } from './job.ts';

/** Sheets of membrane and what is cut from rolls. Laps: n sheets have n - 1; the rest common practice. */
export const membrane: readonly HandJob[] = [
  {
    family: 'sheets-straight-run',
    givens: { run: '49 ft 6 in', sheet: '10 ft' },
    answers: {
      // One after another they reach 10'-0", 19'-10", 29'-8", 39'-6", 49'-4", 59'-2".
      sheets: '6',
      laps: '5',
      // The wall, and 5 laps of 2 in lie double.
      length: '50 ft 4 in',
    },
  },
  {
    family: 'sheets-straight-run',
    givens: { run: '49 ft 4 in', sheet: '10 ft' },
    // Exactly as far as five reach; 4 laps of 2 in.
    answers: { sheets: '5', laps: '4', length: '50 ft' },
  },
  {
    family: 'sheets-round-corner',
    givens: { left: '30 ft 3 in', right: '24 ft 1 in', sheet: '10 ft' },
    answers: {
      // 6 in of the wall lie under the corner, 2 in of them under the sheet too: it starts 4 in from the fold.
      'left-run': '29 ft 11 in',
      // Left 29'-11": three sheets reach 29'-8", so 4. Right 24'-1" less 4 in is 23'-9": two reach 19'-10", so 3.
      sheets: '7',
    },
  },
  {
    family: 'sheets-round-corner',
    givens: { left: '30 ft', right: '20 ft 3 in', sheet: '10 ft' },
    // 29'-8" left, exactly three. 19'-11" right, an inch more than two reach.
    answers: { 'left-run': '29 ft 8 in', sheets: '6' },
  },
  {
    family: 'sheets-round-corner',
    givens: { left: '30 ft', right: '20 ft 2 in', sheet: '10 ft' },
    // 19'-10" right, exactly two.
    answers: { 'left-run': '29 ft 8 in', sheets: '5' },
  },
  {
    family: 'sheet-girth',
    givens: { 'turn-up': '9 1/2 in', fold: '5/8 in', shelf: '4 3/8 in', edge: 'no' },
    // 9 4/8 + 5/8 + 4 3/8 = 14 4/8, and it ends 1/2 in short of the edge. A roll has 18.
    answers: { girth: '14 in', fits: true },
  },
  {
    family: 'sheet-girth',
    givens: { 'turn-up': '12 in', fold: '3/4 in', shelf: '5 5/8 in', edge: 'yes' },
    // 12 + 6/8 + 5 5/8 = 18 3/8, and 1/4 in past the edge.
    answers: { girth: '18 5/8 in', fits: false },
  },
  {
    family: 'sheet-girth',
    givens: { 'turn-up': '12 in', fold: '1/2 in', shelf: '5 1/4 in', edge: 'yes' },
    // 12 + 1/2 + 5 1/4 + 1/4: exactly as wide as the roll.
    answers: { girth: '18 in', fits: true },
  },
  {
    family: 'strips-from-roll',
    givens: { girth: '11 3/4 in', length: '1580 ft' },
    answers: {
      // 11 3/4, 23 1/2, 35 1/4, 47: three lie within 36.
      strips: '3',
      offcut: '3/4 in',
      // 1580 + 158 = 1738 ft, by 3 x 50 = 150 ft a roll: 11 reach 1650, 12 reach 1800.
      rolls: '12',
    },
  },
  {
    family: 'rolls-with-waste',
    givens: { length: '905 ft' },
    // 905 + 90 1/2 = 995 1/2 ft; 19 rolls are 950, 20 are 1000.
    answers: { rolls: '20', left: '4 ft 6 in' },
  },
  {
    family: 'stepped-base',
    givens: { run: '60 ft', fall: '41 in', course: '8 in' },
    answers: {
      // 8, 16, 24, 32, 40, 48: five stop an inch above the low end. Courses of 8 in: NAVEDTRA 14045.
      steps: '6',
      stretches: '7',
      // 720 in in sevenths: 102 6/7 = 102.857, which lies between 102 3/4 and 103 and nearer to the first.
      stretch: '8 ft 6 3/4 in',
      // 60 ft level; six times down 8 in and 2 in onto the next: 60 in.
      length: '65 ft',
    },
  },
  {
    family: 'seam-tape',
    givens: { run: '127 ft 6 in', girth: '14 1/2 in', seams: '4', corners: '2' },
    answers: {
      // Up the sheet 4 times at seams and 2 x 2 times at corners: 8 x 14 1/2 = 116 in = 9'-8".
      tape: '137 ft 2 in',
      // 137.17 + 13.72 = 150.88 ft: three rolls are 150.
      rolls: '4',
    },
  },
  {
    family: 'corner-pieces',
    givens: { length: '120 ft', width: '60 ft', projections: '3', depth: '4 ft 6 in', levels: '2' },
    answers: {
      // One level: 4, and 2 at the front of each of 3 bays: 10. Two levels.
      outside: '20',
      // Each bay meets the wall twice: 6. Who walks round a building turns once: 10 - 6 = 4 quarter turns.
      inside: '12',
      // 120 + 60 + 120 + 60 = 360 ft, and 4 1/2 ft out and back again at 3 bays, 27 ft: 387, twice.
      run: '774 ft',
    },
  },
];
