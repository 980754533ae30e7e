/** What must come before what, as a drawing in plain geometry: x to the right, y down, in pixels. */
export type OrderDiagram = {
  readonly width: number;
  readonly height: number;
  /** One for each step, by its place in the order. */
  readonly nodes: readonly DiagramNode[];
  /** The fewest that state the whole order, by the step before and then by the one after. */
  readonly edges: readonly DiagramEdge[];
};

/** A box with its top left corner. Rows count from the top. */
export type DiagramNode = Box & { readonly step: number; readonly row: number };

export type DiagramEdge = {
  readonly before: number;
  readonly after: number;
  /** From the bottom of the one box down to the top of the other; never up. */
  readonly line: readonly Point[];
};

export type Point = readonly [x: number, y: number];

export type Box = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
};

export type Sizes = {
  /** What there is room for; more is taken only where one box with the lines beside it needs more. */
  readonly width: number;
  readonly node: { readonly width: number; readonly height: number };
  /** Between boxes, and between a box and a line beside it. */
  readonly gap: number;
  /** Between rows, where lines cross over. */
  readonly rowGap: number;
  /** Between lines that run beside each other. */
  readonly lane: number;
};
