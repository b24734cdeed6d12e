/**
 * How far a stored figure can be trusted, strongest first. Every figure of the reference data carries one, and a page
 * shows it beside the figure, so that nobody takes a remembered value for a published one.
 */
export const STANDINGS = [
  'confirmed',
  'confirmed-vendor',
  'derived',
  'common practice',
  'from memory',
  'own setting',
  'assumed',
  'not found',
] as const;

export type Standing = (typeof STANDINGS)[number];
