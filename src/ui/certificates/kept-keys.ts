/** The published keys of this server's issuers, kept on the device: with them files are checked without signal. */
import { type PublicKey, publicKeyFrom } from '#engine/credential/public-key.ts';
import { isFields } from '#engine/fields.ts';
import type { Store } from '#ui/attempts/browser-store.ts';

export type KeptKeys = {
  /** Under which credentials name the keys. */
  readonly origin: string;
  /** When they were fetched, by the clock of the device. */
  readonly at: string;
  readonly keys: readonly { readonly id: string; readonly key: PublicKey }[];
};

const [place, address] = ['issuer-keys', '/keys'];

function keysFrom(value: unknown, at: unknown): KeptKeys | undefined {
  if (!isFields(value) || typeof at !== 'string') return undefined;
  const { origin, keys } = value;
  if (typeof origin !== 'string' || !Array.isArray(keys)) return undefined;
  const known = (keys as readonly unknown[]).flatMap((one) => {
    const key = publicKeyFrom(one);
    const id = isFields(one) ? one['kid'] : undefined;
    return key.ok && typeof id === 'string' ? [{ id, key: key.value }] : [];
  });
  // A server that has signed nothing yet has no keys: there is nothing to keep.
  return known.length > 0 ? { origin, at, keys: known } : undefined;
}

export function keptKeys(store: Store): KeptKeys | undefined {
  const found = store.read(place);
  return isFields(found) ? keysFrom(found['set'], found['at']) : undefined;
}

/** Fetches them anew and keeps them; undefined where the server does not answer with any. */
export async function fetchKeys(
  store: Store,
  ask: typeof fetch,
  at: string,
): Promise<KeptKeys | undefined> {
  const answer = await ask(address, { cache: 'no-cache' }).catch(() => undefined);
  const set: unknown = answer?.ok ? await answer.json().catch(() => undefined) : undefined;
  const keys = keysFrom(set, at);
  if (keys) store.write(place, { set, at });
  return keys;
}
