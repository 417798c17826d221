import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test, vi } from 'vitest';
import { readWindowFile } from '../../main/window/window-files.ts';

/**
 * Inside a packed archive Electron lets a file be opened only by copying it out to the temporary
 * folder, which may be full or forbidden; it reads and looks at files in the archive itself.
 */
vi.mock('node:fs/promises', async (original) => ({
  ...(await original<object>()),
  open: async () => await Promise.reject(Object.assign(new Error('no room'), { code: 'ENOSPC' })),
}));

test('a file of the window is read where it lies, also when nothing can be copied to the temporary folder', async () => {
  const root = await mkdtemp(join(tmpdir(), 'windrow-files-'));
  try {
    await writeFile(join(root, 'index.html'), '<!doctype html>');
    const file = await readWindowFile(root, '/');
    expect(new TextDecoder().decode(file?.body)).toBe('<!doctype html>');
  } finally {
    await rm(root, { recursive: true });
  }
});
