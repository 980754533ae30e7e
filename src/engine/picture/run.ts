import type { Layer } from '#engine/method/drawing.ts';
import type { Keynote, View } from './drawing.ts';
import { debrisAlong } from './debris.ts';
import { measureOf } from './measures.ts';
import { asMissing, ghostAlong } from './ghost.ts';
import { pathsAlong } from './paths.ts';
import { type Plan, cornerPlan, project, startOf, straightPlan } from './plan.ts';
import { boundsOf } from './point.ts';
import { belowOf, bodyOf } from './run-body.ts';
import { seamSheet } from './run-extent.ts';
import { type Along, type RunJob, jobOf } from './run-job.ts';
import { besideOpening, jambAlong, jambBody, jambKeynote } from './run-jamb.ts';
import { type Drawn, hiddenBy, isSeen } from './run-cover.ts';
import { runLayers } from './run-layers.ts';
import { viewTitles } from './words.ts';
import { type Wall, plannedOn } from './wall.ts';

/** The wall along its length, from outside and above. */
export function run(wall: Wall): View {
  const plan = planOf(wall);
  const jobs = wall.applied.map((one) => jobOf(wall, plan, one));
  const drawn = jobs.map((job) => ({ job, ...draw(job) }));
  const debris = debrisAlong(wall, plan);
  const missing = wall.missing.map((one) => {
    const job = jobOf(wall, plan, one);
    return { job, ...draw(job) };
  });
  return {
    id: 'run',
    title: isSill(wall) ? viewTitles.sill : plan.corner ? viewTitles.corner : viewTitles.run,
    says: viewTitles.run,
    bounds: boundsOfRun(wall, plan),
    shapes: [
      ...bodyOf(wall, plan),
      ...(isSill(wall) ? jambBody(wall, plan) : []),
      ...debris,
      ...drawn.flatMap(({ shapes }) => shapes),
      ...hiddenBy(drawn),
      ...missing.flatMap(({ shapes }) => asMissing(shapes)),
      ...ghostAlong(wall, plan),
    ],
    keynotes: [
      ...(isSill(wall) ? [jambKeynote(wall, plan)] : []),
      ...debris.slice(0, 1).map(({ part, points }) => ({ part, at: points[1]! })),
      ...keynotesOf([...drawn.filter((_, index) => isSeen(drawn, index)), ...missing]),
    ],
    dimensions: drawn.flatMap(({ dimensions }) => dimensions),
    paths: pathsAlong(wall, plan),
  };
}

const isSill = ({ scene }: Wall): boolean => scene.assembly === 'window-sill';

/** In a sill, what is on the jamb, and what goes up it from the corner, is drawn on the jamb too. */
function draw(job: RunJob): Along {
  const { wall, one } = job;
  if (!isSill(wall)) return runLayers[one.layer](job);
  if (one.zone === 'jambs' || one.zone === 'ends') return jambAlong(job);
  const floor = runLayers[one.layer](job);
  if (one.zone !== 'corner') return floor;
  const up = jambAlong(job);
  return { ...floor, shapes: [...floor.shapes, ...up.shapes], at: floor.at ?? up.at };
}

/** Long enough to show two of what stands apart, and a lap with its distance from a splice. */
function planOf(wall: Wall): Plan {
  if (isSill(wall)) return straightPlan(24);
  const apart = (layer: Layer): number =>
    Math.max(0, ...plannedOn(wall, layer).map((one) => measureOf(wall, one, 'spacing', 8)));
  if (wall.corner) return cornerPlan(wall.corner, Math.max(16, apart('fasteners') + 4));
  const seam = seamSheet(wall);
  const kept = seam?.takes.has('setback')
    ? measureOf(wall, seam, 'setback', 6) + measureOf(wall, seam, 'lap', 2) + 4
    : 0;
  return straightPlan(Math.max(28, apart('weeps') + 6, apart('fasteners') + 6, kept / 0.8));
}

const keynotesOf = (drawn: readonly Drawn[]): readonly Keynote[] => {
  const found = new Map<string, Keynote>();
  for (const { job, at } of drawn) {
    const { part } = job.one;
    if (at && !found.has(part)) found.set(part, { part, at });
  }
  return [...found.values()];
};

function boundsOfRun({ scene }: Wall, { legs }: Plan) {
  const below = belowOf(scene);
  return boundsOf(
    legs.flatMap((leg) => [
      ...(scene.assembly === 'window-sill'
        ? [project(leg, -besideOpening, [scene.reach, -below])]
        : []),
      project(leg, leg.length, [-scene.depth, scene.top]),
      project(leg, startOf(leg, -scene.depth), [-scene.depth, scene.top]),
      project(leg, startOf(leg, scene.reach), [scene.reach, -below]),
      project(leg, leg.length, [scene.reach, -below]),
    ]),
  );
}
