import { type Database, openExisting } from '#server/database/open-database.ts';
import { type Settings, settingsFrom } from '#server/settings.ts';
import { MisuseError } from './command.ts';

/** The settings of the environment, as the server reads them. */
export function settingsHere(): Settings {
  const settings = settingsFrom(process.env);
  if (!settings.ok) throw new MisuseError(settings.error.join('\n'));
  return settings.value;
}

/** Stops where there are no records: a slip in a setting would otherwise read as an empty company. */
export function requireRecords({ place }: Settings): Database {
  const records = openExisting(place);
  if (records) return records;
  const where = 'folder' in place ? place.folder : '';
  throw new MisuseError(`There are no records in ${where}. Set DATA_DIR to where they are.`);
}

export async function withRecords<T>(work: (records: Database) => Promise<T>): Promise<T> {
  const records = requireRecords(settingsHere());
  try {
    return await work(records);
  } finally {
    await records.close();
  }
}
