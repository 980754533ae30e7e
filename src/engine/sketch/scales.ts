/** What is read from a scale: temperatures, and stretches of time. */
import type { Text } from '#engine/text.ts';
import { box, disc, label, line } from './marks.ts';
import { named, within, width, type Measured } from './measured.ts';
import { lineHeight, widthOf, type Mark } from './sketch.ts';

const names: Readonly<Record<string, Text>> = {
  surface: { en: 'Surface', es: 'Superficie' },
  air: { en: 'Air', es: 'Aire' },
  'dew-point': { en: 'Dew point', es: 'Punto de rocío' },
  least: { en: 'At least', es: 'Mínimo' },
  most: { en: 'At most', es: 'Máximo' },
};

/** What was read stands to the right of the tube, what it is held against to the left. */
const readings = ['surface', 'air', 'dew-point'] as const;
const limits = ['least', 'most'] as const;

export function thermometer(of: Measured): readonly Mark[] {
  const shown = [...readings, ...limits].filter((name) => of.has(name));
  const sizes = shown.map((name) => of.size(name));
  const [low, high] = [Math.min(...sizes), Math.max(...sizes)];
  const [top, bottom, x] = [34, 172, 146];
  const y = (name: string): number =>
    high === low
      ? (top + bottom) / 2
      : bottom - ((of.size(name) - low) / (high - low)) * (bottom - top);
  const at = (set: readonly string[]): readonly (readonly [string, number, number])[] =>
    spread(set.filter((name) => of.has(name)).map((name) => [name, y(name)] as const));
  return [
    box([x - 7, top - 20], [x + 7, bottom + 20], 'paper', 'plain'),
    disc([x, bottom + 30], 15, 'solid', 'plain'),
    box([x - 3, y('surface')], [x + 3, bottom + 24], 'solid', 'none'),
    ...at(readings).flatMap(([name, real, set]) => [
      line(
        [
          [x + 7, real],
          [x + 24, real],
          [x + 30, set],
        ],
        'thin',
      ),
      label([x + 34, set], named(names[name]!, of.text(name)), 'start'),
    ]),
    ...at(limits).flatMap(([name, real, set]) => [
      line(
        [
          [x - 7, real],
          [x - 20, real],
          [x - 30, set],
        ],
        'thin',
      ),
      label([x - 34, set], named(names[name]!, of.text(name)), 'end'),
    ]),
  ];
}

/** Labels in order down the paper, pushed apart where their lines would meet. */
function spread(
  marks: readonly (readonly [string, number])[],
): readonly (readonly [name: string, real: number, set: number])[] {
  let lowest = -Infinity;
  return marks
    .toSorted(([, a], [, b]) => a - b)
    .map(([name, real]) => {
      const set = Math.max(real, lowest + lineHeight + 5);
      lowest = set;
      return [name, real, set] as const;
    });
}

const stretches = ['first', 'wait', 'second', 'third', 'fourth'] as const;
/** How long it takes is for who solves the problem to find. */
const waitName = { en: 'wait ?', es: 'espera ?' };

export function timeLine(of: Measured): readonly Mark[] {
  const shown = stretches.filter((name) => of.has(name));
  const [left, right, top] = [16, width - 16, 44];
  const text = (name: (typeof stretches)[number]): Text =>
    name === 'wait' ? waitName : of.text(name);
  const least = shown.map((name) => widthOf(text(name)) + 4);
  const sizeOf = (name: (typeof stretches)[number]): number =>
    name === 'wait' ? 0 : of.size(name);
  const total = shown.reduce((sum, name) => sum + sizeOf(name), 0);
  const spare = Math.max(0, right - left - least.reduce((sum, one) => sum + one, 0));
  let x = left;
  return shown.flatMap((name, place): readonly Mark[] => {
    const long = least[place]! + within((spare * sizeOf(name)) / total, 0, spare);
    const from = x;
    x += long;
    return [
      box([from, top], [x, top + 30], name === 'wait' ? 'primer' : 'paper', 'plain'),
      line(
        [
          [from, top - 8],
          [from, top + 38],
        ],
        'thin',
      ),
      line(
        [
          [x, top - 8],
          [x, top + 38],
        ],
        'thin',
      ),
      label([(from + x) / 2, top + 15], text(name)),
    ];
  });
}
