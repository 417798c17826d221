import type { Fields } from '../../base/json.ts';

/**
 * One step of the file form, from version `from` to the next: pure, total on well-formed files of
 * its version, and it sets `schemaVersion` itself.
 */
export interface Migration {
  readonly from: number;
  readonly apply: (fields: Fields) => Fields;
}

/**
 * The steps so far, oldest first, none left out. The form has one version as yet; the next one adds
 * its step here and a before/after pair to the fixtures.
 */
export const GAME_MIGRATIONS: readonly Migration[] = [];

/** The fields brought up to version `target`; fields already there are given back as they are. */
export function migrate(fields: Fields, steps: readonly Migration[], target: number): Fields {
  let current = fields;
  while (typeof current['schemaVersion'] === 'number' && current['schemaVersion'] < target) {
    const step = steps.find(({ from }) => from === current['schemaVersion']);
    if (step === undefined) throw new Error(`no step from version ${current['schemaVersion']}`);
    const next = step.apply(current);
    if (next['schemaVersion'] !== step.from + 1) throw new Error(`the step from version ${step.from} went astray`);
    current = next;
  }
  return current;
}
