import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { PLACES } from '../../renderer/shell/places.ts';
import { JOURNEYS } from './screens/journeys.ts';

const RENDERER = resolve(import.meta.dirname, '../../renderer');

/** Elements that are made for paper alone; warmup-sheets.spec.ts, help.spec.ts and card-whole.spec.ts print them. */
const ON_PAPER = ['wr-sheet-print', 'wr-help-paper', 'wr-card-paper'];

const sources = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
  .filter((file) => file.endsWith('.ts'))
  .map((file) => readFileSync(join(RENDERER, file), 'utf8'));

function namesIn(source: string): string[] {
  return [...source.matchAll(/customElements\.define\('([\w-]+)'/g)].map(([, name = '']) => name);
}

describe('the list of screens', () => {
  it('goes to every place that the router knows, and to no other', () => {
    const reached = new Set(JOURNEYS.map(({ place }) => place));
    expect([...reached].toSorted()).toEqual(PLACES.map(({ id }) => id).toSorted());
  });

  it('answers once for every element that the window has', () => {
    const defined = sources.flatMap(namesIn).filter((name) => !ON_PAPER.includes(name));
    expect(defined.length).toBeGreaterThan(80);
    expect(JOURNEYS.flatMap(({ shows }) => shows).toSorted()).toEqual(defined.toSorted());
  });

  it('opens every dialog that stands in the sources', () => {
    const asking = sources.flatMap((source) =>
      [...source.matchAll(/<wr-dialog\b/g)].map(() => namesIn(source)[0] ?? 'no element'),
    );
    expect(asking.length).toBeGreaterThan(8);
    const opened = JOURNEYS.flatMap(({ dialogs }) => dialogs);
    const askers = opened.map((dialog) => dialog.split(':')[0] ?? '');
    expect(askers.toSorted()).toEqual(asking.toSorted());
  });

  it('names every screen once', () => {
    const names = JOURNEYS.flatMap(({ name, screens }) => screens.map((screen) => `${name}: ${screen.name}`));
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThan(60);
  });
});
