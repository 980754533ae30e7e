/**
 * What is wrong with how a page is made: complaints of the browser, missing or weak headers, forms that
 * are out of use, pictures out of shape, and requests that leave the site.
 */
import type { Cookie, Page, Response } from '@playwright/test';

/** Listens from before the page is opened; what it returns tells all that was heard and seen. */
export async function watchPractices(
  page: Page,
): Promise<(answer: Response | null) => Promise<readonly string[]>> {
  const faults: string[] = [];
  const requested: string[] = [];
  const answered: Response[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) faults.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => faults.push(`script: ${error.message}`));
  page.on('requestfailed', (request) => faults.push(`failed: ${request.url()}`));
  page.on('response', (answer) => answered.push(answer));
  page.on('request', (request) => requested.push(request.url()));
  const devtools = await page.context().newCDPSession(page);
  // Deprecated interfaces, mixed content, breaches of policy, cookies: what the browser calls issues.
  devtools.on('Audits.issueAdded', ({ issue: { code, details } }) => {
    // Advice on speed is no fault here: how fast a page is, the figures say.
    if (code === 'PerformanceIssue') return;
    faults.push(`issue: ${code} ${JSON.stringify(Object.values(details)[0])}`);
  });
  await devtools.send('Audits.enable');

  return async (answer) => {
    const { origin } = new URL(page.url());
    const elsewhere = requested.filter((url) => new URL(url).origin !== origin);
    const { errors } = await devtools.send('Page.getAppManifest');
    return [
      ...faults,
      ...elsewhere.map((url) => `another site: ${url}`),
      ...errors.map(({ message }) => `manifest: ${message}`),
      ...headerFaults(answer?.headers() ?? {}),
      ...(await page.evaluate(markupFaults)),
      ...answered.flatMap(answerFaults),
      ...(await page.context().cookies()).flatMap(cookieFaults),
    ];
  };
}

/** Refused or failed, guessed at, or sent plain though it is text. */
function answerFaults(answer: Response): readonly string[] {
  const headers = answer.headers();
  const { pathname } = new URL(answer.url());
  // A page of somebody signed in is sent as it is, on purpose: see src/server/page-answer.ts.
  const isOwnPage = headers['cache-control']?.includes('private') ?? false;
  const isText = /^(text|application)\/(html|css|javascript|json)/.test(
    headers['content-type'] ?? '',
  );
  const isLong = Number(headers['content-length'] ?? Infinity) > 1400;
  const isForGood = pathname.startsWith('/_app/immutable/');
  return [
    ...(answer.status() < 400 ? [] : [`answer: ${answer.status()} ${pathname}`]),
    ...(headers['x-content-type-options'] === 'nosniff' || answer.status() >= 300
      ? []
      : [`answer: ${pathname} may be taken for another type`]),
    ...(isText && isLong && !isOwnPage && answer.status() === 200 && !headers['content-encoding']
      ? [`answer: ${pathname} is not packed`]
      : []),
    ...(isForGood && !headers['cache-control']?.includes('immutable')
      ? [`answer: ${pathname} is fetched again each time`]
      : []),
  ];
}

/** What signs somebody in is out of reach of scripts and of other sites. */
const cookieFaults = ({ name, httpOnly, sameSite }: Cookie): readonly string[] =>
  /session/.test(name) && !(httpOnly && sameSite !== 'None') ? [`cookie: ${name} is exposed`] : [];

function headerFaults(headers: Readonly<Record<string, string>>): readonly string[] {
  const policy = headers['content-security-policy'] ?? '';
  const scripts = /script-src ([^;]+)/.exec(policy)?.[1] ?? '';
  return [
    ...(scripts === '' || scripts.includes('unsafe') ? ['header: scripts of others may run'] : []),
    ...(policy.includes("object-src 'none'") ? [] : ['header: plug-ins may run']),
    ...(policy.includes("base-uri 'self'") ? [] : ['header: the base may be moved']),
    ...(policy.includes("frame-ancestors 'none'") ? [] : ['header: the page may be framed']),
    ...(headers['x-content-type-options'] === 'nosniff' ? [] : ['header: types are guessed']),
    ...(headers['referrer-policy'] ? [] : ['header: addresses are told to others']),
    ...(headers['cross-origin-opener-policy'] ? [] : ['header: openers keep a hold']),
    ...(headers['content-type']?.includes('charset=utf-8') ? [] : ['header: no charset']),
  ];
}

/** Runs in the page. */
function markupFaults(): readonly string[] {
  const { doctype, images } = document;
  const outOfShape = [...images].filter(({ naturalWidth, naturalHeight, width, height }) => {
    const isDrawn = naturalHeight > 0 && height > 0;
    return isDrawn && Math.abs(naturalWidth / naturalHeight - width / height) > 0.05;
  });
  const unsized = [...images].filter(
    (image) => !image.hasAttribute('width') || !image.hasAttribute('height'),
  );
  const unnamed = [...document.querySelectorAll<HTMLAnchorElement>('a[href]')].filter(
    (link) =>
      !link.textContent.trim() &&
      !link.ariaLabel &&
      !link.querySelector('img[alt]:not([alt=""]), svg[aria-label], svg title'),
  );
  const plain = [...document.querySelectorAll('[src^="http:"], link[href^="http:"]')].filter(
    (part) => !(part.getAttribute('src') ?? part.getAttribute('href'))?.startsWith(location.origin),
  );
  const viewport = document.querySelector<HTMLMetaElement>('meta[name=viewport]')?.content ?? '';
  const ids = [...document.querySelectorAll('[id]')].map(({ id }) => id);
  const twice = ids.filter((id, place) => ids.indexOf(id) !== place);
  return [
    ...(doctype?.name === 'html' && doctype.publicId === '' ? [] : ['markup: no html doctype']),
    ...(document.compatMode === 'CSS1Compat' ? [] : ['markup: quirks mode']),
    ...(/^(en|es)$/.test(document.documentElement.lang) ? [] : ['markup: no language']),
    ...(document.title === '' ? ['markup: no title'] : []),
    ...(/user-scalable=no|maximum-scale=1\b/.test(viewport) ? ['markup: zoom is refused'] : []),
    ...(viewport.includes('width=device-width') ? [] : ['markup: no width for phones']),
    ...unsized.map(({ src }) => `markup: ${src} has no size before it is there`),
    ...unnamed.map((link) => `markup: a link to ${link.getAttribute('href')} has no name`),
    ...plain.map((part) => `markup: mixed content, ${part.outerHTML.slice(0, 80)}`),
    ...outOfShape.map(({ src }) => `markup: ${src} is out of shape`),
    ...twice.map((id) => `markup: #${id} stands twice`),
  ];
}
