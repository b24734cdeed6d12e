/**
 * PotSign: a pot in section. Roots fill it from the bottom as pot life passes (`share` 0–1, null where no rule limits it), the
 * rim is the plant-by day, what is `past` spills over it, what is `dormant` is hatched, what is promised is `tied`: a
 * dashed band for part of the lot, a whole band with a knot for all. From 20 px in a table row to 160 px at a page's head.
 * It stands beside the word and the days and is then hidden from assistive technology; give `title` only where it stands alone.
 */
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

const BAND_Y = 12.5;
/** Below this size single strands would only look dirty. */
const STRANDS_FROM_PX = 40;

function toneOf({ share, past, dormant }: PotSignProps): string {
  if (share === null) return 'none';
  if (dormant) return 'asleep';
  return past ? 'past' : 'living';
}

export function PotSign(props: PotSignProps) {
  const { share, past, dormant, tied, size = 28, title } = props;
  const level = levelOf(past ? 1 : (share ?? 0));
  const band = halfWidth(BAND_Y) + 0.9;
  return (
    <svg
      className={`pot-sign pot-sign-${toneOf(props)}`}
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
      {share !== null && !dormant && size >= STRANDS_FROM_PX && <path className="pot-sign-strands" d={rootPath(level)} />}
      {past && (
        <path className="pot-sign-spill" d={`M6.2 ${RIM_Y}C5.6 2.6 3 2.8 1.7 5.4 1 7 1.3 9 2 10.6M17.8 ${RIM_Y}c.6-3.9 3.2-3.7 4.5-1.1.7 1.6.4 3.6-.3 5.2M12 ${RIM_Y}c-1.5-3 .5-4.6 2.6-4.2`} />
      )}
      <path className="pot-sign-wall" d={POT_OUTLINE} strokeDasharray={share === null ? '1.6 1.8' : undefined} />
      <path className="pot-sign-rim" d={`M3.2 ${RIM_Y}H20.8`} />
      <path className="pot-sign-floor" d={`M6.6 ${FLOOR_Y}H17.4`} />
      {tied !== 'none' && (
        <>
          <path className="pot-sign-band-gap" d={`M${12 - band} ${BAND_Y}H${12 + band}`} />
          <path className="pot-sign-band" d={`M${12 - band} ${BAND_Y}H${12 + band}`} strokeDasharray={tied === 'part' ? '2.2 1.8' : undefined} />
        </>
      )}
      {tied === 'whole' && <path className="pot-sign-knot" d={`M12 ${BAND_Y}l-2.6-2.4v4.8zM12 ${BAND_Y}l2.6-2.4v4.8z`} />}
    </svg>
  );
}
