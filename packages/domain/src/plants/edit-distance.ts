/**
 * Fewest single-letter insertions, deletions, substitutions and swaps of neighbours that turn one text into the other, no
 * letter being touched twice (optimal string alignment), or null when that takes more than `most`. The bound lets a
 * long list be searched: a row whose least value is beyond it ends the reckoning.
 */
export function editDistance(a: string, b: string, most: number): number | null {
  if (Math.abs(a.length - b.length) > most) return null;
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const same = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min((last[column] ?? 0) + 1, (current[column - 1] ?? 0) + 1, (last[column - 1] ?? 0) + same);
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        least = Math.min(least, (beforeLast[column - 2] ?? 0) + 1);
      }
      current.push(least);
    }
    if (Math.min(...current) > most && Math.min(...last) > most) return null;
    beforeLast = last;
    last = current;
  }
  const distance = last[b.length] ?? 0;
  return distance <= most ? distance : null;
}
