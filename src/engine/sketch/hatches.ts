/** Hatches of a drawing, so that a screen and a printer draw the same ones. */
export const hatchIds = ['masonry', 'concrete', 'earth', 'metal', 'sealant', 'primer'] as const;
export type Hatch = (typeof hatchIds)[number];

/** One tile, as wide as high, and the lines in it from (x1, y1) to (x2, y2). */
export type Tile = {
  readonly size: number;
  readonly lines: readonly (readonly [x1: number, y1: number, x2: number, y2: number])[];
};

const diagonal = (size: number): Tile => ({
  size,
  lines: [
    [0, size, size, 0],
    [-1, 1, 1, -1],
    [size - 1, size + 1, size + 1, size - 1],
  ],
});

export const hatches: Readonly<Record<Hatch, Tile>> = {
  masonry: diagonal(8),
  metal: diagonal(4),
  concrete: {
    size: 18,
    lines: [
      [3, 3, 6, 4],
      [6, 4, 4, 7],
      [4, 7, 3, 3],
      [12, 12, 14.5, 11],
      [14.5, 11, 14, 14],
      [14, 14, 12, 12],
      [11, 3, 11.8, 3],
      [15, 6, 15.8, 6],
      [3, 14, 3.8, 14],
      [8, 10, 8.8, 10],
    ],
  },
  earth: {
    size: 16,
    lines: [
      [0, 5, 5, 0],
      [0, 10, 10, 0],
      [0, 15, 6, 9],
      [9, 9, 15, 15],
      [11, 6, 16, 11],
    ],
  },
  sealant: {
    size: 6,
    lines: [
      [0, 6, 6, 0],
      [0, 0, 6, 6],
    ],
  },
  primer: {
    size: 9,
    lines: [
      [2, 2.5, 3, 2.5],
      [6.5, 7, 7.5, 7],
    ],
  },
};
