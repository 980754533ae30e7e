/** What stands on a crew card. */
export type PrintedCard = {
  readonly id: string;
  readonly name: string;
  readonly number: string | null;
  readonly expiresAt: string;
  readonly address: string;
  readonly qr: { readonly size: number; readonly path: string };
};
