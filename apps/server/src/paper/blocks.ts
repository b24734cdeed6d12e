import type { Face } from './fonts.ts';

/** A run of text in one face. */
export interface Run {
  text: string;
  face: Face;
}

/** A row: its label at the left, its text beside it. Cells share the row's width by weight. */
export interface Block {
  cells: { runs: Run[]; weight: number }[];
  /** Relative to the size of the page's text. */
  scale: number;
  /** Whether a line stands above it. */
  ruled: boolean;
  /** Points above it, at a size of one. */
  space: number;
}

export interface Frame {
  x: number;
  y: number;
  width: number;
}

const GAP = 8;
const LEADING = 1.5;

type Cell = Block['cells'][number];
const textOf = (cell: Cell) => cell.runs.map(({ text }) => text).join('');

function widths(block: Block, width: number): number[] {
  const all = block.cells.reduce((sum, { weight }) => sum + weight, 0);
  const room = width - GAP * (block.cells.length - 1);
  return block.cells.map(({ weight }) => (room * weight) / all);
}

/** Measured in the widest face, so that a cell of several faces never needs more. */
function heightOfCell(document: PDFKit.PDFDocument, cell: Cell, width: number, size: number): number {
  const face = cell.runs.some((run) => run.face === 'bold') ? 'bold' : 'plain';
  return document
    .font(face)
    .fontSize(size)
    .heightOfString(textOf(cell) || ' ', { width, lineGap: LEADING });
}

export function heightOf(document: PDFKit.PDFDocument, block: Block, width: number, size: number): number {
  const cellWidths = widths(block, width);
  return (
    block.space * size +
    Math.max(
      ...block.cells.map((cell, at) => heightOfCell(document, cell, cellWidths[at] ?? width, size * block.scale)),
    )
  );
}

/** Draws a row and answers where the next one begins. */
export function drawBlock(document: PDFKit.PDFDocument, block: Block, frame: Frame, size: number): number {
  const cellWidths = widths(block, frame.width);
  const top = frame.y + block.space * size;
  if (block.ruled)
    document
      .moveTo(frame.x, top - 2)
      .lineTo(frame.x + frame.width, top - 2)
      .lineWidth(0.5)
      .strokeColor('#777777')
      .stroke();
  let { x } = frame;
  for (const [at, cell] of block.cells.entries()) {
    const width = cellWidths[at] ?? frame.width;
    document.fillColor('#000000').fontSize(size * block.scale);
    for (const [index, run] of cell.runs.entries()) {
      const options = { width, lineGap: LEADING, continued: index < cell.runs.length - 1 };
      if (index === 0) document.font(run.face).text(run.text, x, top, options);
      else document.font(run.face).text(run.text, options);
    }
    x += width + GAP;
  }
  return frame.y + heightOf(document, block, frame.width, size);
}
