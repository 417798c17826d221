import { css } from 'lit';

/** Sizes for paper: measured in points, and closer together. */
export const paperStyles = css`
  @media print {
    :host {
      font-size: 11pt;
      --text-body: 11pt;
      --text-small: 10pt;
      --text-lead: 12.5pt;
      --text-title: 15pt;
      --space-1: 2pt;
      --space-2: 4pt;
      --space-3: 6pt;
      --space-4: 8pt;
      --space-5: 10pt;
    }
  }
`;
