/** Something that waits for the office or for an examiner, as the server tells it. */
export type AttentionItem =
  | { readonly kind: 'suspended' | 'lapsed'; readonly scheme: string; readonly people: number }
  | {
      readonly kind: 'ending';
      readonly within: 0 | 30 | 60;
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
  | { readonly kind: 'late'; readonly id: string; readonly title: string; readonly people: number };
