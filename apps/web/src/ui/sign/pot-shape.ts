/** The geometry of the pot sign in a 24 × 24 field: a tapering pot whose inside reaches from the floor to the rim. */

export interface Point {
  x: number;
  y: number;
}

/** Inside of the pot; the rim line is the plant-by day. */
export const RIM_Y = 6.5;
export const FLOOR_Y = 21;
const HALF_AT_RIM = 7.6;
const HALF_AT_FLOOR = 5;
const MIDDLE = 12;

/** Half the pot's inner width at a height. */
export function halfWidth(y: number): number {
  const down = (y - RIM_Y) / (FLOOR_Y - RIM_Y);
  return HALF_AT_RIM + (HALF_AT_FLOOR - HALF_AT_RIM) * down;
}

/** The height that roots have reached: the floor at 0, the rim at 1. Shares outside are cut; what is past spills elsewhere. */
export function levelOf(share: number): number {
  const held = Math.min(1, Math.max(0, share));
  return FLOOR_Y - held * (FLOOR_Y - RIM_Y);
}

const at = (point: Point): string => `${round(point.x)} ${round(point.y)}`;
const round = (value: number): number => Math.round(value * 100) / 100;

/** The outline of what lies in the pot below a height. */
export function fillPath(level: number): string {
  const top = halfWidth(level);
  const floor = halfWidth(FLOOR_Y);
  return `M${at({ x: MIDDLE - top, y: level })}L${at({ x: MIDDLE + top, y: level })}L${at({ x: MIDDLE + floor, y: FLOOR_Y })}L${at({ x: MIDDLE - floor, y: FLOOR_Y })}Z`;
}

export const POT_OUTLINE = fillPath(RIM_Y);

/** Slanting lines inside the pot, from the floor to the level: the hatching of what sleeps. */
export function hatchPath(level: number, gap = 2.6): string {
  const lines: string[] = [];
  const rise = 4;
  for (let y = FLOOR_Y; y - 0.4 > level; y -= gap) {
    const high = Math.max(level, y - rise);
    lines.push(`M${at({ x: MIDDLE - halfWidth(y), y })}L${at({ x: MIDDLE + halfWidth(high), y: high })}`);
  }
  return lines.join('');
}

/** Root strands below the level, wandering from wall to wall; drawn only where the sign is large enough to show them. */
export function rootPath(level: number, gap = 2.4): string {
  const strands: string[] = [];
  let side = 1;
  for (let y = FLOOR_Y - 1.2; y > level + 0.6; y -= gap) {
    const reach = halfWidth(y) - 1.1;
    const bend = 1.1 * side;
    strands.push(
      `M${at({ x: MIDDLE - reach, y })}C${at({ x: MIDDLE - reach / 3, y: y - bend })} ${at({ x: MIDDLE + reach / 3, y: y + bend })} ${at({ x: MIDDLE + reach, y: y - bend / 2 })}`,
    );
    side = -side;
  }
  return strands.join('');
}
