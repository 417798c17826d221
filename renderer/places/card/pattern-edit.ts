import { scanPattern } from '../../../core/card/parse.ts';

/**
 * Edits of a pattern's text group by group. Groups that can't be read yet stay as they were typed;
 * a place that isn't there changes nothing.
 */

export function replaceGroup(text: string, at: number, group: string): string {
  const groups = groupsIn(text);
  return groups[at] === undefined ? text : groups.with(at, group).join(' ');
}

/** Puts a group before place `at`, by default at the end. */
export function insertGroup(text: string, group: string, at: number = groupsIn(text).length): string {
  return groupsIn(text).toSpliced(at, 0, group).join(' ');
}

export function removeGroup(text: string, at: number): string {
  return groupsIn(text)[at] === undefined ? text : groupsIn(text).toSpliced(at, 1).join(' ');
}

export function moveGroup(text: string, from: number, to: number): string {
  const groups = groupsIn(text);
  const group = groups[from];
  if (group === undefined || to < 0 || to >= groups.length || from === to) return text;
  return groups.toSpliced(from, 1).toSpliced(to, 0, group).join(' ');
}

function groupsIn(text: string): string[] {
  return scanPattern(text).map((group) => group.text);
}
