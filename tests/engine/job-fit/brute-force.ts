/** Every way to send people to roles, for small cases: the slow and plain answer to hold the quick one to. */
import type { Costs } from '#engine/job-fit/least-cost-fill.ts';

export function bruteForce(
  places: readonly number[],
  costs: Costs,
): { readonly filled: number; readonly cost: number } {
  let best = { filled: 0, cost: 0 };
  const room = [...places];
  const send = (person: number, filled: number, cost: number): void => {
    if (person === costs.length) {
      if (filled > best.filled || (filled === best.filled && cost < best.cost)) {
        best = { filled, cost };
      }
      return;
    }
    send(person + 1, filled, cost);
    costs[person]!.forEach((one, role) => {
      if (one === undefined || room[role] === 0) return;
      room[role]! -= 1;
      send(person + 1, filled + 1, cost + one);
      room[role]! += 1;
    });
  };
  send(0, 0, 0);
  return best;
}
