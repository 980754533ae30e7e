import { z } from 'zod';

// Letters, marks, digits and what names are joined with; no controls, no line breaks, nothing invisible.
const written = /^[\p{L}\p{M}\p{N} .,'’´`&()/+-]+$/u;

const said = (most: number) =>
  z
    .string()
    .transform((text) => text.normalize('NFC').replace(/\s+/g, ' ').trim())
    .pipe(z.string().min(1).max(most).regex(written));

/** The name of a person, a crew or a company, tidied; faulty where nothing is left or it is no name. */
export const nameForm = said(80);

/** A number by which a company knows somebody, such as a badge's. */
export const numberForm = z
  .string()
  .transform((text) => text.trim())
  .pipe(
    z
      .string()
      .min(1)
      .max(30)
      .regex(/^[\p{L}\p{N} ._/-]+$/u),
  );
