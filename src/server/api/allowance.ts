import { RecentTries } from '../logins/recent-tries.ts';
import type { Limit } from '../logins/throttle.ts';

/** How often each token may ask of each process. */
export const perToken: Limit = { most: 120, seconds: 60 };

export const openAllowance = (): RecentTries => new RecentTries(perToken);
