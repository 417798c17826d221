import type { Menu, MenuItemConstructorOptions } from 'electron';

/**
 * The menu is ours, not the default one. Undo is left out on purpose: the window undoes steps of
 * the game, and a menu would take the keys away from it.
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
  const view: MenuItemConstructorOptions[] = [{ role: 'togglefullscreen', label: 'Full screen' }];
  if (!packaged) view.push({ role: 'reload' }, { role: 'toggleDevTools' });
  const edit: MenuItemConstructorOptions[] = [
    { role: 'cut', label: 'Cut' },
    { role: 'copy', label: 'Copy' },
    { role: 'paste', label: 'Paste' },
    { role: 'selectAll', label: 'Select all' },
  ];
  const ours: MenuItemConstructorOptions[] =
    platform === 'darwin'
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
  ];
}
