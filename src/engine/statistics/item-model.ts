/**
 * Which parameters of the items are free: none of the slopes (all 1: G. Rasch, 1960, with persons'
 * abilities of sd 1), one that all items share, or one for each. Intercepts are free in all three.
 * `full` below is by item: slopes, then intercepts; `free` is the slopes that are free, then
 * intercepts.
 */
export const itemModels = ['slope-fixed', 'slope-common', 'slope-each'] as const;
export type ItemModel = (typeof itemModels)[number];

/** With fewer, answers leave fewer free shares of patterns than there are parameters. */
export const fewestItems: Readonly<Record<ItemModel, number>> = {
  'slope-fixed': 1,
  // Two leave three shares, for a slope and two intercepts; three leave seven, for six.
  'slope-common': 2,
  'slope-each': 3,
};

const freeSlopes = (model: ItemModel, items: number): number =>
  model === 'slope-fixed' ? 0 : model === 'slope-common' ? 1 : items;

export const freeCount = (model: ItemModel, items: number): number =>
  freeSlopes(model, items) + items;

/** Where each full parameter stands among the free ones; -1 where it is fixed. */
export function freePlaces(model: ItemModel, items: number): Int32Array {
  const slopes = freeSlopes(model, items);
  return Int32Array.from({ length: 2 * items }, (_, at) => {
    if (at >= items) return slopes + at - items;
    return slopes === 0 ? -1 : Math.min(at, slopes - 1);
  });
}

export function freeVector(model: ItemModel, items: number, full: Float64Array): Float64Array {
  const free = new Float64Array(freeCount(model, items));
  freePlaces(model, items).forEach((place, at) => {
    if (place >= 0) free[place]! += full[at]!;
  });
  return free;
}

export function freeMatrix(model: ItemModel, items: number, full: Float64Array): Float64Array {
  const side = freeCount(model, items);
  const places = freePlaces(model, items);
  const free = new Float64Array(side * side);
  places.forEach((row, i) => {
    places.forEach((column, j) => {
      if (row >= 0 && column >= 0) free[row * side + column]! += full[i * 2 * items + j]!;
    });
  });
  return free;
}

export const fullVector = (model: ItemModel, items: number, free: Float64Array): Float64Array =>
  Float64Array.from(freePlaces(model, items), (place) => (place < 0 ? 0 : free[place]!));
