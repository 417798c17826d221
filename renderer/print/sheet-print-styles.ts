import { css } from 'lit';

/**
 * Print: black on white, no letter under 14 pt, fourteen tiles to a line, room to write. Each page is a box as large
 * as the paper, so that it has a head and a foot of its own, whatever the printer adds.
 */
export const sheetPrintStyles = css`
  :host {
    --page-width: 210mm;
    --page-height: 297mm;
    --tile-width: 12mm;
    --enamel: white;
    --enamel-edge: black;
    --stroke: 1.2px;
    color-scheme: light;
    display: block;
    color: black;
    font-size: 14pt;
    line-height: 1.3;
  }

  :host([paper='letter']) {
    --page-width: 215.9mm;
    --page-height: 279.4mm;
    --tile-width: 12.3mm;
  }

  /* A little lower than the paper, lest rounding begins another page; what is longer goes on over the next. */
  .page {
    display: grid;
    grid-template-rows: auto 1fr auto;
    width: var(--page-width);
    min-height: calc(var(--page-height) - 0.5mm);
    padding: 11mm 14mm 9mm;
    overflow-wrap: anywhere;
  }

  .page + .page {
    break-before: page;
  }

  /* One page that holds them all: its room is that of any page. */
  .measuring {
    grid-template-rows: auto minmax(0, 1fr) auto;
    height: calc(var(--page-height) - 0.5mm);
  }

  header,
  footer {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 6mm;
  }

  header {
    padding-bottom: 3mm;
  }

  footer {
    padding-top: 2mm;
    border-top: 1.5px solid black;
  }

  .page-number {
    margin-inline-start: auto;
  }

  h1,
  h2,
  h3,
  p {
    margin: 0;
  }

  h1,
  .title {
    font-size: 18pt;
    font-weight: 700;
    line-height: 1.2;
  }

  h2 {
    font-size: 16pt;
  }

  h3 {
    font-size: 14pt;
  }

  .person {
    flex: 1 0 100%;
    display: flex;
    gap: 3mm;
    padding-top: 3mm;
  }

  .person .line {
    flex: 2;
    height: auto;
  }

  .person .line:last-child {
    flex: 1;
  }

  .lead {
    flex: 1 0 100%;
    padding-top: 2mm;
  }

  .problem,
  .answer {
    break-inside: avoid;
    padding-block: 3mm 5mm;
    border-top: 1.5px solid black;
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 6mm;
  }

  .tiles {
    display: flex;
    gap: 1mm;
    margin-block: 2mm;
    break-inside: avoid;
  }

  .gone,
  .answer {
    --tile-width: 9mm;
  }

  .gone .tiles,
  .choice .tiles {
    display: inline-flex;
    margin-block: 0;
    vertical-align: middle;
  }

  .remark {
    font-style: italic;
  }

  .write {
    display: grid;
    grid-template-columns: auto 1fr;
    grid-auto-rows: 9mm;
    gap: 0 3mm;
  }

  .line {
    height: 9mm;
    border-bottom: 1px solid black;
  }

  .whole {
    grid-column: 1 / -1;
  }

  .label {
    align-self: end;
  }

  /* Two beside each other; no cost is longer than "costs under 1". */
  .choices {
    --tile-width: 7.5mm;
    display: grid;
    grid-template-columns: 1fr 1fr;
    gap: 1.5mm 4mm;
    margin-bottom: 2mm;
  }

  .choice {
    display: grid;
    grid-template-columns: 23mm auto 1fr;
    align-items: center;
    gap: 2mm;
    min-height: 10mm;
    white-space: nowrap;
  }

  .choice.class {
    grid-template-columns: 10mm auto 1fr;
  }

  .wide {
    grid-column: 1 / -1;
  }
`;
