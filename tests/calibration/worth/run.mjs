/**
 * `npm run worth:table [-- --deals N] [--walls N] [--cards N] [--parts exchange,play,game] [--anew]`: plays what advice is
 * worth on the demo card and on invented cards that took part in nothing, and writes core/future/WORTH.md. What has been
 * played with the same settings is kept in core/future/worth.json and not played again. The same numbers give the same
 * files on every machine, but for the seconds. A quarter of an hour of one core for each card and part.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import { bundleForNode } from '../../bundle.mjs';

const ROOT = resolve(import.meta.dirname, '../../..');
const { values } = parseArgs({
  options: {
    deals: { type: 'string', default: '400' },
    walls: { type: 'string', default: '48' },
    cards: { type: 'string', default: '4' },
    parts: { type: 'string', default: 'exchange,play,game' },
    among: { type: 'string', default: 'soft' },
    against: { type: 'string', default: 'soft' },
    anew: { type: 'boolean', default: false },
  },
});

mkdirSync(join(ROOT, '.cache'), { recursive: true });
const workshop = mkdtempSync(join(ROOT, '.cache/worth-'));
try {
  await bundleForNode([join(import.meta.dirname, 'run.ts')], workshop);
  /** @type {typeof import('./run.ts')} */
  const { measureWorth } = await import(pathToFileURL(join(workshop, 'run.js')).href);
  measureWorth(ROOT, {
    deals: Number(values.deals),
    walls: Number(values.walls),
    cards: Number(values.cards),
    parts: values.parts.split(','),
    among: values.among.split(','),
    against: values.against.split(','),
    anew: values.anew,
    say: (line) => console.log(line),
  });
} finally {
  rmSync(workshop, { recursive: true, force: true });
}
