/** What one check of a server found. A fault says how to mend it. */
export type Finding = {
  readonly check: string;
  readonly found: string;
  readonly state: 'ok' | 'fault';
  readonly cure?: string;
};

export const well = (check: string, found: string): Finding => ({ check, found, state: 'ok' });

export const ill = (check: string, found: string, cure: string): Finding => ({
  check,
  found,
  state: 'fault',
  cure,
});

/** A finding of a check that counts faults. */
export const tallied = (check: string, faults: readonly string[], cure: string): Finding =>
  faults.length === 0 ? well(check, 'no faults') : ill(check, faults.join('; '), cure);
