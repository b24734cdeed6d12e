import type { ErrorCode, ErrorData, InputIssue } from '@rootclock/contracts';

/** One sentence a code, made from the numbers and names that the code carries. A code without one does not compile. */
export type ErrorSentences = { [Code in ErrorCode]: (data: ErrorData<Code>) => string };

/** One sentence a kind of wrong input, with the bounds where there are any. */
export type IssueSentences = Record<InputIssue['problem'], (bounds: { least?: number; most?: number }) => string>;
