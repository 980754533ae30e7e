/** A job worked by hand: what was measured, and every answer with the arithmetic beside it. */
export type HandJob = {
  readonly family: string;
  readonly givens: Readonly<Record<string, string>>;
  /** What differs from the numbers below. */
  readonly numbers?: Readonly<Record<string, string>>;
  /** By part, as the trade writes it; a decision is true or false. */
  readonly answers: Readonly<Record<string, string | boolean>>;
};

/** What these jobs are worked with. The data sheet may change; the arithmetic by hand does not. */
export const usualNumbers: Readonly<Record<string, string>> = {
  'roll-length': '50 ft',
  'roll-width': '18 in',
  'roll-width-wide': '36 in',
  'seam-lap': '2 in',
  'corner-lap': '2 in',
  'corner-piece-leg': '6 in',
  'edge-setback': '1/2 in',
  'drip-edge-projection': '1/4 in',
  'drip-edge-piece-length': '10 ft',
  'drip-edge-lap': '2 in',
  'end-dam-height': '1 in',
  'tape-roll-length': '50 ft',
  'primer-coverage': '250 ft2/gal',
  'primer-can': '1 gal',
  'strap-piece-length': '10 ft',
  'strap-screws-per-stud': '2',
  'bar-piece-length': '10 ft',
  'bar-joint-gap': '1/8 in',
  'bar-end-distance': '1 in',
  'fastener-spacing': '8 in',
  'lap-sealant-bead-width': '1/4 in',
  'lap-sealant-bead-depth': '1/4 in',
  'mastic-bead-width': '1/2 in',
  'mastic-bead-depth': '1/4 in',
  'cartridge-volume': '10.1 fl oz',
  'membrane-waste': '10 %',
  'sealant-waste': '10 %',
  'bar-waste': '5 %',
  'weep-spacing-open': '24 in',
  'weep-spacing-wick': '16 in',
  'dew-point-margin': '5 F°',
  'cold-threshold': '40 °F',
  'conditioning-time': '24 h',
};
