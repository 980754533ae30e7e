/** Something that waits for the office, as the server tells it. */
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
  | { readonly kind: 'applications'; readonly open: number }
  | { readonly kind: 'late'; readonly id: string; readonly title: string; readonly people: number };
