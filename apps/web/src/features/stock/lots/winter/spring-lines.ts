/** What is typed into the sheet of a spring count, line by line, and the body it makes. */
import type { CommandBody } from '../../../../lib/api/index.ts';

export interface SpringLine {
  up: number | null;
  dead: number | null;
  notUp: number | null;
}

export const EMPTY_LINE: SpringLine = { up: null, dead: null, notUp: null };

export interface CountedRow {
  lotId: string;
  placeId: string;
  standing: number;
}

export const keyOf = ({ lotId, placeId }: Pick<CountedRow, 'lotId' | 'placeId'>): string => `${lotId}/${placeId}`;

/** A line is meant once anything stands in it; its empty fields are then none. */
export const isCounted = (line: SpringLine | undefined): line is SpringLine =>
  line !== undefined && (line.up !== null || line.dead !== null || line.notUp !== null);

export const sumOf = ({ up, dead, notUp }: SpringLine): number => (up ?? 0) + (dead ?? 0) + (notUp ?? 0);

/** The line with what is not dead or asleep taken to be up. */
export const withRestUp = (line: SpringLine, standing: number): SpringLine => {
  const dead = line.dead ?? 0;
  const notUp = line.notUp ?? 0;
  return { up: Math.max(0, standing - dead - notUp), dead, notUp };
};

/** The lines that are meant, in the order of the rows, as the command takes them. */
export function countsOf(
  rows: readonly CountedRow[],
  lines: Readonly<Record<string, SpringLine>>,
): CommandBody<'stock.countSpring'>['counts'] {
  return rows.flatMap((row) => {
    const line = lines[keyOf(row)];
    return isCounted(line)
      ? [
          {
            lotId: row.lotId,
            placeId: row.placeId,
            upUnits: line.up ?? 0,
            deadUnits: line.dead ?? 0,
            notUpUnits: line.notUp ?? 0,
          },
        ]
      : [];
  });
}
