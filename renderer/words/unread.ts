/** What is said when a file that is brought in could be read but for some of it. */
export function partsUnread(count: number): string {
  return `${count === 1 ? '1 part' : `${count} parts`} of the file could not be read. The rest is here.`;
}
