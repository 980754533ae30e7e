/**
 * How fast an address of a running server is answered, beside a bare endpoint of the same server, which asks
 * the records for nothing: with one connection and with sixteen, that stay open and ask again as soon as they
 * have their answer. The server must trust this machine as a proxy.
 */
import { Agent, get } from 'node:http';

export type Ask = () => {
  readonly address: string;
  readonly headers: Readonly<Record<string, string>>;
};

const seconds = 3;
let asked = 0;

/** As through a proxy, and from another address each time, as strangers come: so none is held back. */
const from = (): string => {
  asked += 1;
  return `10.${(asked >> 16) & 255}.${(asked >> 8) & 255}.${asked & 255}`;
};

const answered = (agent: Agent, { address, headers }: ReturnType<Ask>): Promise<number> =>
  new Promise((resolve, reject) => {
    get(address, { agent, headers: { ...headers, 'x-forwarded-for': from() } }, (answer) => {
      answer.resume();
      answer.on('end', () => resolve(answer.statusCode ?? 0));
    }).on('error', reject);
  });

const share = (sorted: readonly number[], part: number): number =>
  sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? 0;

async function timesOf(ask: Ask, connections: number): Promise<readonly number[]> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  const end = performance.now() + 1000 * seconds;
  const one = async () => {
    while (performance.now() < end) {
      const start = performance.now();
      const status = await answered(agent, ask());
      if (status !== 200) throw new Error(`answered ${status}`);
      times.push(performance.now() - start);
    }
  };
  await Promise.all(Array.from({ length: connections }, one));
  agent.destroy();
  return times.sort((a, b) => a - b);
}

const told = (times: readonly number[]) =>
  `half within ${share(times, 0.5).toFixed(1)} ms, 99 of 100 within ${share(times, 0.99).toFixed(1)} ms, ${(times.length / seconds).toFixed(0)} a second`;

export async function besideBare(what: string, page: Ask, bare: Ask): Promise<void> {
  for (const connections of [1, 16]) {
    const [ours, plain] = [await timesOf(page, connections), await timesOf(bare, connections)];
    console.log(`  ${connections} connections, ${what}`);
    console.log(`    page  ${told(ours)}`);
    console.log(`    bare  ${told(plain)}`);
    const ratio = (part: number) => (share(ours, part) / share(plain, part)).toFixed(1);
    console.log(`    page / bare: ${ratio(0.5)} at half, ${ratio(0.99)} at 99 of 100`);
  }
}
