import { backup } from './backup.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { credential } from './credential.ts';
import { demo } from './demo.ts';
import { doctor } from './doctor.ts';
import { erasePerson } from './erase-person.ts';
import { exportPerson } from './export-person.ts';
import { keys } from './keys.ts';
import { mark } from './mark.ts';
import { migrate } from './migrate.ts';
import { orders } from './orders.ts';
import { remark } from './remark.ts';
import { restore } from './restore.ts';
import { takeoff } from './takeoff.ts';
import { verify } from './verify.ts';
import { written } from './written.ts';

/** Every command by its name, in the order in which the usage lists them. */
export const commands: ReadonlyMap<string, Command> = new Map([
  ['check', check],
  ['orders', orders],
  ['mark', mark],
  ['takeoff', takeoff],
  ['written', written],
  ['demo', demo],
  ['doctor', doctor],
  ['backup', backup],
  ['restore', restore],
  ['migrate', migrate],
  ['verify', verify],
  ['keys', keys],
  ['credential', credential],
  ['remark', remark],
  ['export-person', exportPerson],
  ['erase-person', erasePerson],
]);
