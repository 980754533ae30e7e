const most = 12;

/** The twelve months before that of a day, as `2030-04`, the last one first. */
export const monthsBefore = (day: string): readonly string[] => {
  const months = Number(day.slice(0, 4)) * 12 + Number(day.slice(5, 7)) - 1;
  return Array.from({ length: most }, (_, place) => {
    const month = months - 1 - place;
    return `${Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}`;
  });
};
