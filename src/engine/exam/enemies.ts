import type { BankItem } from './bank.ts';

/** Which items stand against which, both ways, whoever of the two says so. */
export type Enemies = ReadonlyMap<string, ReadonlySet<string>>;

export function enemiesIn(bank: readonly BankItem[]): Enemies {
  const found = new Map<string, Set<string>>();
  const set = (a: string, b: string): void => {
    const known = found.get(a);
    if (known) known.add(b);
    else found.set(a, new Set([b]));
  };
  for (const { id, enemies = [] } of bank) {
    for (const enemy of enemies.filter((other) => other !== id)) {
      set(id, enemy);
      set(enemy, id);
    }
  }
  return found;
}

/** Whether an item can stand beside all of these but one that makes room for it. */
export function getsOn(
  enemies: Enemies,
  id: string,
  form: readonly BankItem[],
  leaves?: BankItem,
): boolean {
  const against = enemies.get(id);
  return !against || form.every((item) => item === leaves || !against.has(item.id));
}
