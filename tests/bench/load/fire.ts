import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { text } from 'node:stream/consumers';
import type { Job, Report } from './client.ts';

/** Has a client in another process send; throws where an answer was not as expected. */
export async function fire(job: Job): Promise<Report> {
  const client = spawn(process.execPath, [join(import.meta.dirname, 'client.ts')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  client.stdin.end(JSON.stringify(job));
  const report = JSON.parse(await text(client.stdout)) as Report;
  if (report.failed > 0) {
    throw new Error(`${report.failed} answers were wrong, the first: ${report.firstFailure}`);
  }
  return report;
}
