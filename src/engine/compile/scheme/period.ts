import { periodUnits, type Period } from '#engine/calendar.ts';
import type { Quantity } from '#engine/measure/quantity.ts';
import { quantityOf, timeTaken } from '#engine/compile/quantity.ts';
import type { Here, Reader } from '#engine/compile/reader.ts';
import { placeOf } from '#engine/compile/source-file.ts';
import { plain } from '#engine/compile/words.ts';

const form = /^([1-9]\d{0,3}) (day|week|month|year)s?$/;

/** A span of the calendar: `30 days`, `6 weeks`, `18 months`, `3 years`. */
export const period: Reader<Period> = {
  blank: { count: 1, unit: 'days' },
  read: (here) => {
    const written = plain.read(here);
    const [, count, one] = form.exec(written) ?? [];
    const unit = periodUnits.find((each) => each === `${one}s`);
    if (unit !== undefined) return { count: Number(count), unit };
    if (written !== '') badPeriod(here, `"${written}" is no span of the calendar.`);
    return period.blank;
  },
};

function badPeriod({ file, node }: Here, message: string): void {
  if (!node) return;
  const cure = 'Write a whole number and days, weeks, months or years: 18 months.';
  file.fault('BAD_PERIOD', placeOf(node), message, cure);
}

/** Time that somebody has for something: some of it. */
export const timeAllowed: Reader<Quantity<'time'>> = {
  blank: timeTaken.blank,
  read: (here) => {
    const found = quantityOf('time').read(here);
    if (!found || found.value.gt(0n) || !here.node) return found ?? timeTaken.blank;
    const message = 'In no time nothing can be shown.';
    here.file.fault('BAD_PERIOD', placeOf(here.node), message, 'Write a time above 0: 45 min.');
    return found;
  },
};
