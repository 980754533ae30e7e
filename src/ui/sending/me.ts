/** Who is signed in on this device, as the server last said: kept, so that it is known without signal. */
import { isFields } from '#engine/fields.ts';
import type { RoleName } from '#ui/account/role-words.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

export type Membership = {
  readonly company: string;
  readonly companyName: string;
  readonly person: string;
  readonly roles: readonly RoleName[];
};

/** Nobody is signed in where there is no name. */
export type Me = { readonly name: string | null; readonly companies: readonly Membership[] };

const place = 'sending-me';
const chosenPlace = 'sending-company';

const isMembership = (value: unknown): boolean =>
  isFields(value) &&
  ['company', 'companyName', 'person'].every((name) => typeof value[name] === 'string') &&
  Array.isArray(value['roles']);

/** Undefined for what no server of ours says. */
export function meFrom(value: unknown): Me | undefined {
  if (!isFields(value)) return undefined;
  const { name, companies } = value;
  const isRight =
    (name === null || typeof name === 'string') &&
    Array.isArray(companies) &&
    companies.every(isMembership);
  return isRight ? (value as Me) : undefined;
}

export const keptMe = (store: Store): Me | undefined => meFrom(store.read(place));

export const keepMe = (store: Store, me: Me): boolean => store.write(place, me);

/** As whom of their companies somebody sends: the one chosen here, or the first. */
export function chosenOf(store: Store, me: Me | undefined): Membership | undefined {
  const chosen = store.read(chosenPlace);
  return me?.companies.find(({ company }) => company === chosen) ?? me?.companies[0];
}

export const keepChosen = (store: Store, company: string): boolean =>
  store.write(chosenPlace, company);
