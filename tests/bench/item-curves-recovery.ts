/**
 * How near the curves estimated from made-up answers come to those that the answers were made from:
 * bias, root of the mean square error beside the error that the fit gives itself, and how often its 95
 * % intervals hold the truth. 20 questions, 100 runs a row. Fails where given errors are off by a
 * fifth, or intervals hold the truth in fewer than 90 %; not for fewer persons than the curves are
 * shown for.
 */
import { fewestForCurves } from '#engine/statistics/enough.ts';
import { itemModels } from '#engine/statistics/item-model.ts';
import { recover } from '../engine/statistics/recovery.ts';

console.log('model         persons  of         bias    rmse   given  covered  stopped');
for (const model of itemModels) {
  for (const persons of [100, 250, 500, 1_000]) {
    const found = recover(model, { persons, items: 20, runs: 100, seed: `bench/${persons}` });
    const rows =
      model === 'slope-fixed' ? (['intercept'] as const) : (['slope', 'intercept'] as const);
    for (const of of rows) {
      const { bias, rmse, said, covered } = found[of];
      const figures = [bias, rmse, said].map((value) => value.toFixed(3).padStart(7)).join(' ');
      const share = `${(covered * 100).toFixed(1)} %`.padStart(8);
      console.log(
        `${model.padEnd(13)} ${String(persons).padStart(7)}  ${of.padEnd(9)} ${figures} ${share} ${found.stopped}`,
      );
      const need = fewestForCurves[model === 'slope-each' ? model : 'slope-common'];
      if (persons < need) console.log('  (too few persons to be shown)');
      else if (Math.abs(rmse / said - 1) > 0.2 || covered < 0.9) {
        console.log('FAILS: these errors are not what they say.');
        process.exitCode = 1;
      }
    }
  }
}
