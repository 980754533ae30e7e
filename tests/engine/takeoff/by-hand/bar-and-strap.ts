import type { HandJob } from './job.ts';

/** Common practice throughout; a row of n fasteners or studs has n - 1 spaces. */
export const barAndStrap: readonly HandJob[] = [
  {
    family: 'fasteners-one-bar',
    givens: { bar: '97 1/2 in' },
    answers: {
      // First at 1, last at 96 1/2. From 1 in steps of 8: the 12th stands at 1 + 88 = 89, and 7 1/2 in
      // are left, which is no more than 8: a 13th, the last.
      fasteners: '13',
      // 12 spaces in 95 1/2 in: 12 x 7 15/16 = 95 1/4, 12 x 8 = 96. 95 1/2 is 1/4 from the first and 1/2
      // from the second.
      spacing: '7 15/16 in',
    },
  },
  {
    family: 'fasteners-one-bar',
    givens: { bar: '40 in' },
    numbers: { 'bar-end-distance': '4 in' },
    // At 4, 12, 20, 28 and 36: exactly.
    answers: { fasteners: '5', spacing: '8 in' },
  },
  {
    family: 'fasteners-along-wall',
    givens: { wall: '33 ft' },
    answers: {
      // 0 to 10'-0"; 10'-0 1/8" to 20'-0 1/8"; 20'-0 1/4" to 30'-0 1/4"; the fourth from 30'-0 3/8".
      pieces: '4',
      // 33'-0" less 30'-0 3/8".
      last: '35 5/8 in',
      // Whole: 1 to 119, 118 in: 14 spaces reach 112, so 15, and 16 fasteners. Cut: 1 to 34 5/8, 33 5/8 in:
      // 4 reach 32, so 5, and 6 fasteners. 16 + 16 + 16 + 6.
      fasteners: '54',
    },
  },
  {
    family: 'fasteners-along-wall',
    givens: { wall: '30 ft 1/4 in' },
    // Three pieces and two gaps fill it exactly: the third is cut to its whole length. 3 x 16.
    answers: { pieces: '3', last: '10 ft', fasteners: '48' },
  },
  {
    family: 'fasteners-along-wall',
    givens: { wall: '33 ft 10 in' },
    numbers: { 'bar-joint-gap': '12 in', 'bar-end-distance': '4 in' },
    answers: {
      // 0 to 10 ft, 11 to 21, 22 to 32, and from 33 ft on.
      pieces: '4',
      last: '10 in',
      // Whole: 4, 12, ... 116: 14 spaces, 15 fasteners. Cut: at 4 and 6 in. 45 + 2.
      fasteners: '47',
    },
  },
  {
    family: 'bars-to-buy',
    givens: { first: '139 ft 8 in', second: '114 ft 10 in' },
    answers: {
      // 254 1/2 ft. 5 % of it: 12.725 ft. 267.225 ft: 26 bars reach 260, so 27.
      bars: '27',
      // 270 less 254 1/2 ft.
      left: '15 ft 6 in',
    },
  },
  {
    family: 'strap-on-studs',
    givens: { spaces: '50', 'stud-spacing': '16 in' },
    answers: {
      // 16, 32, ... 112, 128: the seventh stud is the last that 120 in reach.
      reach: '112 in',
      // 7 spaces each: seven pieces reach the 49th, one is left.
      pieces: '8',
      // 51 studs with 2; on 7 of them a second piece begins, with 2 of its own: 102 + 14.
      screws: '116',
    },
  },
  {
    family: 'strap-on-studs',
    givens: { spaces: '23', 'stud-spacing': '24 in' },
    // 5 spaces are 120 in, a whole piece: 5 + 5 + 5 + 5 + 3. 24 studs and 4 joints, 2 each: 48 + 8.
    answers: { reach: '120 in', pieces: '5', screws: '56' },
  },
];
