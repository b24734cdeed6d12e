/** What a client asked for: plants put into beds by the nursery, plants fetched, or plants grown for a later day. */
export const ORDER_KINDS = ['installation', 'pickup', 'contract-growing'] as const;
export type OrderKind = (typeof ORDER_KINDS)[number];

export const ORDER_STATES = ['open', 'done', 'cancelled'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

/** What a line of an order is flagged for, so that nobody plants the wrong thing or in the wrong place. */
export const LINE_FLAGS = ['ambiguous-name', 'not-native', 'livestock-near'] as const;
export type LineFlag = (typeof LINE_FLAGS)[number];
