// How much one request may be: in bytes, in depth, in calls, and in lines that are open at a time.

/** What is longer than this is sent in parts. */
export const MOST_KILOBYTES = 256;
/** No form of ours is a quarter as deep. */
export const MOST_LEVELS = 32;
/** What one page asks for comes in one batch. */
export const MOST_CALLS = 20;
/** Far beyond what a nursery needs; each open line costs memory. */
export const MOST_LINES = 2000;
