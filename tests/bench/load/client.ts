/**
 * Sends requests over connections that stay open, each connection the next one as soon as it has its
 * answer, and tells how many were answered and how long that took. Runs in a process of its own: reads a
 * `Job` as JSON from standard input, writes a `Report` to standard output.
 */
import { Agent, request } from 'node:http';
import { text } from 'node:stream/consumers';
import { freshId } from '#server/fresh-id.ts';

/** A request: its body in two halves, between which a fresh identifier is put every time. */
export type Shot = {
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: readonly [string, string];
};

export type Job = {
  readonly address: string;
  readonly connections: number;
  /** Taken in turn. */
  readonly shots: readonly Shot[];
  /** It ends after so many seconds, or so many requests. */
  readonly seconds: number;
  readonly most: number;
  /** What every answer holds. */
  readonly expect: string;
};

/** Times in milliseconds. */
export type Report = {
  readonly count: number;
  readonly perSecond: number;
  readonly p50: number;
  readonly p99: number;
  /** Answers that did not hold what they should, the first of them in full. */
  readonly failed: number;
  readonly firstFailure: string | undefined;
};

const send = (agent: Agent, address: string, { path, headers, body }: Shot): Promise<string> =>
  new Promise((resolve, reject) => {
    const bytes = Buffer.from(body[0] + freshId() + body[1]);
    const sent = request(
      address + path,
      { agent, method: 'POST', headers: { ...headers, 'content-length': bytes.length } },
      (answer) => {
        text(answer).then((said) => resolve(`${answer.statusCode} ${said}`), reject);
      },
    );
    sent.on('error', reject);
    sent.end(bytes);
  });

async function shoot({ address, connections, shots, seconds, most, expect }: Job): Promise<Report> {
  const agent = new Agent({ keepAlive: true, maxSockets: connections });
  const times: number[] = [];
  const failures: string[] = [];
  const start = performance.now();
  const end = start + seconds * 1000;
  let taken = 0;
  const connection = async () => {
    while (performance.now() < end && taken < most) {
      const shot = shots[taken % shots.length]!;
      taken += 1;
      const before = performance.now();
      const said = await send(agent, address, shot);
      times.push(performance.now() - before);
      if (!said.includes(expect)) failures.push(said);
    }
  };
  await Promise.all(Array.from({ length: connections }, connection));
  const spent = (performance.now() - start) / 1000;
  agent.destroy();
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  return {
    count: times.length,
    perSecond: times.length / spent,
    p50: at(0.5),
    p99: at(0.99),
    failed: failures.length,
    firstFailure: failures[0],
  };
}

if (process.argv[1] === import.meta.filename) {
  const job = JSON.parse(await text(process.stdin)) as Job;
  process.stdout.write(JSON.stringify(await shoot(job)));
}
