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

const round = (value: number): number => Math.round(value * 100) / 100;
const at = (point: Point): string => `${round(point.x)} ${round(point.y)}`;

/** The outline of what lies in the pot below a height. */
export function fillPath(level: number): string {
  const top = halfWidth(level);
  const floor = halfWidth(FLOOR_Y);
  return `M${at({ x: MIDDLE - top, y: level })}L${at({ x: MIDDLE + top, y: level })}L${at({ x: MIDDLE + floor, y: FLOOR_Y })}L${at({ x: MIDDLE - floor, y: FLOOR_Y })}Z`;
}

export const POT_OUTLINE = fillPath(RIM_Y);

/** Rising lines inside the pot, from the floor to the level: the hatching of what sleeps. */
export function hatchPath(level: number, gap = 3): string {
  const lines: string[] = [];
  for (let foot = MIDDLE - HALF_AT_RIM - (FLOOR_Y - level); foot < MIDDLE + HALF_AT_FLOOR; foot += gap) {
    // Each line rises at 45° from its foot on the floor and is cut by the walls and the level.
    const points = alongSlope(foot, level);
    if (points) lines.push(`M${at(points[0])}L${at(points[1])}`);
  }
  return lines.join('');
}

function alongSlope(foot: number, level: number): [Point, Point] | null {
  const inside: Point[] = [];
  for (let y = FLOOR_Y; y >= level; y -= 0.25) {
    const x = foot + (FLOOR_Y - y);
    if (Math.abs(x - MIDDLE) <= halfWidth(y)) inside.push({ x, y });
  }
  const [first] = inside;
  const last = inside.at(-1);
  return first && last && first !== last ? [first, last] : null;
}

/** Root strands below the level: each wanders from wall to wall and sends short rootlets down. For signs large enough to show them. */
export function rootPath(level: number, gap = 2.9): string {
  const strands: string[] = [];
  let side = 1;
  for (let y = FLOOR_Y - 1.6; y > level + 1; y -= gap) {
    const reach = halfWidth(y) - 0.9;
    const bend = 1.2 * side;
    strands.push(
      `M${at({ x: MIDDLE - reach, y: y + bend / 3 })}C${at({ x: MIDDLE - reach / 3, y: y - bend })} ${at({ x: MIDDLE + reach / 3, y: y + bend })} ${at({ x: MIDDLE + reach, y: y - bend / 3 })}`,
    );
    for (const share of [-0.55, 0.1, 0.6])
      strands.push(
        `M${at({ x: MIDDLE + reach * share, y: y + (share < 0 ? -bend / 4 : bend / 4) })}l${round(0.7 * side)} ${1.1}`,
      );
    side = -side;
  }
  return strands.join('');
}
