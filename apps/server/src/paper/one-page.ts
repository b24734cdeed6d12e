import { registerFonts } from './fonts.ts';

export type PaperSize = 'letter' | 'a4';

/** Points, 72 to the inch. */
export const MARGIN = 36;

export interface OnePage {
  title: string;
  author: string;
  language: string;
  paper: PaperSize;
  /** When the page was asked for; the file says so. */
  madeAt: Date;
}

/**
 * Bytes of a PDF of one page. `draw` must keep within it: a second page is never begun silently, it is an error.
 */
export async function onePage(
  { title, author, language, paper, madeAt }: OnePage,
  draw: (document: PDFKit.PDFDocument) => void,
): Promise<Uint8Array> {
  // Loaded with the first page: it takes 20 MB that most servers never need.
  const { default: PdfFile } = await import('pdfkit');
  // The bottom margin is kept by the drawing: the library would begin a page at it.
  const document = new PdfFile({
    size: paper === 'a4' ? 'A4' : 'LETTER',
    margins: { top: MARGIN, left: MARGIN, right: MARGIN, bottom: 0 },
    lang: language,
    displayTitle: true,
    info: { Title: title, Author: author, CreationDate: madeAt, ModDate: madeAt },
  });
  registerFonts(document);
  return new Promise((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(Buffer.concat(chunks)));
    document.on('error', reject);
    document.on('pageAdded', () => reject(new Error('a page that must be one ran over')));
    draw(document);
    document.end();
  });
}
