import { parseQuantity } from '#engine/measure/parse-quantity.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import type { Drawn, PictureKind } from '#engine/takeoff/picture.ts';

type Sample = Readonly<Record<string, string>>;

/** Every picture with all measures it can show, as of a usual job. */
export const usual: Readonly<Record<PictureKind, Sample>> = {
  'bar-elevation': { length: '118 in', end: '2 in', spacing: '8 in' },
  'bar-run-elevation': {
    run: '43 ft',
    piece: '10 ft',
    gap: '1/4 in',
    end: '1 in',
    spacing: '8 in',
  },
  'wall-run-plan': { run: '120 ft', sheet: '50 ft', lap: '6 in', inside: '3', outside: '4' },
  'roll-run-plan': { run: '843 ft', piece: '50 ft' },
  'corner-plan': { left: '20 ft', right: '43 ft', leg: '6 in', lap: '2 in', sheet: '18 in' },
  'building-plan': {
    length: '120 ft',
    width: '60 ft',
    projections: '4',
    depth: '4 ft',
    spacing: '20 ft',
    levels: '2',
  },
  'girth-section': {
    'turn-up': '8 in',
    shelf: '4 in',
    fold: '1 in',
    setback: '1/2 in',
    projection: '1/4 in',
    drip: 'no',
  },
  'roll-plan': { width: '120 in', strip: '16 in', length: '100 ft' },
  'taped-sheet-elevation': {
    run: '120 ft',
    girth: '18 in',
    seams: '3',
    corners: '2',
    tape: '3 in',
  },
  'square-bead-section': { width: '1/2 in', depth: '1/4 in', run: '120 ft' },
  'round-bead-section': { diameter: '3/8 in', run: '120 ft' },
  'fillet-bead-section': { leg: '3/8 in', run: '96 ft' },
  'two-faces': { run: '120 ft', girth: '18 in' },
  'strap-elevation': { run: '43 ft', 'stud-spacing': '16 in', piece: '10 ft' },
  'weep-elevation': { run: '43 ft', spacing: '24 in' },
  'end-dam-elevation': { opening: '6 ft', bearing: '8 in', dam: '1 in' },
  'drip-edge-plan': { run: '43 ft', piece: '10 ft', lap: '1 in' },
  'stepped-elevation': { run: '43 ft', fall: '40 in', course: '2 2/3 in', rise: '6 in' },
  thermometer: {
    surface: '44 °F',
    air: '50 °F',
    'dew-point': '41 °F',
    least: '46 °F',
    most: '95 °F',
  },
  'time-line': {
    first: '20 min',
    second: '35 min',
    third: '12 min',
    fourth: '1 h',
    wait: '15 min',
  },
};

const valueFrom = (text: string): Quantity | boolean => {
  if (text === 'yes' || text === 'no') return text === 'yes';
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.error.message.en}`);
  return read.value;
};

export const drawnOf = (kind: PictureKind, sample: Sample): Drawn => ({
  kind,
  measures: new Map(Object.entries(sample).map(([name, text]) => [name, valueFrom(text)])),
  written: new Map(Object.entries(sample).map(([name, text]) => [name, { en: text, es: text }])),
});
