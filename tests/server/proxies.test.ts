import { describe, expect, test } from 'vitest';
import { believedHeaders, parseProxies, type Proxies } from '#server/proxies.ts';

const proxies = (text: string): Proxies => {
  const parsed = parseProxies(text);
  if (!parsed.ok) throw new Error(`faulty entry: ${parsed.error}`);
  return parsed.value;
};

describe('truth', () => {
  test.each([
    ['', '127.0.0.1', false],
    ['127.0.0.1', '127.0.0.1', true],
    ['127.0.0.1', '127.0.0.2', false],
    ['10.0.0.0/8', '10.200.3.4', true],
    ['10.0.0.0/8', '11.0.0.1', false],
    ['10.0.0.0/8', '::ffff:10.1.1.1', true],
    ['::1, 192.0.2.0/24', '::1', true],
    ['fd00::/8', 'fd12::9', true],
    ['127.0.0.1', undefined, false],
  ])('a list of "%s" trusts %s: %s', (list, address, trusted) => {
    expect(proxies(list).trust(address)).toBe(trusted);
  });

  test.each(['localhost', '10.0.0.0/33', '10.0.0.0/', '10.0.0.0/8/8', '::1/129', '10.0.0/8'])(
    '"%s" is refused as an entry',
    (entry) => {
      expect(parseProxies(`127.0.0.1,${entry}`)).toEqual({ ok: false, error: entry });
    },
  );

  test('a stranger cannot claim https, another host or another address', () => {
    const claimed = {
      host: 'here:4173',
      'x-forwarded-proto': 'https',
      'x-forwarded-host': 'elsewhere',
      'x-forwarded-for': '192.0.2.9',
    };
    expect(believedHeaders(claimed, '198.51.100.7', proxies('127.0.0.1'))).toEqual({
      host: 'here:4173',
      'x-forwarded-proto': 'http',
      'x-forwarded-for': '198.51.100.7',
    });
  });

  test('of a trusted proxy the word it added last is believed', () => {
    const forwarded = {
      host: 'inside:4173',
      'x-forwarded-proto': 'http, https',
      'x-forwarded-host': 'training.example',
      'x-forwarded-for': '203.0.113.1, 192.0.2.9',
    };
    expect(believedHeaders(forwarded, '127.0.0.1', proxies('127.0.0.1'))).toEqual({
      host: 'inside:4173',
      'x-forwarded-proto': 'https',
      'x-forwarded-host': 'training.example',
      'x-forwarded-for': '192.0.2.9',
    });
  });
});
