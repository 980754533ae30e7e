import { within } from '#server/access/act.ts';
import { columnsOf, schemesNow } from '#server/board/qualifications.ts';
import { dayFrom } from '#server/board/records-of.ts';
import { figures } from '#server/report/figures.ts';
import { monthFrom } from '#server/report/month.ts';
import { monthlyReportPdf } from '#server/report/monthly-report-pdf.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = async ({ locals, url }) => {
  const { db, act } = within(locals);
  const schemes = await schemesNow();
  const month = monthFrom(url.searchParams.get('month') ?? '', dayFrom(act.at));
  const report = {
    companyName: act.by.companyName,
    columns: columnsOf(schemes),
    figures: await figures(db, act.by.company, act.at, schemes, month),
  };
  const pdf = await monthlyReportPdf(report, locals.language);
  return new Response(new Uint8Array(pdf), {
    headers: {
      'content-type': 'application/pdf',
      'content-disposition': `attachment; filename="report-${month.from.slice(0, 7)}.pdf"`,
    },
  });
};
