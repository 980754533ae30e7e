import { paraglideVitePlugin } from '@inlang/paraglide-js';
import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig } from 'vite';

// What most pages share is fetched as two files and not as forty: they pack better together.
const shared = {
  groups: [
    { name: 'frame', minShareCount: 40 },
    { name: 'common', minShareCount: 12 },
  ],
};

export default defineConfig(({ isSsrBuild }) => ({
  build: isSsrBuild ? {} : { rolldownOptions: { output: { codeSplitting: shared } } },
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
}));
