/** How a shape is inked, in words of drafting; the page gives each its line, hatch and colour. */
export type Paint = {
  readonly line: LineWeight;
  readonly dash: Dash;
  readonly fill: Fill;
};

export const lineWeights = ['none', 'hair', 'thin', 'medium', 'heavy'] as const;
export type LineWeight = (typeof lineWeights)[number];

/** `hidden` lies behind something, `ghost` is not there yet, `snapped` is a chalk line. */
export const dashes = ['solid', 'hidden', 'ghost', 'snapped', 'rolled'] as const;
export type Dash = (typeof dashes)[number];

export const fills = [
  'none',
  'paper',
  'solid',
  'tone',
  'far',
  'concrete',
  'masonry',
  'brick',
  'sheathing',
  'mortar',
  'wood',
  'earth',
  'metal',
  'sealant',
  'mastic',
  'primer-wet',
  'primer-dry',
  'tape',
  'release-paper',
  'barrier',
  'protection',
  'brushed',
  'corner',
  'bar',
] as const;
export type Fill = (typeof fills)[number];

export const paint = (line: LineWeight, fill: Fill = 'none', dash: Dash = 'solid'): Paint => ({
  line,
  dash,
  fill,
});
