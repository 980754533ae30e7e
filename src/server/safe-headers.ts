/** What every answer tells the browser, pages and files alike. */
export const safeHeaders: Readonly<Record<string, string>> = {
  'x-content-type-options': 'nosniff',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
};

/** For what was made at build: a policy written into a page cannot say who may frame it. */
export const framedByNobody = "frame-ancestors 'none'";
