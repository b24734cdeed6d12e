/** What a person may do in a nursery, from most to least. Each command names the roles that may give it. */
export const ROLES = ['owner', 'grower', 'crew', 'viewer'] as const;
export type Role = (typeof ROLES)[number];

export const EVERYONE: readonly Role[] = ROLES;
/** Whoever works with plants in the field. */
export const FIELD: readonly Role[] = ['owner', 'grower', 'crew'];
/** Whoever decides about stock, plants and promises. */
export const GROWERS: readonly Role[] = ['owner', 'grower'];
export const OWNER: readonly Role[] = ['owner'];
