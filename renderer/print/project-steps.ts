import type { Sheet } from '../../core/warmup/sheet.ts';

/** Where a sheet on a screen is: the problem, and how many steps of its answer are revealed. Both from 0. */
export interface ProjectAt {
  readonly place: number;
  readonly step: number;
}

/** The rack, the reading, the best pass; then the class, where somebody's answer is entered. */
export function lastStep({ problems }: Sheet, place: number): number {
  return (problems[place]?.answers.length ?? 0) > 0 ? 3 : 2;
}

export function isAtEnd(sheet: Sheet, { place, step }: ProjectAt): boolean {
  return place >= sheet.problems.length - 1 && step === lastStep(sheet, place);
}

/** One step on or back, over the problems' ends; at the ends of the sheet nothing changes. */
export function movedBy(sheet: Sheet, at: ProjectAt, by: 1 | -1): ProjectAt {
  const step = at.step + by;
  if (step >= 0 && step <= lastStep(sheet, at.place)) return { ...at, step };
  const place = at.place + by;
  if (place < 0 || place >= sheet.problems.length) return at;
  return { place, step: by === 1 ? 0 : lastStep(sheet, place) };
}
