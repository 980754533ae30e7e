import type { IncomingHttpHeaders } from 'node:http';
import { BlockList, isIP } from 'node:net';
import { fault, ok, type Result } from '#engine/result.ts';

/** The addresses whose word on protocol, host and sender is taken. */
export type Proxies = Readonly<{ trust: (address: string | undefined) => boolean }>;

/**
 * Reads a list such as `127.0.0.1, 10.0.0.0/8, ::1`. An empty text trusts nobody.
 * A faulty entry is returned as it stands.
 */
export const parseProxies = (text: string): Result<Proxies, string> => {
  const list = new BlockList();
  for (const entry of text.split(',').map((part) => part.trim())) {
    if (entry === '') continue;
    const [address = '', prefix, ...rest] = entry.split('/');
    const version = isIP(address);
    const bits = version === 4 ? 32 : 128;
    const width = prefix === undefined ? bits : /^\d{1,3}$/.test(prefix) ? Number(prefix) : NaN;
    if (version === 0 || rest.length > 0 || !(width <= bits)) return fault(entry);
    list.addSubnet(address, width, version === 4 ? 'ipv4' : 'ipv6');
  }
  return ok({
    trust: (address) => {
      // An IPv4 peer of a socket that listens on both is written as ::ffff:192.0.2.1.
      const plain = (address ?? '').replace(/^::ffff:(?=\d+\.)/i, '');
      const version = isIP(plain);
      return version !== 0 && list.check(plain, version === 4 ? 'ipv4' : 'ipv6');
    },
  });
};

const last = (value: string | readonly string[] | undefined): string | undefined =>
  (typeof value === 'string' ? value : value?.at(-1))?.split(',').at(-1)?.trim();

/**
 * The headers as the app may believe them: what a trusted proxy says of protocol and host, else
 * plain http and the host that was asked for; and in `x-forwarded-for` the one address that the
 * nearest trusted hop saw. Whatever a stranger claims is dropped.
 */
export const believedHeaders = (
  headers: IncomingHttpHeaders,
  address: string | undefined,
  proxies: Proxies,
): IncomingHttpHeaders => {
  const trusted = proxies.trust(address);
  const host = trusted ? last(headers['x-forwarded-host']) : undefined;
  const sender = trusted ? last(headers['x-forwarded-for']) : undefined;
  const { 'x-forwarded-host': _host, 'x-forwarded-port': _port, ...others } = headers;
  return {
    ...others,
    ...(host ? { 'x-forwarded-host': host } : {}),
    'x-forwarded-proto':
      trusted && last(headers['x-forwarded-proto']) === 'https' ? 'https' : 'http',
    'x-forwarded-for': sender || address || 'unknown',
  };
};
