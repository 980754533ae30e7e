/** What is printed, as pages of pictures: by `pdftoppm` of Debian's poppler-utils, where it is installed. */
import { execFileSync, spawnSync } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { APIRequestContext } from '@playwright/test';
import type { Who } from './people-there.ts';
import { addressOf } from './screen.ts';
import type { Known } from './screen.ts';

type Paper = { readonly name: string; readonly route: string; readonly as?: Who };

const certificate = '/company/[company]/certificates/[certificate]/paper.pdf';

export const papers: readonly Paper[] = [
  { name: 'paper-certificate', route: certificate, as: 'holder' },
  { name: 'paper-card', route: `${certificate}?kind=card`, as: 'holder' },
  { name: 'paper-report', route: '/company/[company]/report.pdf', as: 'office' },
  { name: 'paper-worksheet', route: '/takeoff/worksheet.pdf?seed=7' },
];

export const canPrint = spawnSync('pdftoppm', ['-v']).error === undefined;

const most = 4;

/** Asks for the paper and keeps its first pages as pictures beside `file`; tells how many. */
export async function print(
  request: APIRequestContext,
  { address, known }: { readonly address: string; readonly known: Known },
  paper: Paper,
  file: { readonly folder: string; readonly name: string; readonly locale: string },
): Promise<void> {
  // A context's own requests do not say which language it is in.
  const headers = { 'accept-language': file.locale };
  const answer = await request.get(address + addressOf(paper, known), { headers });
  if (!answer.ok()) throw new Error(`${paper.name}: ${answer.status()}`);
  const pdf = join(file.folder, `${file.name}.pdf`);
  writeFileSync(pdf, await answer.body());
  const pages = ['-png', '-r', '80', '-f', '1', '-l', String(most)];
  execFileSync('pdftoppm', [...pages, pdf, join(file.folder, file.name)]);
  rmSync(pdf);
}
