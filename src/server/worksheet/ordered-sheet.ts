import type { Content } from '#engine/compile/content.ts';
import { nearest } from '#engine/compile/nearest.ts';
import { fault, ok, type Result } from '#engine/result.ts';
import { takeoffOf, type Takeoff } from '#engine/takeoff/takeoff.ts';
import { mostProblems, worksheetOf } from '#engine/takeoff/worksheet.ts';
import { languages, type Language } from '#engine/text.ts';
import type { Worksheet } from './worksheet-pdf.ts';

type Ordered = { readonly sheet: Worksheet; readonly language: Language };

const isLanguage = (word: string): word is Language => languages.some((known) => known === word);

/**
 * The sheet that an address orders: families (a list, or one after another), seed, count, lang. What is
 * wrong with it is told in English and Spanish, as its language may be what is wrong.
 */
export function orderedSheet(content: Content, asked: URLSearchParams): Result<Ordered, string> {
  const language = asked.get('lang') ?? 'en';
  if (!isLanguage(language)) {
    return fault(`lang=${language}: en, es.`);
  }
  const seed = (asked.get('seed') ?? '1').trim();
  if (!/^\d{1,9}$/.test(seed)) {
    return fault(`seed=${seed}: up to nine digits; hasta nueve cifras.`);
  }
  const count = Number(asked.get('count') ?? '10');
  if (!Number.isInteger(count) || count < 1 || count > mostProblems) {
    return fault(`count=${asked.get('count')}: 1 to ${mostProblems}; de 1 a ${mostProblems}.`);
  }
  const families = familiesIn(content, asked);
  if (!families.ok) return families;
  const made = worksheetOf(families.value, seed, count);
  if (!made.ok) {
    return fault(`${made.error.family}: no problem comes out; no sale ningún problema.`);
  }
  const sheet = { problems: made.value, seed, revision: content.revision };
  return ok({ sheet, language });
}

/** In the order of the content, whatever the order in the address: the same choice, the same sheet. */
function familiesIn(content: Content, asked: URLSearchParams): Result<readonly Takeoff[], string> {
  const wanted = new Set(
    asked
      .getAll('families')
      .flatMap((list) => list.split(','))
      .filter((id) => id !== ''),
  );
  const known: readonly string[] = [...content.takeoffs.keys()];
  for (const id of wanted) {
    if (known.includes(id)) continue;
    const hint = nearest(id, known) ?? known.join(', ');
    return fault(`families=${id}: unknown, try ${hint}; no existe, pruebe ${hint}.`);
  }
  if (wanted.size === 0) {
    return fault('families: choose one or more; elija una o más.');
  }
  const takeoffs: Takeoff[] = [];
  for (const family of content.takeoffs.values()) {
    const sheet = content.dataSheets.get(family.dataSheet);
    const takeoff = wanted.has(family.id) && sheet ? takeoffOf(family, sheet) : undefined;
    if (takeoff?.ok) takeoffs.push(takeoff.value);
    else if (takeoff) return fault(`${family.id}: ${takeoff.error.message}`);
  }
  return ok(takeoffs);
}
