import { describe, expect, test } from 'vitest';
import { outageOf } from '#server/database/outage.ts';
import { report, traceOf } from '#server/fault-report.ts';
import { logTo } from '#server/log.ts';

describe('truth', () => {
  test('an error is logged by kind and place, never by what its message quotes', () => {
    let text = '';
    const log = logTo('info', (line) => (text += line));
    const thrown = (() => {
      try {
        return JSON.parse('{"name": Ana Apprentice}') as unknown;
      } catch (error) {
        return error;
      }
    })();
    const id = report(log, thrown, { route: '/a', method: 'POST' });
    expect(JSON.parse(text)).toMatchObject({
      event: 'fault',
      id,
      kind: 'SyntaxError',
      route: '/a',
    });
    expect(text).not.toContain('Ana');
    expect(traceOf(thrown).trace).toContain('log.test.ts');
  });

  test('a message that looks like a line of the trace is no part of it', () => {
    const error = new Error('x\n    at Ana (ana@example.com:1:1)');
    error.name = 'ana@example.com';
    expect(JSON.stringify(traceOf(error))).not.toMatch(/ana/i);
  });

  test('a level leaves out what stands below it', () => {
    const lines: string[] = [];
    for (const level of ['off', 'error', 'info'] as const) {
      const log = logTo(level, (line) => void lines.push(line));
      log.info('a');
      log.error('b');
    }
    expect(lines.map((line) => (JSON.parse(line) as { event: string }).event)).toEqual([
      'b',
      'a',
      'b',
    ]);
  });

  test.each([
    [{ code: 'ERR_SQLITE_ERROR', errcode: 5 }, 'BUSY'],
    [{ code: 'ERR_SQLITE_ERROR', errcode: 261 }, 'BUSY'],
    [{ code: 'ERR_SQLITE_ERROR', errcode: 13 }, 'FULL'],
    [{ code: 'ERR_SQLITE_ERROR', errcode: 778 }, 'UNWRITABLE'],
    [{ code: 'ERR_SQLITE_ERROR', errcode: 19 }, undefined],
    [{ code: '57P01' }, 'AWAY'],
    [{ code: '53100' }, 'FULL'],
    [{ code: '53300' }, 'AWAY'],
    [{ code: '23505' }, undefined],
    [{ code: 'ECONNREFUSED', syscall: 'connect' }, 'AWAY'],
    [{ code: 'ENOENT' }, undefined],
    [new Error('Connection terminated unexpectedly'), 'AWAY'],
    [new Error('Client has encountered a connection error and is not queryable'), 'AWAY'],
    [new Error('Client was closed and is not queryable'), 'AWAY'],
    [new Error('x', { cause: { code: '08006' } }), 'AWAY'],
    [new TypeError('x'), undefined],
    [undefined, undefined],
  ])('%j is the outage %s', (error, outage) => {
    expect(outageOf(error)).toBe(outage);
  });
});
