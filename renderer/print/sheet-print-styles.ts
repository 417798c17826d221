import { css } from 'lit';

/** Print: black on white, no letter under 14 pt, tiles drawn large, room to write. */
export const sheetPrintStyles = css`
  :host {
    --tile-width: 15.5mm;
    --enamel: white;
    --enamel-edge: black;
    --stroke: 1.2px;
    color-scheme: light;
    display: block;
    color: black;
    font-size: 14pt;
    line-height: 1.35;
  }

  h1 {
    margin: 0 0 6mm;
    font-size: 20pt;
    line-height: 1.2;
  }

  h2 {
    margin: 0;
    font-size: 16pt;
  }

  p {
    margin: 0;
  }

  .problem,
  .answer {
    break-inside: avoid;
    padding-block: 4mm 5mm;
    border-top: 1.5px solid black;
  }

  .head {
    display: flex;
    flex-wrap: wrap;
    align-items: baseline;
    justify-content: space-between;
    gap: 0 6mm;
    break-after: avoid;
  }

  .tiles {
    display: flex;
    flex-wrap: wrap;
    gap: 1.6mm;
    margin-block: 3mm;
    /* A long remark may go over to the next page, a rack never. */
    break-inside: avoid;
    break-after: avoid;
    /* Seven in a row. */
    width: calc(7 * (var(--tile-width) + 1.6mm));
  }

  .gone,
  .answer {
    --tile-width: 11mm;
  }

  .gone .tiles,
  .answer .tiles {
    display: inline-flex;
    flex-wrap: nowrap;
    width: auto;
    margin-block: 1mm;
    vertical-align: middle;
    break-after: auto;
  }

  .remark {
    font-style: italic;
  }

  .write {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 0 3mm;
    margin-top: 2mm;
    break-inside: avoid;
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

  .answers {
    break-before: page;
  }

  .answers > p {
    margin-bottom: 4mm;
  }

  dl {
    display: grid;
    grid-template-columns: auto 1fr;
    gap: 1mm 4mm;
    margin: 2mm 0 0;
  }

  dt {
    font-weight: 700;
  }

  dd {
    margin: 0;
  }

  .chose,
  .costed {
    display: grid;
    grid-template-columns: auto 1fr;
    align-items: center;
    gap: 3mm;
  }

  .chose {
    grid-template-columns: 2ch auto 1fr;
  }

  .group {
    display: inline-block;
    margin-inline-end: 5mm;
    white-space: nowrap;
  }
`;
