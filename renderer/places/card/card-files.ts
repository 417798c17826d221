/** A file name for a card: its title and season in letters that every system allows. */
export function fileNameOf(title: string, season: string): string {
  const stem = `${title} ${season}`
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'card' : stem}.card.json`;
}

/** Hands a text to the person as a file; where it goes is asked by the window or by its settings. */
export function handOut(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
