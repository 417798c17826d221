import type { Menu, MenuItemConstructorOptions } from 'electron';

/**
 * The menu is ours, not the default one. Undo is for fields of words; its keys stay the window's,
 * which undoes steps of the game. On macOS those of the menu come after the window's own, and no
 * field hears them without it.
 */
export function setUpMenu(menu: typeof Menu, surroundings: { platform: string; packaged: boolean }): void {
  menu.setApplicationMenu(menu.buildFromTemplate(menuTemplate(surroundings)));
}

export function menuTemplate({
  platform,
  packaged,
}: {
  platform: string;
  packaged: boolean;
}): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const view: MenuItemConstructorOptions[] = [
    { role: 'togglefullscreen', label: 'Full screen' },
    { role: 'reload', label: 'Reload' },
  ];
  if (!packaged) view.push({ role: 'toggleDevTools' });
  const edit: MenuItemConstructorOptions[] = [
    { role: 'undo', label: 'Undo', registerAccelerator: isMac },
    { type: 'separator' },
    { role: 'cut', label: 'Cut' },
    { role: 'copy', label: 'Copy' },
    { role: 'paste', label: 'Paste' },
    { role: 'selectAll', label: 'Select all' },
  ];
  const ours: MenuItemConstructorOptions[] = isMac
    ? [
        { role: 'about' },
        { type: 'separator' },
        { role: 'hide' },
        { role: 'unhide' },
        { type: 'separator' },
        { role: 'quit' },
      ]
    : [{ role: 'quit', label: 'Close Windrow' }];
  return [
    { label: 'Windrow', submenu: ours },
    { label: 'Edit', submenu: edit },
    { label: 'View', submenu: view },
    ...(isMac ? [{ role: 'windowMenu' } as const] : []),
  ];
}
