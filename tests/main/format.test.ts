import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { FOLDER, openOn } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

const PAGE = readFileSync(join(import.meta.dirname, '../../main/desk/FORMAT.md'), 'utf8');

/** The page's examples in their order. */
const EXAMPLES = [...PAGE.matchAll(/```jsonl?\n([^`]*)```/g)].map(([, text]) => text ?? '');

test('CR-V1: every example of the format page is opened as the page says', async () => {
  const [log = '', progress = '', settings = ''] = EXAMPLES;
  expect(EXAMPLES).toHaveLength(3);
  const disk = new MemoryDisk();
  disk.put(`${FOLDER}/open/g-1.jsonl`, log);
  disk.put(`${FOLDER}/cards/progress/demo.json`, progress);
  disk.put(`${FOLDER}/preferences.json`, settings);
  const desk = await openOn(disk);
  const { window: _, ...wanted } = JSON.parse(settings);
  expect(expectValue(await desk.readPreferences())).toMatchObject(wanted);
  expect(expectValue(await desk.readCardProgress('demo'))).toMatchObject({ answers: [{ lineId: 'runs-1' }] });
  expect(expectValue(await desk.openGame('g-1'))).toMatchObject({ tags: ['Thursday'], events: [{ type: 'dealt' }] });
  expect(expectValue(await desk.listGames())).toMatchObject([{ id: 'g-1', events: 1, seat: 'South' }]);
  expect(expectValue(await desk.notices())).toEqual([]);
});

test('CR-V1: the page names every place that is written', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  const places = Object.values({ ...(await import('../../main/desk/places.ts')).placesIn('') });
  for (const place of places.filter((one) => one !== '')) expect(PAGE).toContain(`\`${place.replace(/^\//, '')}`);
  await desk.close();
});
