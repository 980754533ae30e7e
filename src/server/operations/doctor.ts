/** Checks a server from what it stands on to what it keeps; changes nothing. */
import { settingsFrom } from '../settings.ts';
import { type Finding, ill, well } from './finding.ts';
import { buildCheck, contentCheck, folderCheck, nodeCheck, roomCheck } from './machine-checks.ts';
import { recordsFindings } from './records-findings.ts';

export type { Finding } from './finding.ts';

export async function examine(
  environment: Readonly<Record<string, string | undefined>>,
  now: Date,
): Promise<readonly Finding[]> {
  const machine = [nodeCheck(), buildCheck(), contentCheck()];
  const settings = settingsFrom(environment);
  if (!settings.ok) {
    const cure = 'Mend the settings; the README lists them.';
    return [...machine, ...settings.error.map((said) => ill('settings', said, cure))];
  }
  return [
    ...machine,
    well('settings', 'can be used'),
    folderCheck(settings.value),
    roomCheck(settings.value),
    ...(await recordsFindings(settings.value, now)),
  ];
}
