import { defineConfig } from '@playwright/test';
import { findChromium } from '../main/build/browser.mjs';

/** The window's tests, in a real Chromium that can reach nothing but this computer. */
const chromium = findChromium(process.env);
const isRoot = process.getuid?.() === 0;

export default defineConfig({
  testDir: '.',
  globalSetup: './window-setup.ts',
  testMatch: '**/*.spec.ts',
  outputDir: '../.cache/playwright',
  snapshotPathTemplate: '{testDir}/{testFileDir}/fixtures/{arg}{ext}',
  workers: 2,
  fullyParallel: true,
  forbidOnly: process.env['CI'] !== undefined,
  // Waits are for a result, not for a speed: a busy machine may take long. One that fails is tried
  // once more; the closing line counts it as passed only then, and its name stands above.
  timeout: 120_000,
  expect: { timeout: 30_000 },
  retries: 1,
  reporter: 'line',
  use: {
    viewport: { width: 1440, height: 900 },
    locale: 'en-US',
    timezoneId: 'UTC',
    trace: 'on-first-retry',
    launchOptions: {
      ...(chromium === undefined ? {} : { executablePath: chromium }),
      chromiumSandbox: !isRoot,
      args: [
        '--disable-gpu',
        '--disable-quic',
        '--no-first-run',
        '--disable-background-networking',
        '--disable-component-update',
        '--disable-sync',
        '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1, EXCLUDE localhost',
      ],
    },
  },
});
