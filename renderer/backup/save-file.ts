/** Gives a text to the person as a file of that name, through the browser's own download. */
export function saveFile(name: string, type: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has its own hold on the content by then.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
