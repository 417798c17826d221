/** Words for what can be done with a problem besides answering it. */
export const problemWords = {
  toSheet: 'Put on a sheet',
  onSheet: 'This problem is on your sheet now.',
  copyCode: 'Copy the code',
  copied: 'The code is copied.',
  notCopied: 'The code could not be copied: write it down from the top of this page.',
};
