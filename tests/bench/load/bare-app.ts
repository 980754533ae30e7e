/**
 * An app of the same framework that does nothing: it reads JSON and answers JSON of the size that a
 * submission's answer has. Built into a folder that is thrown away, served as the app is.
 */
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

const root = join(import.meta.dirname, '../../..');

const files: Readonly<Record<string, string>> = {
  'package.json': '{"type": "module", "private": true}',
  'vite.config.js': `
    import { sveltekit } from '@sveltejs/kit/vite';
    export default { plugins: [sveltekit()] };`,
  'svelte.config.js': `
    import adapter from '@sveltejs/adapter-node';
    export default { kit: { adapter: adapter() } };`,
  'src/app.html':
    '<!doctype html><html><head>%sveltekit.head%</head><body>%sveltekit.body%</body></html>',
  'src/routes/attempts/+server.js': `
    import { json } from '@sveltejs/kit';
    export const POST = async ({ request }) => {
      const { attempts } = await request.json();
      const { id } = attempts[0].kept;
      return json({ receipts: [{ id, kept: 'now', score: 87.5, outcome: 'rework' }] });
    };`,
  'serve.js': `
    import { createServer } from 'node:http';
    process.env['PROTOCOL_HEADER'] ??= 'x-forwarded-proto';
    const { handler } = await import('./build/handler.js');
    const server = createServer(handler);
    server.listen(0, '127.0.0.1', () => console.log('http://127.0.0.1:' + server.address().port));`,
};

type BareApp = { readonly address: string; readonly stop: () => void };

/** Throws where it cannot be built. */
export async function startBareApp(): Promise<BareApp> {
  // Below the project, so that its packages are found.
  const folder = mkdtempSync(join(root, 'build', 'bare-'));
  for (const [path, content] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), content);
  }
  const vite = join(root, 'node_modules/vite/bin/vite.js');
  const built = spawnSync(process.execPath, [vite, 'build'], { cwd: folder, encoding: 'utf8' });
  if (built.status !== 0) throw new Error(built.stdout + built.stderr);
  const server = spawn(process.execPath, ['serve.js'], {
    cwd: folder,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    server.stdout.on('data', (chunk: Buffer) => resolve(chunk.toString().trim()));
    server.on('close', () => reject(new Error('The bare app has ended.')));
  });
  return {
    address,
    stop: () => {
      server.kill('SIGKILL');
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
