import type { FastifyRequest } from 'fastify';
import ipaddr from 'ipaddr.js';

/** What one machine or household has for itself in version 6: it can ask from any address in it. */
const NETWORK_BITS = 64;

/** Whom a request is counted by: the address that asks, as far as trusted proxies tell, and in version 6 the network it stands in. */
export function askerOf({ ip }: Pick<FastifyRequest, 'ip'>): string {
  if (!ipaddr.isValid(ip)) return ip;
  const address = ipaddr.process(ip);
  if (address.kind() === 'ipv4') return address.toString();
  return `${ipaddr.IPv6.networkAddressFromCIDR(`${address.toString()}/${NETWORK_BITS}`).toString()}/${NETWORK_BITS}`;
}
