import { expect, test } from 'vitest';
import { expectValue } from '../../core/base/result.ts';
import { FOLDER, openOn, SESSION, sheetText } from './support/desks.ts';
import { MemoryDisk } from './support/memory-disk.ts';

test('CR-V3: each game and each sheet says what it is, its form, who wrote it and when, with its zone', async () => {
  const disk = new MemoryDisk();
  const desk = await openOn(disk);
  for (const step of SESSION.slice(0, -1)) expectValue(await step(desk));
  expectValue(await desk.keepSheet(sheetText('Thursday')));
  await desk.close();
  const told = [...disk.texts()]
    .filter(([path]) => /^\/(games\/.+|practice\/sheets\/.+)\.json$/.test(path.slice(FOLDER.length)))
    .map(([, text]) => JSON.parse(text));
  expect(told.map(({ kind }) => String(kind)).toSorted((one, other) => one.localeCompare(other))).toEqual([
    'windrow.game',
    'windrow.game',
    'windrow.sheet',
  ]);
  for (const { schemaVersion, appVersion, startedAt, madeAt, zone } of told) {
    expect(schemaVersion).toSatisfy(Number.isInteger);
    expect(appVersion).toMatch(/^\d+\.\d+\.\d+$/);
    expect(startedAt ?? madeAt).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    expect(zone).toBe('UTC');
  }
});
