import {
  type BatchUnit,
  type GerminationCourse,
  germinationCourse,
  isUnitOnePlant,
  newPerDay,
} from '@rootclock/domain';

/** The course of emergence or rooting in figures. */
export interface CourseFigures extends GerminationCourse {
  /** Cells or pieces begun with, or seeds sown. */
  sown: number;
  /** Counts that it rests on. */
  counts: number;
}

interface Counted {
  unit: BatchUnit;
  startedOn: string;
  startedUnits: number;
  seedsSown: number | null;
  course: readonly { on: string; emergedUnits: number }[];
}

/** Null where nothing was counted, or plants came of nobody knows how many seeds, or more came up than were sown. */
export function courseFigures({ unit, startedOn, startedUnits, seedsSown, course }: Counted): CourseFigures | null {
  const sown = isUnitOnePlant(unit) ? startedUnits : (seedsSown ?? 0);
  const perDay = newPerDay(course, startedOn);
  const all = perDay.reduce((sum, count) => sum + count, 0);
  if (course.length === 0 || sown === 0 || all > sown) return null;
  return { ...germinationCourse(perDay, sown), sown, counts: course.length };
}
