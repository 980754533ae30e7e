/** What an installed app is called and looks like. One id makes it the same app in every language. */
import type { Language } from '#engine/text.ts';
import { m } from '#ui/messages/generated/messages.js';

/** The light paper of the drawing set. */
const paper = '#f7f4ec';

export const manifestIn = (locale: Language) => ({
  id: '/',
  start_url: '/',
  scope: '/',
  lang: locale,
  dir: 'ltr',
  name: m.product_name({}, { locale }),
  short_name: m.product_name({}, { locale }),
  description: m.product_promise({}, { locale }),
  display: 'standalone',
  background_color: paper,
  theme_color: paper,
  icons: [
    { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' },
    { src: '/icon-192.png', sizes: '192x192', type: 'image/png', purpose: 'any' },
    { src: '/icon-512.png', sizes: '512x512', type: 'image/png', purpose: 'any' },
    { src: '/icon-maskable-512.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
  ],
  shortcuts: [
    { name: m.section_practise({}, { locale }), url: '/practise' },
    { name: m.section_search({}, { locale }), url: '/search' },
    { name: m.attempts_title({}, { locale }), url: '/attempts' },
  ],
});
