import sharp, { type Sharp } from 'sharp';

/** Numbers from 0 to 255 that follow from a seed (xorshift), so that a picture is the same each time. */
function bytesFrom(seed: number): () => number {
  let state = (seed * 2_654_435_761 + 1) >>> 0 || 1;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    state >>>= 0;
    return state & 255;
  };
}

/** A picture of its own for each seed: coarse blocks of colour with some grain, which packs about as well as a photo. */
export function drawing(seed: number, { width = 800, height = 600, channels = 3 as 3 | 4 } = {}): Sharp {
  const next = bytesFrom(seed);
  const block = 40;
  const across = Math.ceil(width / block);
  const colours = Array.from({ length: across * Math.ceil(height / block) * channels }, next);
  const pixels = Buffer.alloc(width * height * channels);
  let at = 0;
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const colour = (Math.floor(y / block) * across + Math.floor(x / block)) * channels;
      const grain = next() & 15;
      for (let channel = 0; channel < channels; channel += 1, at += 1)
        pixels[at] = Math.min(255, (colours[colour + channel] ?? 0) + grain);
    }
  return sharp(pixels, { raw: { width, height, channels } });
}

/** One small photo for tests that are about something else. */
export const samplePhoto: Buffer = await drawing(7, { width: 60, height: 40 }).jpeg().toBuffer();

export const samplePdf: Buffer = Buffer.from('%PDF-1.7\n1 0 obj\n<< >>\nendobj\ntrailer\n<< /Root 1 0 R >>\n%%EOF\n');
