export const languages = ['en', 'es'] as const;

export type Language = (typeof languages)[number];

/** What a person reads, once in every language of the product. */
export type Text = Readonly<Record<Language, string>>;
