/**
 * A page on its way out: it names its character set, and is packed where the browser can unpack it.
 * Whoever is signed in gets it unpacked: the length of what is packed tells what a secret in it has in
 * common with what a stranger made the page say (BREACH, https://www.breachattack.com).
 */
export function pageAnswer(asked: Headers, answer: Response, isSignedIn: boolean): Response {
  const { headers, status, statusText, body } = answer;
  if (!headers.get('content-type')?.startsWith('text/html')) return answer;
  headers.set('content-type', 'text/html; charset=utf-8');
  if (isSignedIn || !body || headers.has('content-encoding') || !takesGzip(asked)) return answer;
  const packed = new Headers(headers);
  packed.set('content-encoding', 'gzip');
  packed.append('vary', 'accept-encoding');
  packed.delete('content-length');
  // The same page, not the same bytes.
  const tag = headers.get('etag');
  if (tag && !tag.startsWith('W/')) packed.set('etag', `W/${tag}`);
  const bytes = body.pipeThrough(new CompressionStream('gzip'));
  return new Response(bytes, { status, statusText, headers: packed });
}

const takesGzip = (asked: Headers): boolean =>
  (asked.get('accept-encoding') ?? '')
    .split(',')
    .map((one) =>
      one
        .trim()
        .toLowerCase()
        .split(/\s*;\s*/),
    )
    .some(([name, weight]) => name === 'gzip' && !/^q=0(\.0+)?$/.test(weight ?? ''));
