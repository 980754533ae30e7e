export const kinds = ['sqlite', 'postgres'] as const;

/** Which database it is: the little that differs asks for this. */
export type Kind = (typeof kinds)[number];
