/** Devices that send attempts and send again whatever was not acknowledged, as the app does offline. */
import type { Receipt } from '#server/attempts/receive.ts';
import { type Company, post, type Someone, type Submission, submission } from './signed-in.ts';

export type Sent = { readonly by: Someone; readonly submission: Submission };

export type Stream = {
  /** Every submission that was acknowledged, by its id. */
  readonly acknowledged: ReadonlyMap<string, Sent>;
  /** How often a submission was sent again, and found kept already. */
  readonly counts: { again: number; before: number };
  /** Resolves once every device has had its last submission acknowledged. */
  readonly stop: () => Promise<void>;
};

const pause = (milliseconds: number) => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Several devices of each apprentice at once; `address` is asked anew for each request. */
export function startSenders(
  { company, apprentices, work }: Company,
  address: () => string,
  devices = 2,
): Stream {
  const acknowledged = new Map<string, Sent>();
  const counts = { again: 0, before: 0 };
  let isOn = true;
  let made = 0;

  const sendUntilKept = async (by: Someone, list: readonly Submission[]) => {
    for (;;) {
      const answer = await post(address(), { company, cookie: by.cookie }, list, 5000)
        .then(async (response) =>
          response.ok
            ? ((await response.json()) as { readonly receipts: readonly Receipt[] })
            : undefined,
        )
        .catch(() => undefined);
      if (answer) {
        answer.receipts.forEach((receipt, place) => {
          if ('refused' in receipt) throw new Error(JSON.stringify(receipt));
          if (receipt.kept === 'before') counts.before += 1;
          acknowledged.set(receipt.id, { by, submission: list[place]! });
        });
        return;
      }
      counts.again += 1;
      await pause(10);
    }
  };

  const device = async (by: Someone) => {
    while (isOn) {
      const list = Array.from({ length: 1 + (made % 3) }, () => submission((made += 1), work));
      await sendUntilKept(by, list);
    }
  };
  const running = Promise.all(
    apprentices.flatMap((by) => Array.from({ length: devices }, () => device(by))),
  );
  return {
    acknowledged,
    counts,
    stop: async () => {
      isOn = false;
      await running;
    },
  };
}
