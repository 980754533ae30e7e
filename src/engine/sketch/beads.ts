/** A bead cut across, in the shape that it is laid or tooled to. */
import type { Text } from '#engine/text.ts';
import { dimension } from './dimension.ts';
import { box, disc, label, shape } from './marks.ts';
import { within, width, type Measured } from './measured.ts';
import type { Mark } from './sketch.ts';

const middle = width / 2;

/** How long the bead runs stands beneath: no section shows it. */
const runOf = (of: Measured, y: number): readonly Mark[] =>
  of.has('run') ? [label([middle, y], long(of.text('run')))] : [];

const long = ({ en, es }: Text): Text => ({ en: `${en} long`, es: `${es} de largo` });

export function squareBead(of: Measured): readonly Mark[] {
  const across = within((64 * of.size('width')) / of.size('depth'), 56, 150);
  const deep = within((across * of.size('depth')) / of.size('width'), 30, 90);
  const [left, right, base] = [middle - across / 2, middle + across / 2, 140];
  const top = base - deep;
  return [
    box([middle - 120, base], [middle + 120, base + 26], 'masonry', 'plain'),
    box([left, top], [right, base], 'sealant', 'plain'),
    ...dimension(
      [
        [left, top],
        [right, top],
      ],
      'above',
      top - 26,
      of.text('width'),
    ),
    ...dimension(
      [
        [right, top],
        [right, base],
      ],
      'right',
      right + 30,
      of.text('depth'),
    ),
    ...runOf(of, base + 46),
  ];
}

export function roundBead(of: Measured): readonly Mark[] {
  const [radius, base] = [36, 140];
  const [left, right] = [middle - radius, middle + radius];
  return [
    box([middle - 120, base], [middle + 120, base + 26], 'masonry', 'plain'),
    disc([middle, base - radius], radius, 'sealant', 'plain'),
    ...dimension(
      [
        [left, base - radius],
        [right, base - radius],
      ],
      'above',
      base - radius * 2 - 24,
      of.text('diameter'),
    ),
    ...runOf(of, base + 46),
  ];
}

export function filletBead(of: Measured): readonly Mark[] {
  const [corner, base, leg] = [middle - 40, 148, 76];
  return [
    box([corner - 30, base - 120], [corner, base + 26], 'masonry', 'plain'),
    box([corner, base], [corner + 170, base + 26], 'concrete', 'plain'),
    shape(
      [
        [corner, base - leg],
        [corner, base],
        [corner + leg, base],
      ],
      'sealant',
      'plain',
    ),
    ...dimension(
      [
        [corner - 30, base - leg],
        [corner - 30, base],
      ],
      'left',
      corner - 58,
      of.text('leg'),
    ),
    ...dimension(
      [
        [corner, base + 26],
        [corner + leg, base + 26],
      ],
      'below',
      base + 50,
      of.text('leg'),
    ),
    ...(of.has('run') ? [label([corner + 122, base - 66], long(of.text('run')))] : []),
  ];
}
