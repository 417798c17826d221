import { rm } from 'node:fs/promises';
import { join } from 'node:path';
import { fill, mount, unmount, whyNoDisk } from '../main/support/small-disk.ts';
import { shellWords } from '../../renderer/words/shell.ts';
import { expect, test } from './windrow.ts';

const why = whyNoDisk();

test('CR-D7: on a full disk the window opens, says so as long as it is so, keeps what is typed, and then saves it', async ({
  windrow,
  page,
}) => {
  test.skip(why !== '', why);
  test.setTimeout(120_000);
  expect(mount(windrow.folder, '1m')).toBe(true);
  try {
    await windrow.open();
    // What is still being loaded would fail without its host.
    await page.goto('about:blank');
    await windrow.close();
    const other = join(windrow.folder, 'other.bin');
    fill(other);
    await windrow.open();
    const standing = page
      .locator('wr-notice')
      .filter({ hasText: 'The disk is full, so Windrow can save nothing for now.' });
    await expect(standing.first()).toBeVisible();
    await expect(standing.first().getByRole('button')).toHaveCount(0);
    await windrow.deal('FF N 0 13b 4578c 122d');
    await expect(page.locator('[data-saved=failed]')).toHaveText(shellWords.notSaved);
    await expect(standing).toHaveCount(1);
    await expect(standing.getByRole('button', { name: shellWords.saveGameElsewhere })).toBeVisible();
    const rack = await windrow.rack();
    await windrow.go('Journal');
    await expect(standing.first()).toBeVisible();
    await rm(other);
    await expect(page.locator('[data-saved=saved]')).toBeVisible({ timeout: 40_000 });
    await expect(standing).toHaveCount(0);
    await windrow.restart();
    expect(await windrow.rack()).toEqual(rack);
    await page.goto('about:blank');
    await windrow.close();
  } finally {
    unmount(windrow.folder);
  }
});
