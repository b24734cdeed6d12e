/**
 * PotSign: a pot in section. Roots fill it from the bottom as pot life passes (`share` 0–1, null where no rule limits it), the
 * rim is the plant-by day, what is `past` spills over it, what is `dormant` is hatched, what is promised is `tied`: a
 * dashed cord for part of the lot, a whole cord with a knot for all. From 20 px in a table row to 160 px at a page's head.
 * It stands beside the word and the days and is then hidden from assistive technology; give `title` only where it stands alone.
 */
import type { CSSProperties } from 'react';
import { FLOOR_Y, fillPath, halfWidth, hatchPath, levelOf, POT_OUTLINE, RIM_Y, rootPath } from './pot-shape.ts';
import './pot-sign.css';

export interface PotSignProps {
  share: number | null;
  past: boolean;
  dormant: boolean;
  tied: 'none' | 'part' | 'whole';
  /** Edge of its square in CSS pixels. */
  size?: number;
  title?: string;
}

const CORD_Y = 12.5;
/** Below this size single strands and a bow's loops would only look dirty. */
const DETAILS_FROM_PX = 40;
const SPILL = `M5.6 ${RIM_Y}C5 2.8 2.9 3.1 1.8 5.3 1.1 6.9 1.3 8.8 2 10.4M18.4 ${RIM_Y}C19 2.8 21.1 3.1 22.2 5.3 22.9 6.9 22.7 8.8 22 10.4M12.4 ${RIM_Y}C10.6 3.7 12.4 1.9 14.6 2.5`;
const BOW = `M12 ${CORD_Y}C10.2 9.3 7.3 10.3 8.3 12.1 9 13.3 10.9 13.2 12 ${CORD_Y}C13.8 9.3 16.7 10.3 15.7 12.1 15 13.3 13.1 13.2 12 ${CORD_Y}M12 ${CORD_Y}L10.5 16M12 ${CORD_Y}L13.5 16`;

/** The knot of a small sign: a plain one, pulled tight. */
const TIGHT = `M10.2 ${CORD_Y - 1.8}L13.8 ${CORD_Y + 1.8}M13.8 ${CORD_Y - 1.8}L10.2 ${CORD_Y + 1.8}`;

function toneOf({ share, past, dormant }: PotSignProps): string {
  if (share === null) return 'none';
  if (dormant) return 'asleep';
  return past ? 'past' : 'living';
}

/** The pen in units of the field: a large sign is drawn with a finer pen, a small one must stay legible. */
function penOf(size: number): CSSProperties {
  const pen = size < 32 ? 1.5 : size < 64 ? 1.1 : size < 120 ? 0.8 : 0.6;
  return { '--pen': pen } as CSSProperties;
}

export function PotSign(props: PotSignProps) {
  const { share, past, dormant, tied, size = 28, title } = props;
  const level = levelOf(past ? 1 : (share ?? 0));
  const reach = halfWidth(CORD_Y) + 0.6;
  const knot = size < DETAILS_FROM_PX ? TIGHT : BOW;
  const cord = `M${12 - reach} ${CORD_Y}H${12 + reach}`;
  return (
    <svg
      className={`pot-sign pot-sign-${toneOf(props)}`}
      style={penOf(size)}
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      role={title ? 'img' : undefined}
      aria-label={title}
      aria-hidden={title ? undefined : true}
    >
      {share !== null && !dormant && <path className="pot-sign-fill" d={fillPath(level)} />}
      {share !== null && dormant && <path className="pot-sign-hatch" d={hatchPath(level)} />}
      {share !== null && !dormant && size >= DETAILS_FROM_PX && (
        <path className="pot-sign-strands" d={rootPath(level)} />
      )}
      {past && <path className="pot-sign-spill" d={SPILL} />}
      <path className="pot-sign-wall" d={POT_OUTLINE} strokeDasharray={share === null ? '1.6 1.8' : undefined} />
      <path className="pot-sign-rim" d={`M3.2 ${RIM_Y}H20.8`} />
      <path className="pot-sign-wall" d={`M6.8 ${FLOOR_Y}H17.2`} />
      {tied !== 'none' && (
        <>
          <path className="pot-sign-gap" d={cord} />
          {tied === 'whole' && <path className="pot-sign-gap" d={knot} />}
          <path className="pot-sign-cord" d={cord} strokeDasharray={tied === 'part' ? '2.4 2' : undefined} />
          {tied === 'whole' && <path className="pot-sign-cord" d={knot} />}
        </>
      )}
    </svg>
  );
}
