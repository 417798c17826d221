/** Words that all charts share. */
export const chartWords = {
  asTable: (label: string) => `${label} as a table`,
  table: (label: string) => `${label}, table`,
};
