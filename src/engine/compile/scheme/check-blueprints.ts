import type { Blueprint, Scheme } from '#engine/exam/scheme.ts';
import { nearestCure } from '#engine/compile/names.ts';
import type { Opened } from '#engine/compile/opened.ts';
import { keyAt, placeAt, type Path, type SourceFile } from '#engine/compile/source-file.ts';

/**
 * Every blueprint asks for topics that there are, and for no more questions than each has. `topics`
 * says how many: an id of a topic to its number of questions. Nothing is said of an empty bank.
 */
export function checkBlueprints(
  schemes: Iterable<Opened<Scheme>>,
  topics: ReadonlyMap<string, number>,
): void {
  if (topics.size === 0) return;
  for (const { file, value: scheme } of schemes) {
    for (const part of scheme.parts) {
      if (part.kind !== 'written') continue;
      checkBlueprint(file, ['parts', part.id, 'blueprint'], part.blueprint, topics);
    }
    for (const { part, blueprint } of scheme.renewal.parts) {
      const path = ['renewal', 'parts', part, 'blueprint'];
      if (blueprint) checkBlueprint(file, path, blueprint, topics);
    }
  }
}

function checkBlueprint(
  file: SourceFile,
  path: Path,
  blueprint: Blueprint,
  topics: ReadonlyMap<string, number>,
): void {
  for (const [topic, count] of blueprint) {
    const at = [...path, topic];
    const there = topics.get(topic);
    if (there === undefined) {
      const message = `There is no topic "${topic}".`;
      file.fault('UNKNOWN_TOPIC', keyAt(file, at), message, nearestCure(topic, topics.keys()));
    } else if (there < count) {
      const message = `${count} questions are asked for, and "${topic}" has ${there}.`;
      const cure = 'Ask for fewer, or write more questions.';
      file.fault('ASKS_TOO_MUCH', placeAt(file, at), message, cure);
    }
  }
}
