import { render, screen, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { afterEach, describe, expect, test, vi } from 'vitest';
import { drawWall } from '#engine/picture/draw-wall.ts';
import { type Work, noWork } from '#engine/picture/work.ts';
import { language } from '#ui/language/language.svelte.ts';
import { panZoom } from '#ui/wall/pan-zoom.svelte.ts';
import { viewOf } from '#ui/wall/view-of.ts';
import Wall from '#ui/wall/Wall.svelte';
import { card, smallWall } from '../../engine/picture/small-wall.ts';

const sequence = smallWall({
  line: [['snap-line', 'top-edge', ['height']]],
  prime: [
    ['primer', 'wall'],
    ['primer', 'sheet-back'],
  ],
  hang: [['membrane', 'wall']],
  lap: [['membrane', 'seam', ['lap']]],
});

const placed = [
  card('line', { height: [6, 'in'] }),
  card('prime', {}, 'wet'),
  card('hang'),
  card('lap', { lap: [3, 'in'] }),
];

const drawingOf = (more: Partial<Work> = {}) => drawWall(sequence, { ...noWork, placed, ...more });
const show = (props: Partial<Parameters<typeof Wall>[1]> = {}) =>
  render(Wall, { drawing: drawingOf(), hasOpenKey: true, ...props });

afterEach(() => language.choose('en'));

describe('truth', () => {
  test('each view is an image with a title and a sentence of what it shows', () => {
    show();
    const section = screen.getByRole('img', { name: /^Section/ });
    expect(section).toHaveAccessibleName(/Membrane, wall/);
    expect(section).toHaveAccessibleName(/Steel stud/);
    expect(
      screen.getAllByRole('img').map((view) => view.querySelector('title')!.textContent),
    ).toEqual(['Section', 'Along the wall', 'Across the seam', 'Back of the sheet']);
  });

  test('the key names every part by its mark, with its settings and whether it is wet', () => {
    show();
    const key = screen.getByRole('group', { name: 'Key to the picture' });
    expect(within(key).getByRole('button', { name: /1 Snapped line, top edge.*6"/ })).toBeVisible();
    expect(within(key).getByRole('button', { name: /2 Primer.*still wet/ })).toBeVisible();
    expect(within(key).getByRole('button', { name: /A Sheathing/ })).toBeVisible();
  });

  test('lengths are written on the picture as the trade writes them', () => {
    show();
    const section = screen.getByRole('img', { name: /^Section/ });
    expect(within(section).getByText('6"')).toBeInTheDocument();
  });

  test('what is chosen in the key is told, and again lets go of it', async () => {
    const onselect = vi.fn();
    show({ onselect });
    const line = screen.getByRole('button', { name: /Snapped line/ });
    await userEvent.click(line);
    expect(onselect).toHaveBeenLastCalledWith('line:snap-line');
    expect(line).toHaveAttribute('aria-pressed', 'true');
    expect(screen.getByText('1', { selector: 'strong' }).parentElement).toHaveTextContent(
      '1 Snapped line, top edge',
    );
    await userEvent.click(line);
    expect(onselect).toHaveBeenLastCalledWith(undefined);
    expect(line).toHaveAttribute('aria-pressed', 'false');
  });

  test('a part is chosen where it is tapped in the picture', async () => {
    const onselect = vi.fn();
    const { container } = show({ onselect });
    const sheet = container.querySelector('[data-part="hang:membrane"]')!;
    await userEvent.pointer([{ keys: '[MouseLeft]', target: sheet }]);
    expect(onselect).toHaveBeenLastCalledWith('hang:membrane');
  });

  test('one press of the tab key enters the key, and arrows go through it', async () => {
    const onselect = vi.fn();
    show({ onselect });
    const buttons = within(screen.getByRole('group', { name: 'Key to the picture' })).getAllByRole(
      'button',
    );
    expect(buttons.filter(({ tabIndex }) => tabIndex === 0)).toHaveLength(1);
    buttons[0]!.focus();
    await userEvent.keyboard('{ArrowDown}{ArrowDown}');
    expect(buttons[2]).toHaveFocus();
    expect(onselect).toHaveBeenLastCalledWith(buttons[2]!.dataset['part']);
    await userEvent.keyboard('{End}');
    expect(buttons.at(-1)).toHaveFocus();
    await userEvent.keyboard('{ArrowDown}');
    expect(buttons.at(-1)).toHaveFocus();
    await userEvent.keyboard('{Home}{ArrowUp}');
    expect(buttons[0]).toHaveFocus();
  });

  test('a fault is told by its severity in words and inked apart', () => {
    const faults = [{ card: 'hang', severity: 'critical' as const }];
    const { container } = show({ drawing: drawingOf({ faults }) });
    expect(screen.getByRole('button', { name: /Membrane, wall.*Critical/ })).toBeVisible();
    expect(
      container.querySelectorAll('path.fault[data-part="hang:membrane"]').length,
    ).toBeGreaterThan(0);
    expect(container.querySelectorAll('path.fault[data-part="prime:primer"]')).toHaveLength(0);
  });

  test('the view of what was done last shows first, and another can be chosen', async () => {
    show();
    const chooser = screen.getByRole('group', { name: 'Views of the wall' });
    expect(within(chooser).getByRole('button', { pressed: true })).toHaveTextContent(
      'Along the wall',
    );
    await userEvent.click(within(chooser).getByRole('button', { name: 'Section' }));
    expect(within(chooser).getByRole('button', { pressed: true })).toHaveTextContent('Section');
  });

  test('a picture can be looked at closer and whole again', async () => {
    show();
    await userEvent.click(screen.getByRole('button', { name: 'Closer: Section' }));
    const section = screen.getByRole('img', { name: /^Section/ });
    expect(section.querySelector('g')).toHaveAttribute('transform', expect.stringContaining('1.6'));
    await userEvent.click(screen.getByRole('button', { name: 'Whole' }));
    expect(section.querySelector('g')).toHaveAttribute('transform', 'translate(0 0) scale(1)');
    expect(screen.queryByRole('button', { name: 'Whole' })).toBeNull();
  });

  test('what is looked at closely is moved by a tap or a key, without dragging', async () => {
    show();
    const section = screen.getByRole('img', { name: /^Section/ });
    const place = () =>
      section
        .querySelector('g')!
        .getAttribute('transform')!
        .match(/-?[\d.]+/g)!;
    expect(screen.queryByRole('group', { name: 'Move the picture: Section' })).toBeNull();
    await userEvent.click(screen.getByRole('button', { name: 'Closer: Section' }));
    const mover = within(screen.getByRole('group', { name: 'Move the picture: Section' }));
    const [x, y] = place().map(Number);
    await userEvent.click(mover.getByRole('button', { name: 'To the left' }));
    expect(Number(place()[0])).toBeGreaterThan(x!);
    await userEvent.click(mover.getByRole('button', { name: 'To the right' }));
    expect(Number(place()[0])).toBeCloseTo(x!, 1);
    mover.getByRole('button', { name: 'Down' }).focus();
    await userEvent.keyboard('{Enter}');
    expect(Number(place()[1])).toBeLessThan(y!);
    await userEvent.click(mover.getByRole('button', { name: 'Up' }));
    expect(Number(place()[1])).toBeCloseTo(y!, 1);
  });

  test('it speaks Spanish at once', async () => {
    show();
    language.choose('es');
    expect(await screen.findByRole('img', { name: /^Corte/ })).toHaveAccessibleName(
      /Membrana, muro/,
    );
  });

  test('without anything done the section shows first', () => {
    expect(viewOf(drawWall(sequence, noWork), undefined)).toBe('section');
    expect(viewOf(drawWall(sequence, noWork), 'sheet')).toBe('sheet');
  });
});

describe('laws', () => {
  test('looking closer keeps the spot where it is and never leaves the frame', () => {
    const zoom = panZoom(() => ({ width: 300, height: 200 }));
    zoom.closer(2, { x: 100, y: 50 });
    expect(zoom.transform).toBe('translate(-100 -50) scale(2)');
    zoom.down(1, { x: 10, y: 10 });
    zoom.move(1, { x: 500, y: 500 });
    expect(zoom.transform).toBe('translate(0 0) scale(2)');
    zoom.up(1);
    expect(zoom.move(1, { x: 0, y: 0 })).toBe(false);
    for (let step = 0; step < 9; step += 1) zoom.closer(2);
    expect(zoom.isClosest).toBe(true);
    zoom.closer(0.001);
    expect(zoom.isClose).toBe(false);
  });

  test('two fingers that part make the picture larger by as much', () => {
    const zoom = panZoom(() => ({ width: 300, height: 300 }));
    zoom.down(1, { x: 140, y: 150 });
    zoom.down(2, { x: 160, y: 150 });
    zoom.move(2, { x: 180, y: 150 });
    expect(zoom.transform).toMatch(/scale\(2\)$/);
  });
});
