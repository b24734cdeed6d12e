import { createRequire } from 'node:module';
import path from 'node:path';

/** Embedded in each page, since the fonts every reader of PDF has lack letters such as Ż. Condensed, so that a page holds more. */
export type Face = 'plain' | 'bold' | 'italic';

const folder = path.join(path.dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf');
const FILES: Record<Face, string> = {
  plain: 'DejaVuSansCondensed.ttf',
  bold: 'DejaVuSansCondensed-Bold.ttf',
  italic: 'DejaVuSansCondensed-Oblique.ttf',
};

export function registerFonts(document: PDFKit.PDFDocument): void {
  for (const [face, file] of Object.entries(FILES)) document.registerFont(face, path.join(folder, file));
}
