/**
 * How Windrow is packed, for electron-builder. The app folder holds the built entry, preload and
 * window only: no local host (the packed app opens no port), no commands, no node_modules.
 */

import { join } from 'node:path';
import { LICENCES } from '../build/licences.mjs';

/** What people read as the app's name, in menus and folders. */
export const PRODUCT = 'Windrow';

/**
 * The fuses, all set on purpose: the program can't be used as a plain Node, takes no debug or Node
 * options, runs only from its own untouched archive, and gives file addresses no special rights. It
 * has no cookies, so there are none to encrypt, and macOS need not ask for a place in its keychain.
 */
const FUSES = {
  runAsNode: false,
  enableCookieEncryption: false,
  enableNodeOptionsEnvironmentVariable: false,
  enableNodeCliInspectArguments: false,
  enableEmbeddedAsarIntegrityValidation: true,
  onlyLoadAppFromAsar: true,
  loadBrowserProcessSpecificV8Snapshot: false,
  grantFileProtocolExtraPrivileges: false,
};

/**
 * Card and game files open in Windrow. Windows looks at the last ending only (`.json`), which is
 * not ours to take: there the files are opened from within the app.
 */
const FILE_ASSOCIATIONS = [
  {
    ext: 'card.json',
    name: 'Windrow card',
    description: 'A card for Windrow',
    mimeType: 'application/x-windrow-card+json',
    role: 'Editor',
  },
  {
    ext: 'windrow-game.json',
    name: 'Windrow game',
    description: 'A game kept by Windrow',
    mimeType: 'application/x-windrow-game+json',
    role: 'Editor',
  },
];

/**
 * @param {{ app: string, output: string, icons: string, electronVersion: string, electronDist?: string | undefined, bare?: boolean }} places
 *   `app`: the folder to pack; `output`: where packages go; `icons`: the folder with icon.png;
 *   `electronDist`: an Electron already unpacked, else it is fetched; `bare`: no signature is made anew
 * @returns {import('electron-builder').Configuration}
 */
export function packageConfig({ app, output, icons, electronVersion, electronDist, bare = false }) {
  return {
    appId: 'windrow.desktop',
    productName: PRODUCT,
    copyright: 'Windrow contributors, MIT',
    electronVersion,
    ...(electronDist === undefined ? {} : { electronDist }),
    directories: { app, output, buildResources: icons },
    files: ['main/**', 'renderer/**', 'package.json', '!node_modules/**'],
    asar: true,
    // Beside the archive too, where a person can read it without starting the app.
    extraResources: [{ from: join(app, 'renderer', LICENCES), to: LICENCES }],
    npmRebuild: false,
    publish: null,
    electronFuses: { ...FUSES, resetAdHocDarwinSignature: !bare },
    fileAssociations: FILE_ASSOCIATIONS,
    linux: {
      target: ['AppImage', 'deb'],
      category: 'Game',
      executableName: 'windrow',
      maintainer: 'Windrow contributors',
    },
    win: { target: ['nsis'] },
    nsis: { oneClick: false, perMachine: false, allowToChangeInstallationDirectory: true },
    mac: {
      target: ['dmg', 'zip'],
      category: 'public.app-category.card-games',
      hardenedRuntime: true,
      darkModeSupport: true,
    },
  };
}
