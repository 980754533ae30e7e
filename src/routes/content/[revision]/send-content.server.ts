import { error, redirect } from '@sveltejs/kit';
import type { Content } from '#engine/compile/content.ts';
import { toText } from '#engine/compile/transport.ts';
import { currentContent } from '#server/current-content.ts';

/**
 * A part of the content at an address that names its revision, so that whoever keeps a copy never
 * asks again. Another revision than the current one leads to the current one.
 */
export async function sendContent(
  { params, url }: { readonly params: { readonly revision: string }; readonly url: URL },
  partOf: (content: Content) => unknown,
): Promise<Response> {
  const current = await currentContent();
  if (params.revision !== current.revision) {
    const [, root, , ...part] = url.pathname.split('/');
    redirect(307, `/${[root, current.revision, ...part].join('/')}${url.search}`);
  }
  const part = partOf(current);
  if (part === undefined) error(404, 'The content has no such part.');
  return new Response(toText(part), {
    headers: {
      'content-type': 'text/plain; charset=utf-8',
      'cache-control': 'public, max-age=31536000, immutable',
    },
  });
}
