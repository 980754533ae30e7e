/** Photos that wait on this device to be sent, with the check that they belong to: in its database. */

const [name, table] = ['underlap-photos', 'photos'];

type Row = { readonly id: string; readonly check: string; readonly blob: Blob };

const settled = <T>(request: IDBRequest<T>): Promise<T> =>
  new Promise((resolve, reject) => {
    request.onsuccess = () => resolve(request.result);
    request.onerror = () =>
      reject(request.error ?? new Error('The database of the browser failed.'));
  });

async function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(name, 1);
  request.onupgradeneeded = () => {
    request.result.createObjectStore(table, { keyPath: 'id' }).createIndex('check', 'check');
  };
  return settled(request);
}

async function using<T>(
  mode: IDBTransactionMode,
  use: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const database = await opened();
  try {
    return await settled(use(database.transaction(table, mode).objectStore(table)));
  } finally {
    database.close();
  }
}

/** Throws where the browser keeps nothing, or has no room. */
export const putPhoto = async (row: Row): Promise<void> => {
  await using('readwrite', (store) => store.put(row));
};

export const dropPhoto = async (id: string): Promise<void> => {
  await using('readwrite', (store) => store.delete(id));
};

/** Those of a check; none where the browser keeps nothing. */
export const photosOf = (check: string): Promise<readonly Row[]> =>
  using('readonly', (store) => store.index('check').getAll(check) as IDBRequest<Row[]>).catch(
    () => [],
  );
