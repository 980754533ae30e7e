/** Topic, then how many choose one, choose all, put in order, give a number and find a fault. */
export const questionCounts: readonly (readonly (string | number)[])[] = [
  ['base-of-wall', 15, 4, 3, 4, 1],
  ['corners-and-seams', 13, 3, 3, 3, 2],
  ['crew-lead', 7, 3, 3, 1, 2],
  ['drawings-and-papers', 10, 2, 2, 2, 1],
  ['faults-and-rework', 6, 2, 1, 1, 9],
  ['materials-and-tools', 14, 4, 2, 3, 1],
  ['safety', 12, 3, 3, 1, 0],
  ['shelf-angle-and-sill', 13, 3, 3, 3, 1],
  ['water-management', 12, 3, 2, 4, 3],
  ['weather-and-waiting', 12, 2, 1, 3, 0],
];
