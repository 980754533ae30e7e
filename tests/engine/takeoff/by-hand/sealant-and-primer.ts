import type { HandJob } from './job.ts';

/**
 * Worked the other way round than by volume: by the published lengths that a cartridge of 10.1 fl oz goes,
 * 231/128 in³ to the fluid ounce (NIST Handbook 44, Appendix C).
 */
export const sealantAndPrimer: readonly HandJob[] = [
  {
    family: 'bead-yield',
    givens: { package: '20 fl oz', width: '3/8 in', depth: '3/8 in', run: '250 ft' },
    answers: {
      // Published: 21.39 ft.
      yield: '21.4 ft',
      // 275 ft: twelve make 256.7, thirteen 278.1.
      packages: '13',
    },
  },
  {
    family: 'lap-sealant',
    givens: { run: '200 ft', width: '3/8 in', depth: '1/4 in' },
    answers: {
      // 32 ft of it are 36 in³ (384 x 3/32), so 200 ft are 6 1/4 times as much.
      volume: '225 in3',
      // Published: 16.20 ft a cartridge. 220 ft: thirteen make 210.6, fourteen 226.8.
      cartridges: '14',
    },
  },
  {
    family: 'mastic-round-bead',
    givens: { run: '132 ft', diameter: '1/2 in' },
    answers: {
      // Radius 1/4 in: 3.14159 / 16 = 0.19635 in²; 1584 in of it: 311.02 in³.
      volume: '311 in3',
      // Published: 7.74 ft a cartridge. 145.2 ft: eighteen make 139.3, nineteen 147.1.
      cartridges: '19',
    },
  },
  {
    family: 'sealant-in-angle',
    givens: { run: '218 ft', leg: '3/8 in' },
    answers: {
      // 9/64 in² halved: 9/128 = 0.0703.
      area: '0.07 in2',
      // Published: 21.60 ft a cartridge. 239.8 ft: eleven make 237.6, twelve 259.2.
      cartridges: '12',
    },
  },
  {
    family: 'primer-two-faces',
    givens: { run: '1010 ft', girth: '15 in' },
    answers: {
      // 1 1/4 ft wide: 1262 1/2 ft² on the wall and as much on the sheet. Common practice: contact bond.
      area: '2525 ft2',
      // 2525 + 252.5 = 2777.5 ft²: eleven cans cover 2750.
      cans: '12',
    },
  },
];
