import { error } from '@sveltejs/kit';
import { languages } from '#engine/text.ts';
import { within } from '#server/access/act.ts';
import { originOf } from '#server/certificates/addresses.ts';
import { cardPdf } from '#server/certificates/card-pdf.ts';
import { certificatePdf } from '#server/certificates/certificate-pdf.ts';
import { paperOf } from '#server/certificates/downloads.ts';
import { papers, usualPaper } from '#server/certificates/on-paper.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ params, locals, url }) => {
  const { db, act, desk } = within(locals);
  const paper = await paperOf(db, act.by, params.certificate, originOf(desk.settings, url));
  if (!paper) error(404);
  const wanted = url.searchParams;
  const language = languages.find((one) => one === wanted.get('lang')) ?? locals.language;
  const size = papers.find((one) => one === wanted.get('paper')) ?? usualPaper[language];
  const isCard = wanted.get('kind') === 'card';
  const pdf = await (isCard ? cardPdf : certificatePdf)(paper, language, size);
  const name = `${isCard ? 'card' : 'certificate'}-${paper.scope.scheme}-${language}.pdf`;
  return new Response(new Uint8Array(pdf), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="${name}"`,
    },
  });
};
