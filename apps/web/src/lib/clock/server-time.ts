/**
 * The server's clock as this device can know it. Each answer carries the instant at which the server made it, which lies between sending and receiving:
 * that bounds how far the device's clock is off. All bounds together narrow it down; a bound that contradicts them means that
 * the device's clock was set meanwhile, and only what was heard since counts.
 */
export interface HeardInstant {
  /** Milliseconds of the device's clock when it asked, and when the answer came. */
  sentAt: number;
  receivedAt: number;
  /** Milliseconds of the server's clock between the two. */
  stampedAt: number;
}

export class ServerTime {
  private least: number | null = null;
  private most = 0;

  hear({ sentAt, receivedAt, stampedAt }: HeardInstant): void {
    const least = stampedAt - receivedAt;
    // A clock that was set back while the answer was on its way says nothing about how long that took.
    const most = Math.max(least, stampedAt - sentAt);
    const agrees = this.least !== null && least <= this.most && most >= this.least;
    this.most = agrees ? Math.min(most, this.most) : most;
    this.least = agrees && this.least !== null ? Math.max(least, this.least) : least;
  }

  /** The server's clock when the device's says `deviceNow`; null before the first answer. */
  at(deviceNow: number): number | null {
    return this.least === null ? null : deviceNow + Math.round((this.least + this.most) / 2);
  }
}
