import type { HandJob } from './job.ts';

export const drainage: readonly HandJob[] = [
  {
    // Ends turned up 1 in into the head joints: BIA Technical Note 28B.
    family: 'end-dams',
    givens: { openings: '7', opening: '4 ft 4 in', bearing: '8 in' },
    answers: {
      dams: '14',
      // 1 + 8 + 52 + 8 + 1 = 70 in.
      piece: '5 ft 10 in',
      // 7 x 70 = 490 in.
      length: '40 ft 10 in',
    },
  },
  {
    family: 'end-dams',
    givens: { openings: '3', opening: '6 ft', bearing: '4 1/2 in' },
    numbers: { 'end-dam-height': '1 1/2 in' },
    // 1 1/2 + 4 1/2 + 72 + 4 1/2 + 1 1/2 = 84 in.
    answers: { dams: '6', piece: '7 ft', length: '21 ft' },
  },
  {
    // Common practice.
    family: 'drip-edge-pieces',
    givens: { run: '59 ft 6 in', shelf: '4 1/4 in' },
    answers: {
      // They reach 10'-0", 19'-10", 29'-8", 39'-6", 49'-4", 59'-2", 69'-0".
      pieces: '7',
      // Six laps with two beads of 4 1/4 in: 12 x 4 1/4 = 51 in.
      beads: '4 ft 3 in',
    },
  },
  {
    family: 'drip-edge-pieces',
    givens: { run: '59 ft 2 in', shelf: '4 1/4 in' },
    // Exactly as far as six reach; 5 laps, 10 x 4 1/4 = 42 1/2 in.
    answers: { pieces: '6', beads: '3 ft 6 1/2 in' },
  },
  {
    // 24 in for open head joints, 16 in for wicks: BIA Technical Note 28B.
    family: 'weeps-in-wall',
    givens: { run: '47 ft 4 in', kind: 'yes' },
    // 568 in: from the first, 23 more stand at 24, 48, ... 552, and one at the end, 16 in on.
    answers: { weeps: '25' },
  },
  {
    family: 'weeps-in-wall',
    givens: { run: '47 ft 4 in', kind: 'no' },
    // From the first, 35 more stand at 16, 32, ... 560, and one at the end, 8 in on.
    answers: { weeps: '37' },
  },
  {
    family: 'weeps-round-building',
    givens: { length: '61 ft 4 in', width: '40 ft' },
    answers: {
      around: '202 ft 8 in',
      // 2432 in: 101 spaces of 24 in are 2424. A ring has as many weeps as spaces.
      weeps: '102',
    },
  },
];
