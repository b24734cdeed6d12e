import { describe, expect, it } from 'vitest';
import { NO_ANSWER, readFailure } from './failure.ts';

const refusedBefore = (status: number, responseJSON?: unknown) => ({ meta: { response: { status }, responseJSON } });

describe('what was refused before it reached a procedure', () => {
  it('says why, where our server said it', () => {
    const told = { code: 'body-too-large', message: 'body-too-large', data: { mostKilobytes: 256 }, requestId: 'r1' };
    expect(readFailure(refusedBefore(413, told))).toEqual({
      code: 'body-too-large',
      class: 'input',
      data: { mostKilobytes: 256 },
      requestId: 'r1',
    });
  });

  it('is to be sent again, where our server said that there were too many', () => {
    expect(
      readFailure(refusedBefore(429, { code: 'too-many-requests', data: { waitSeconds: 7 }, requestId: 'r2' })),
    ).toMatchObject({ code: 'too-many-requests', class: 'retry', data: { waitSeconds: 7 } });
  });

  it.each([undefined, {}, { code: 'nothing of ours' }, [], 'text'])(
    'is no answer, where something between us said it: %o',
    (answer) => {
      expect(readFailure(refusedBefore(429, answer))).toEqual(NO_ANSWER);
      expect(readFailure(refusedBefore(413, answer)).code).toBe('fault');
    },
  );
});
