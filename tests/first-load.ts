/**
 * Weighs the script a browser must fetch before a page works, gzipped, from the built app:
 *
 *   node tests/first-load.ts ROUTE...     each a route's id, such as / or /method/[id]
 *
 * Fails when one is over the budget. Chunks fetched later, on demand, do not count.
 */
import { readFileSync } from 'node:fs';
import { gzipSync } from 'node:zlib';

const budgetKilobytes = 150;

type Node = { readonly imports: readonly string[]; readonly stylesheets: readonly string[] };

type Manifest = {
  readonly _: {
    readonly client: { readonly imports: readonly string[] };
    readonly nodes: readonly (() => Promise<Node>)[];
    readonly routes: readonly {
      readonly id: string;
      readonly page: {
        readonly layouts: readonly (number | undefined)[];
        readonly leaf: number;
      } | null;
    }[];
  };
};

const output = new URL('../.svelte-kit/output/', import.meta.url);
const { manifest } = (await import(new URL('server/manifest-full.js', output).href)) as {
  readonly manifest: Manifest;
};

const gzipped = (file: string): number =>
  gzipSync(readFileSync(new URL(`client/${file}`, output)), { level: 9 }).length;

const kilobytes = (files: ReadonlySet<string>): number =>
  [...files].reduce((total, file) => total + gzipped(file), 0) / 1000;

for (const id of process.argv.slice(2)) {
  const page = manifest._.routes.find((route) => route.id === id)?.page;
  if (!page) {
    const known = manifest._.routes.filter((route) => route.page).map((route) => route.id);
    console.error(`${id} is no page of the app. There are: ${known.join('  ')}`);
    process.exitCode = 1;
    continue;
  }
  const places = [...page.layouts, page.leaf].filter((place) => place !== undefined);
  const loads = places.flatMap((place) => manifest._.nodes[place] ?? []);
  const nodes = await Promise.all(loads.map((load) => load()));
  const scripts = new Set([...manifest._.client.imports, ...nodes.flatMap((node) => node.imports)]);
  const styles = new Set(nodes.flatMap((node) => node.stylesheets));
  const weight = kilobytes(scripts);
  const over = weight > budgetKilobytes;
  console.log(
    `${id}: ${weight.toFixed(1)} kB of script in ${scripts.size} files, ` +
      `${kilobytes(styles).toFixed(1)} kB of style (gzip; budget ${budgetKilobytes} kB of script)` +
      (over ? ' - OVER' : ''),
  );
  if (over) process.exitCode = 1;
}
