import { spawnSync } from 'node:child_process';

/** Something the person at the keyboard can mend; the message says how. */
export class Trouble extends Error {}

/** @param {string} message */
export const tell = (message) => console.error(message);

/**
 * Runs a program to its end with its output on our stderr; true when it went well.
 * @param {string} program
 * @param {readonly string[]} args
 * @param {Readonly<Record<string, string>>} [env] added to our own
 */
export const run = (program, args, env = {}) =>
  spawnSync(program, args, { stdio: [0, 2, 2], env: { ...process.env, ...env } }).status === 0;

/**
 * Runs a program quietly and returns how it went and all it printed.
 * @param {string} program
 * @param {readonly string[]} args
 */
export const runQuietly = (program, args) => {
  const { status, stdout, stderr, error } = spawnSync(program, args, {
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { ok: status === 0, output: `${stdout ?? ''}${stderr ?? ''}${error?.message ?? ''}` };
};

/** @param {number} start milliseconds, from Date.now() */
export const secondsSince = (start) => `${((Date.now() - start) / 1000).toFixed(1)} s`;
