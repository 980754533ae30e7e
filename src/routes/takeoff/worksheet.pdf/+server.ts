import { error } from '@sveltejs/kit';
import { currentContent } from '#server/current-content.ts';
import { orderedSheet } from '#server/worksheet/ordered-sheet.ts';
import { worksheetPdf } from '#server/worksheet/worksheet-pdf.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ url }) => {
  const ordered = orderedSheet(await currentContent(), url.searchParams);
  if (!ordered.ok) error(400, ordered.error);
  const { sheet, language } = ordered.value;
  const pdf = await worksheetPdf(sheet, language);
  return new Response(new Uint8Array(pdf), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="underlap-worksheet-${sheet.seed}-${language}.pdf"`,
      // Another content may make another sheet of the same order.
      'cache-control': 'no-cache',
    },
  });
};
