import { isIPv6 } from 'node:net';

/** What an address is counted by: one host of IPv4, and of IPv6 the 64 bits that a single customer is given. */
export function networkOf(address: string): string {
  const mapped = /^::ffff:(\d+\.\d+\.\d+\.\d+)$/i.exec(address)?.[1];
  if (mapped) return mapped;
  const plain = address.replace(/%.*$/, '');
  if (!isIPv6(plain)) return address;
  const [before = '', after] = plain.split('::');
  const head = before === '' ? [] : before.split(':');
  const tail = after === undefined || after === '' ? [] : after.split(':');
  const filled = after === undefined ? head : [...head, ...Array<string>(Math.max(0, 8 - head.length - tail.length)).fill('0'), ...tail];
  return `${filled.slice(0, 4).map((group) => Number.parseInt(group, 16).toString(16)).join(':')}::/64`;
}
