import { defineConfig } from '@playwright/test';
import { chromiumHere } from './chromium.mjs';

/** The window's tests, in a real Chromium that can reach nothing but this computer. */
const chromium = chromiumHere(process.env);
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
  // Waits are for a result, not for a speed: a busy machine may take long. Nothing is tried twice: what fails now and
  // then is a fault, of the window or of its test.
  timeout: 120_000,
  expect: { timeout: 30_000 },
  retries: 0,
  reporter: 'line',
  use: {
    viewport: { width: 1440, height: 900 },
    locale: 'en-US',
    timezoneId: 'UTC',
    // A trace copies the whole page at each action, hundreds of drawn tiles; that is most of the time.
    trace: 'off',
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
