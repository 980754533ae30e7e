/** What a browser tells the server of a sitting, and what it hears back. */

export type Told =
  | {
      readonly kind: 'answered';
      readonly id: string;
      readonly sequence: number;
      readonly tab: string;
      readonly key: string;
      readonly value: string;
      readonly clientTime: number;
    }
  | { readonly kind: 'page-shown'; readonly key: string; readonly tab: string }
  | { readonly kind: 'left-page' | 'came-back'; readonly tab: string }
  | { readonly kind: 'handed-in' | 'time-ran-out' };

export type Receipt = { readonly as: string } | { readonly refused: string };

export type Clock = { readonly phase: string; readonly left: number; readonly isOver: boolean };

export type Heard = { readonly receipts: readonly Receipt[]; readonly clock: Clock };

/** Sends what was told; undefined where the server was not reached, or could not take it now. */
export type Tell = (told: readonly Told[]) => Promise<Heard | undefined>;

export const tellTo =
  (address: string): Tell =>
  async (told) => {
    try {
      const answer = await fetch(address, {
        method: 'POST',
        headers: { 'content-type': 'application/json', accept: 'application/json' },
        body: JSON.stringify({ told }),
      });
      return answer.ok ? ((await answer.json()) as Heard) : undefined;
    } catch {
      return undefined;
    }
  };
