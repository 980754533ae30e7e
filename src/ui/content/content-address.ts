/** Where content is asked for. Both sides agree: pages, and the keeper of what opens without signal. */

/** What is current: never kept by a browser on its own. */
export const currentAddress = '/content/current';

/** The answer there. */
export type CurrentContent = {
  readonly revision: string;
  /** The build that answers, and so writes the text of the parts. */
  readonly build: string;
  /** Every part of the content. */
  readonly parts: readonly string[];
};

/** A part of the content, right for ever: it names its revision and the build that reads it. */
export const contentAddress = (revision: string, part: string, build: string): string =>
  `/content/${revision}/${part}?build=${build}`;

export const methodPart = (id: string): string => `methods/${encodeURIComponent(id)}`;

export const writtenPart = (id: string): string => `written/${encodeURIComponent(id)}`;

export const takeoffPart = (id: string): string => `takeoffs/${encodeURIComponent(id)}`;
