import {
  checkMentions,
  hazardsOfMethod,
  sourcesOfHazards,
  sourcesOfMethod,
  sourcesOfScheme,
  sourcesOfFamily,
  sourcesOfSheet,
  sourcesOfTerms,
} from './citations.ts';
import { checkReach } from './constraints.ts';
import { checkBases, type SheetDrafts } from './data-sheet.ts';
import { checkDew } from './dew.ts';
import { checkTerms } from './glossary.ts';
import { nearestCure } from './names.ts';
import { checkOrder } from './order.ts';
import { checkKeepers, checkPlaces } from './places.ts';
import type { Written } from './read-files.ts';
import { checkReferences } from './references.ts';
import { checkBlueprints } from './scheme/check-blueprints.ts';
import { checkSchemes } from './scheme/check-schemes.ts';
import { placeAt } from './source-file.ts';
import { checkPublishers } from './sources.ts';
import { checkUses } from './uses.ts';
import { checkPatterns } from './written/patterns.ts';
import { checkTopics, sourcesOfTopic } from './written/check-topics.ts';

/** Everything that can be asked only when all has been read. */
export function check(written: Written, drafts: SheetDrafts): void {
  const { sources, sheets, sheetIds, glossary, methods, topics, patterns } = written;
  if (sources) checkPublishers(sources.file, sources.value);
  checkBases(sheets, sheetIds);
  checkTerms([...glossary.values()]);
  checkSchemes(written.schemes, written);
  checkBlueprints(written.schemes.values(), questionsIn(written));
  checkTopics(topics);
  if (patterns) checkPatterns(patterns);
  checkCitations(written);
  for (const { file, value: method } of methods.values()) {
    const { dataSheet } = method;
    const sheet = drafts.get(dataSheet);
    if (sheet) {
      checkUses(file, method, sheet);
      checkDew(file, method, sheet);
    } else if (dataSheet !== '' && !sheetIds.has(dataSheet)) {
      const message = `There is no data sheet "${dataSheet}".`;
      const cure = nearestCure(dataSheet, sheetIds);
      file.fault('UNKNOWN_DATA_SHEET', placeAt(file, ['data-sheet']), message, cure);
    }
    checkReferences(file, method);
    checkReach(file, method);
    checkOrder(file, method);
    checkPlaces(file, method);
    checkKeepers(file, method);
  }
}

/** How many questions each topic has; of one that could not be read, any number. */
const questionsIn = ({ topics, topicIds }: Written): ReadonlyMap<string, number> =>
  new Map([...topicIds].map((id) => [id, topics.get(id)?.value.questions.length ?? Infinity]));

/** Where the sources or hazards could not be read, nothing is said about what names them. */
function checkCitations(written: Written): void {
  const { sources, hazards, sheets, glossary, methods, takeoffs, topics, schemes } = written;
  if (sources) {
    const known = new Set(sources.value.map(({ id }) => id));
    const cited = [
      ...[...sheets.values()].map(({ file, value }) => ({ file, value: sourcesOfSheet(value) })),
      ...[...methods.values()].map(({ file, value }) => ({ file, value: sourcesOfMethod(value) })),
      ...[...takeoffs.values()].map(({ file, value }) => ({ file, value: sourcesOfFamily(value) })),
      ...[...schemes.values()].map(({ file, value }) => ({ file, value: sourcesOfScheme(value) })),
      ...[...topics.values()].map(({ file, value }) => ({ file, value: sourcesOfTopic(value) })),
      ...[...glossary.values()].map(({ file, value }) => ({ file, value: sourcesOfTerms(value) })),
      ...(hazards ? [{ file: hazards.file, value: sourcesOfHazards(hazards.value) }] : []),
    ];
    for (const each of cited) checkMentions(each, 'UNKNOWN_SOURCE', 'source', known);
  }
  if (hazards) {
    const known = new Set(hazards.value.map(({ id }) => id));
    for (const { file, value } of methods.values()) {
      const mentions = { file, value: hazardsOfMethod(value) };
      checkMentions(mentions, 'UNKNOWN_HAZARD', 'hazard', known);
    }
  }
}
