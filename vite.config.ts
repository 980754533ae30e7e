import { paraglideVitePlugin } from '@inlang/paraglide-js';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

export default defineConfig({
  // It has a part for Svelte and so would be taken into the build, without the packages it stands on.
  ssr: { external: ['better-auth'] },
  plugins: [
    paraglideVitePlugin({
      project: './src/ui/messages/project.inlang',
      outdir: './src/ui/messages/generated',
      strategy: ['cookie', 'preferredLanguage', 'baseLocale'],
      emitTsDeclarations: true,
    }),
    sveltekit(),
  ],
});
