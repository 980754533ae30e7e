/** Loaded before a server: sets its clock back by a day and a half once a file of that name is there. */
import { existsSync } from 'node:fs';

const Real = Date;
const file = process.env['CLOCK_BACK'] ?? '';
const shift = 36 * 60 * 60 * 1000;
const now = () => Real.now() - (existsSync(file) ? shift : 0);

globalThis.Date = new Proxy(Real, {
  construct: (target, args: unknown[]) =>
    args.length === 0 ? new Real(now()) : (Reflect.construct(target, args) as Date),
  get: (target, name) => (name === 'now' ? now : (Reflect.get(target, name) as unknown)),
});
