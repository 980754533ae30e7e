/**
 * How long a form takes to draw from a large bank, how far apart in difficulty forms are beside plain
 * random drawing, and how evenly the questions are seen. Fails when a bound is broken.
 */
import { drawForm } from '#engine/exam/form.ts';
import type { BankItem } from '#engine/exam/bank.ts';
import { spreadOf, spreadOver } from '#engine/exam/spread.ts';
import { randomFrom, shuffle, whole } from '#engine/random.ts';

const topics = Array.from({ length: 10 }, (_, index) => `topic-${index}`);
const blueprint = new Map(topics.map((topic) => [topic, 4]));

/** Expected proportions right from 0.30 to 0.95; some questions give others away. */
function bankOf(size: number): BankItem[] {
  const random = randomFrom(`bank of ${size}`);
  return Array.from({ length: size }, (_, index) => ({
    id: `q${index}`,
    topic: topics[index % topics.length]!,
    kind: 'choose-one',
    difficulty: whole(random, 300, 950) / 1000,
    exposures: 0,
    enemies: index % 20 === 0 ? [`q${(index + 7) % size}`] : [],
  }));
}

function hold(claim: string, holds: boolean): void {
  console.log(`${holds ? 'holds' : 'FAILS'}  ${claim}`);
  if (!holds) process.exitCode = 1;
}

const large = bankOf(5000);
const times: number[] = [];
for (let seed = 0; seed < 200; seed += 1) {
  const start = performance.now();
  const form = drawForm({ bank: large, blueprint, seed, drawn: 0 });
  times.push(performance.now() - start);
  if (!form.ok) throw new Error(form.error.map(({ code }) => code).join());
}
times.sort((a, b) => a - b);
hold(
  `a form of 40 from a bank of 5,000: ${times[100]!.toFixed(2)} ms in the middle, ` +
    `${times[190]!.toFixed(2)} ms at the 95th of 100, under 20 ms`,
  times[190]! < 20,
);

const forms = 1000;
for (const size of [240, 5000]) {
  const bank = bankOf(size).map((item) => ({ ...item }));
  const place = new Map(bank.map(({ id }, index) => [id, index]));
  const matched = [];
  const seen = new Map<string, number>();
  for (let drawn = 0; drawn < forms; drawn += 1) {
    const form = drawForm({ bank, blueprint, seed: drawn, drawn });
    if (!form.ok) throw new Error(form.error.map(({ code }) => code).join());
    matched.push(form.value);
    for (const { id, exposures } of form.value.items) {
      bank[place.get(id)!] = { ...bank[place.get(id)!]!, exposures: exposures + 1 };
      seen.set(id, exposures + 1);
    }
  }
  const plain = Array.from({ length: forms }, (_, seed) => {
    const random = randomFrom(`plain ${seed}`);
    const drawn = topics.flatMap((topic) =>
      shuffle(
        random,
        bank.filter((item) => item.topic === topic),
      ).slice(0, 4),
    );
    return { difficulty: spreadOf(drawn.map(({ difficulty }) => difficulty)) };
  });
  const [ours, theirs] = [spreadOver(matched), spreadOver(plain)];
  const shown = ({ least, most, spread }: typeof ours): string =>
    `${least.toFixed(3)} to ${most.toFixed(3)}, standard deviation ${spread.toFixed(4)}`;
  console.log(`       bank of ${size}, ${forms} forms, mean expected proportion right:`);
  console.log(`         matched ${shown(ours)}`);
  console.log(`         plain   ${shown(theirs)}`);
  const missed = matched.filter(({ isMatched }) => !isMatched).length;
  const counts = bank.map(({ id }) => seen.get(id) ?? 0);
  console.log(
    `         not matched: ${missed}; seen ${Math.min(...counts)} to ${Math.max(...counts)} times, ` +
      `evenly would be ${((forms * 40) / size).toFixed(1)}`,
  );
  hold(
    `bank of ${size}: forms lie ${(theirs.spread / ours.spread).toFixed(1)} times closer together, over 5`,
    theirs.spread > 5 * ours.spread,
  );
}
