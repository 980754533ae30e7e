/** Something that waits for the office or for an examiner: told by the server, shown on their home page. */

/** A certificate that ends is told so many days before its last, and on it. */
export const endingSpans = [0, 30, 60] as const;

export type Attention =
  | { readonly kind: 'suspended' | 'lapsed'; readonly scheme: string; readonly people: number }
  | {
      readonly kind: 'ending';
      readonly within: (typeof endingSpans)[number];
      readonly person: string;
      readonly name: string;
      readonly scheme: string;
      readonly until: string;
    }
  | { readonly kind: 'more-ending'; readonly people: number }
  | { readonly kind: 'job'; readonly id: string; readonly title: string; readonly empty: number }
  | { readonly kind: 'appeal'; readonly application: string; readonly name: string }
  | {
      readonly kind: 'handed-in';
      readonly sitting: string;
      readonly name: string;
      readonly scheme: string;
    }
  | { readonly kind: 'applications'; readonly open: number }
  | {
      readonly kind: 'late';
      readonly id: string;
      readonly title: string;
      /** The crews and people whom it is for, by name: several may have work of one title. */
      readonly to: readonly string[];
      readonly people: number;
    };
