// What every part of the report is written with.
import { rounded } from './measure/figures.ts';

export interface Aim {
  aim: string;
  measured: number;
  met: boolean;
}

export const aimLines = (aims: readonly Aim[]): string[] => [
  'Aims',
  ...aims.map(({ aim, measured, met }) => `  ${met ? 'met   ' : 'MISSED'}  ${aim}: ${measured.toFixed(2)}`),
];

/** Every figure with as many digits as it deserves. */
export function shortened<T>(report: T): T {
  return JSON.parse(
    JSON.stringify(report, (_, value: unknown) => (typeof value === 'number' ? rounded(value) : value)),
  ) as T;
}

export function table(head: string[], rows: (string | number)[][]): string[] {
  const lines = [
    head,
    ...rows.map((row) => row.map((value) => (typeof value === 'number' ? value.toFixed(2) : value))),
  ];
  const widths = head.map((_, column) => Math.max(...lines.map((line) => line[column]?.length ?? 0)));
  return lines.map(
    (line) =>
      `  ${line.map((cell, column) => (column === 0 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0))).join('  ')}`,
  );
}
