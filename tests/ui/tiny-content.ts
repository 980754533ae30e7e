import { methodBundle } from '#engine/compile/method-bundle.ts';
import { sequenceOf, type Sequence } from '#engine/method/sequence.ts';
import { siteFrom } from '#engine/method/site.ts';
import { openContent } from '#server/content.ts';
import { soundFolder } from '../content/fixtures.ts';

/** Three steps, one of them on some walls only: small enough to know by heart. */
export const tinyContent = openContent(soundFolder);

const found = methodBundle(tinyContent, 'tiny-wall');
if (!found) throw new Error('The small content of the tests has lost its method.');

export const tinyBundle = found;

export function tinySequence(answers: Readonly<Record<string, string>> = {}): Sequence {
  const site = siteFrom(tinyBundle.method.site, answers);
  const sequence = site.ok && sequenceOf(tinyBundle.method, tinyBundle.dataSheet, site.value);
  if (!sequence || !sequence.ok) throw new Error('No such tiny wall.');
  return sequence.value;
}
