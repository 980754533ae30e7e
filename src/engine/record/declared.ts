/** A certificate that somebody else issued, as it was shown to the office: declared, not verified. */
export type Declared = {
  readonly id: string;
  readonly title: string;
  readonly issuer: string;
  readonly number: string | null;
  /** The qualification that it comes nearest to. */
  readonly scheme: string | null;
  readonly issuedOn: string;
  /** Included; null where it says none. */
  readonly validUntil: string | null;
  readonly madeAt: string;
};

/** By the field that cannot be used. `ABSENT`: there is no such person or certificate in the company. */
export type DeclaredFault =
  'title' | 'issuer' | 'number' | 'scheme' | 'issuedOn' | 'validUntil' | 'reason' | 'ABSENT';
