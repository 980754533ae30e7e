/**
 * How long compiling all of the shipped content takes, beside parsing the same YAML and nothing more:
 * the time of the processor, of which other programs take none away, in the best of several runs. Fails
 * above 300 ms.
 */
import { parseDocument } from 'yaml';
import { compile } from '#engine/compile/compile.ts';
import { contentFolder, readContentFiles } from '#server/content.ts';

const bound = 300;
const runs = 15;

const files = readContentFiles(contentFolder()).filter(({ path }) => path.endsWith('.yaml'));
const size = files.reduce((sum, { text }) => sum + text.length, 0);

/** In milliseconds, of all threads. */
const timed = (work: () => unknown): number => {
  const start = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};

const first = timed(() => compile(files));
const times = Array.from({ length: runs }, () => ({
  compile: timed(() => compile(files)),
  parse: timed(() => files.forEach(({ text }) => parseDocument(text))),
}));
const compiled = Math.min(...times.map((each) => each.compile));
const parsed = Math.min(...times.map((each) => each.parse));

const { methods, dataSheets } = compile(files).content;
console.log(
  `${files.length} files, ${Math.round(size / 1000)} kB, ${methods.size} methods, ${dataSheets.size} data sheets`,
);
console.log(`compile   ${compiled.toFixed(0)} ms (the first time, cold, ${first.toFixed(0)} ms)`);
console.log(`YAML only ${parsed.toFixed(0)} ms`);
console.log(`ratio     ${(compiled / parsed).toFixed(2)}`);
if (compiled > bound) {
  console.log(`Compiling takes more than ${bound} ms.`);
  process.exitCode = 1;
}
