import type { Layer } from '#engine/method/drawing.ts';
import type { Shape } from './drawing.ts';
import { type Patch, shared, sizeOf } from './patch.ts';
import type { Along, RunJob } from './run-job.ts';

export type Drawn = Along & { readonly job: RunJob };

const opaque: readonly Layer[] = ['membrane', 'corner-piece', 'weather-barrier', 'lap-sealant'];
/** What is worth seeing through what covers it. */
const traced: readonly Layer[] = ['tape', 'bar', 'fasteners', 'mastic', 'strap'];

const coversOf = (drawn: readonly Drawn[], index: number): readonly Patch[] =>
  drawn
    .slice(index + 1)
    .filter(({ job }) => opaque.includes(job.one.layer))
    .flatMap(({ job }) => job.patches);

/** What a later sheet covers, once more as hidden lines. */
export const hiddenBy = (drawn: readonly Drawn[]): readonly Shape[] =>
  drawn.flatMap(({ job, shapes }, index) => {
    if (!traced.includes(job.one.layer)) return [];
    const covers = coversOf(drawn, index);
    const meets = job.patches.some((patch) => covers.some((cover) => shared(patch, cover) > 0));
    return meets ? shapes.map(asHidden) : [];
  });

const asHidden = (shape: Shape): Shape => ({
  ...shape,
  id: `${shape.id}.hidden`,
  paint: { line: 'hair', dash: 'hidden', fill: 'none' },
});

/** Whether enough of it is in sight to be named: a fault always is, as is what shows as hidden lines. */
export function isSeen(drawn: readonly Drawn[], index: number): boolean {
  const { one, patches } = drawn[index]!.job;
  const whole = patches.reduce((sum, patch) => sum + sizeOf(patch), 0);
  if (one.fault || traced.includes(one.layer) || whole === 0) return true;
  const covers = coversOf(drawn, index);
  const covered = patches.reduce(
    (sum, patch) =>
      sum +
      Math.min(
        sizeOf(patch),
        covers.reduce((area, cover) => area + shared(patch, cover), 0),
      ),
    0,
  );
  return covered < whole * 0.9;
}
