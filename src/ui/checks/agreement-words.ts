import { m } from '#ui/messages/generated/messages.js';

export type Agreement = {
  readonly checks: number;
  readonly points: number;
  readonly alike: number;
  readonly kappa:
    | { readonly kappa: number; readonly error: number }
    | { readonly few: 'too-few-checks' | 'too-few-points' | 'no-room-for-disagreement' };
};

/** Below it people read the same work too differently to examine together: this project's own choice. */
const enough = 0.6;

/** What an agreement says, in plain words. */
export function kappaWords({ kappa }: Agreement): string {
  if ('few' in kappa) {
    return kappa.few === 'no-room-for-disagreement'
      ? m.agreement_all_alike()
      : m.agreement_too_few();
  }
  if (kappa.kappa - 1.96 * kappa.error >= enough) return m.agreement_good();
  return kappa.kappa + 1.96 * kappa.error < enough ? m.agreement_poor() : m.agreement_unsure();
}

/** The figure, with its error; a dash where there are too few to say. */
export const kappaFigure = ({ kappa }: Agreement): string =>
  'few' in kappa ? '—' : `κ ${kappa.kappa.toFixed(2)} ± ${kappa.error.toFixed(2)}`;
