/** Words that all charts share. */
export const chartWords = {
  asTable: (label: string) => `${label} as a table`,
  table: (label: string) => `${label}, table`,
  pages: (label: string) => `Pages of ${label}`,
  turns: { before: 'Rows before', after: 'Rows after' },
  rows: (from: number, to: number, of: number) => `Rows ${from} to ${to} of ${of}`,
};
