import { template } from '#server/declared/file/declared-file.ts';
import { csvAnswer } from '#server/import/csv-file.ts';
import type { RequestHandler } from './$types';

export const GET: RequestHandler = ({ locals }) =>
  csvAnswer(template(locals.language), 'declared-template.csv');
