import type { Language } from '#engine/text.ts';
import type { DimensionName } from './dimension.ts';
import type { NamedUnit } from './unit.ts';
import { unitIds, units } from './units.ts';
import type { UnitId } from './units.ts';
import { matchAt, written } from './written.ts';

/** What a name may stand for, the usual meaning first: °F is a temperature, or a difference. */
export type Meanings = readonly [usual: NamedUnit, ...others: NamedUnit[]];

const gaps = /[\s.]+/g;

/** All that may be written for a unit. A power is read by its own rule, so `ft2` is none of these. */
const names: readonly (readonly [name: string, unit: NamedUnit])[] = unitIds.flatMap((id) => {
  const unit: NamedUnit = units[id];
  return [id, ...unit.label.en, ...unit.label.es, ...unit.aliases]
    .map((name) => written(name).plain)
    .filter((name) => !/^$|[\d²³]$/.test(name))
    .map((name) => [name, unit] as const);
});

const meanings: ReadonlyMap<string, Meanings> = (() => {
  const found = new Map<string, Meanings>();
  for (const [name, unit] of names) {
    const key = name.replace(gaps, '');
    const known = found.get(key);
    if (known === undefined) found.set(key, [unit]);
    else if (!known.includes(unit)) found.set(key, [...known, unit]);
  }
  return found;
})();

/** The longest name first; none inside a longer word. */
const pattern = new RegExp(
  [...new Set(names.map(([name]) => name))]
    .sort((a, b) => b.length - a.length)
    .map((name) => {
      const gapped = name
        .replace(/[$/]/g, '\\$&')
        .replace(/ /g, '[\\s.]*')
        .replace(/°(?=\p{L})/u, '°\\s*');
      return /\p{L}$/u.test(name) ? `${gapped}(?!\\p{L})\\.?` : gapped;
    })
    .join('|'),
  'yu',
);

/** The unit's name that starts at that place of a plain text, and where it ends. */
export const unitNameAt = (
  plain: string,
  at: number,
): { readonly meanings: Meanings; readonly end: number } | undefined => {
  const name = matchAt(pattern, plain, at)?.[0];
  const found = name === undefined ? undefined : meanings.get(name.replace(gaps, ''));
  return name === undefined || found === undefined
    ? undefined
    : { meanings: found, end: at + name.length };
};

const common: readonly UnitId[] = ['ft', 'in', 'mm', 'm', 'ft2', 'gal', '°F'];
const products = { en: 'ft²/gal, $/ft', es: 'pie²/gal, $/pie' };

/** How the units of a dimension, or the most common ones, are written: `ft, in`, for a message. */
export const unitLabels = (wanted: DimensionName | undefined, language: Language): string => {
  if (wanted === 'product') return products[language];
  const ids = wanted ? unitIds.filter((id) => units[id].dimension.name === wanted) : common;
  return ids
    .map((id) => units[id].label[language][1])
    .filter((label) => label !== '')
    .join(', ');
};
