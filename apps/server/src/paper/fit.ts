import { type Block, heightOf } from './blocks.ts';

const LARGEST = 9.5;
/** Smaller print nobody reads at a potting bench. */
const SMALLEST = 6.5;
const STEP = 0.25;
/** The longest text a field may hold, so that at this length nothing is cut. */
const WHOLE = 2000;

export interface Fitted {
  blocks: Block[];
  size: number;
  isCut: boolean;
}

/**
 * The largest print in which the rows fit a height; where even the smallest is too large, every text is cut at the same length, as late as
 * possible. `blocksFor` makes the rows with texts no longer than that.
 */
export function fit(
  document: PDFKit.PDFDocument,
  blocksFor: (mostLetters: number) => Block[],
  width: number,
  height: number,
): Fitted {
  const fits = (blocks: Block[], size: number) =>
    blocks.reduce((sum, block) => sum + heightOf(document, block, width, size), 0) <= height;
  const whole = blocksFor(WHOLE);
  const size = largestSize((each) => fits(whole, each));
  if (size !== null) return { blocks: whole, size, isCut: false };
  let [least, most] = [0, WHOLE];
  while (most - least > 4) {
    const middle = Math.floor((least + most) / 2);
    if (fits(blocksFor(middle), SMALLEST)) least = middle;
    else most = middle;
  }
  return { blocks: blocksFor(least), size: SMALLEST, isCut: true };
}

/** The largest size that fits, found by halving, since measuring a page is slow; null where not even the smallest does. */
function largestSize(fits: (size: number) => boolean): number | null {
  let [least, most] = [-1, (LARGEST - SMALLEST) / STEP];
  while (least < most) {
    const middle = Math.ceil((least + most) / 2);
    if (fits(SMALLEST + middle * STEP)) least = middle;
    else most = middle - 1;
  }
  return least < 0 ? null : SMALLEST + least * STEP;
}

/** A text cut between words, with a sign that there is more. */
export function cutText(text: string, mostLetters: number, more: string): string {
  if (text.length <= mostLetters) return text;
  const cut = text.slice(0, mostLetters);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), 0)).trimEnd()} … ${more}`.trimStart();
}
