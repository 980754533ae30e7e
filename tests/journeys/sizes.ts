/** The two screens that journeys are made on: a small phone, and a desk. */
export const sizes = {
  phone: { width: 360, height: 740 },
  desktop: { width: 1280, height: 800 },
} as const;
