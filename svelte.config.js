import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import adapter from '@sveltejs/adapter-node';
import { vitePreprocess } from '@sveltejs/vite-plugin-svelte';

// The one script that stands in the page: as a file it would wait behind everything that comes after it.
const inPage = /<script>([^]*)<\/script>/.exec(readFileSync('src/app.html', 'utf8'))?.[1] ?? '';
const inPageHash = createHash('sha256').update(inPage).digest('base64');

/** @type {import('@sveltejs/kit').Config} */
export default {
  preprocess: vitePreprocess(),
  compilerOptions: { runes: true },
  kit: {
    adapter: adapter(),
    typescript: {
      config: (config) => ({ ...config, include: [...config.include, '../*.config.ts'] }),
    },
    // The styles stand in the page itself: on a slow line each file of them would wait for its turn.
    inlineStyleThreshold: 20_000,
    // Absolute addresses: a page kept for use without signal is the same at every depth.
    paths: { relative: false },
    // The layout sees to it, as browsers may refuse.
    serviceWorker: { register: false },
    csp: {
      // Nonces on pages made for a request, hashes on pages made at build.
      mode: 'auto',
      directives: {
        'default-src': ['self'],
        'script-src': ['self', `sha256-${inPageHash}`],
        // Drawings and transitions set lengths and colours as style attributes.
        'style-src': ['self', 'unsafe-inline'],
        'img-src': ['self', 'data:', 'blob:'],
        'font-src': ['self'],
        'connect-src': ['self'],
        'worker-src': ['self'],
        'manifest-src': ['self'],
        'object-src': ['none'],
        'base-uri': ['self'],
        'form-action': ['self'],
        'frame-ancestors': ['none'],
      },
    },
  },
};
