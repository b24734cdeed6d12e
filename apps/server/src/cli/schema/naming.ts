// How the names of tables and columns are turned into names for code.

const words = (name: string) => name.split('_').filter((word) => word !== '');
const capital = (word: string) => word.slice(0, 1).toUpperCase() + word.slice(1);

/** `garden_order` → `GardenOrder` */
export const pascal = (name: string) => words(name).map(capital).join('');

/** `plant_by_on` → `plantByOn` */
export function camel(name: string): string {
  const joined = pascal(name);
  return joined.slice(0, 1).toLowerCase() + joined.slice(1);
}

/** `gardenOrder` → `gardenOrders`, `batch` → `batches`, `entry` → `entries` */
export function plural(word: string): string {
  if (/[^aeiou]y$/.test(word)) return `${word.slice(0, -1)}ies`;
  return /(s|x|z|ch|sh)$/.test(word) ? `${word}es` : `${word}s`;
}
