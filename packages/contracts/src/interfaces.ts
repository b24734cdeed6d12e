/** What programs ask for, by the first step of its address. */
export const INTERFACES = ['trpc', 'files', 'paper', 'calendar', 'live', 'health', 'ready'] as const;

/** Addresses to which a page is no answer: the interfaces, and the built files. */
export const NO_PAGE = new RegExp(`^/(${[...INTERFACES, 'assets'].join('|')})(/|\\?|$)`);
