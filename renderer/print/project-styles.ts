import { css } from 'lit';

/**
 * Letters for the last row. A class sits up to 8 m from a picture 2 m wide, and a capital letter has to be at least
 * 16 minutes of arc high: the least that ISO 9241-303 asks of screens that are read for long. That is 8 m × tan 16′ =
 * 37 mm, or 1.86 % of the picture's width. Capitals take 0.64 of the size of the font or more in the fonts that we
 * name, so the size is 2.9 % of the width. The number on a tile is half as high as the tile is wide, so no tile is
 * narrower than 3.8 %.
 */
export const LEAST_CAPITAL = (8 * Math.tan(((16 / 60) * Math.PI) / 180)) / 2;

export const projectStyles = css`
  dialog {
    --text: max(1.1rem, 2.9vw);
    --gap: max(8px, 1.1vw);
    display: none;
    flex-direction: column;
    width: 100vw;
    max-width: none;
    height: 100dvh;
    max-height: none;
    margin: 0;
    padding: 1.4vw 2.4vw;
    overflow: hidden;
    border: 0;
    background: var(--paper);
    color: var(--ink);
    font-size: var(--text);
    line-height: 1.2;
    overflow-wrap: anywhere;
  }

  dialog[open] {
    display: flex;
    gap: var(--gap);
  }

  header,
  footer {
    flex: none;
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    justify-content: space-between;
    gap: var(--space-2) var(--space-4);
  }

  /* For the teacher, who stands at the computer. */
  wr-button,
  wr-explain {
    font-size: var(--text-body);
  }

  wr-explain[quiet] {
    margin: 0;
  }

  footer {
    justify-content: center;
  }

  .before,
  .counted {
    flex: 1;
  }

  .counted {
    display: flex;
    justify-content: end;
  }

  h1,
  h2,
  p {
    margin: 0;
  }

  h1,
  h2 {
    font-size: 1em;
    line-height: 1.2;
  }

  h1 {
    flex: 1 1 auto;
    width: 0;
  }

  .rack,
  .gone {
    flex: none;
  }

  .gone {
    display: flex;
    flex-wrap: wrap;
    align-items: center;
    gap: var(--gap);
  }

  .tiles {
    --tile-width: max(34px, 4vw);
    display: flex;
    flex-wrap: wrap;
    gap: 0.5vw;
  }

  /* Fourteen to a line. */
  .rack .tiles {
    --tile-width: max(40px, 6.2vw);
  }

  .rack.small .tiles {
    --tile-width: max(40px, 5vw);
  }

  /* Between what keeps its place. */
  .shown {
    flex: 1 1 0;
    display: flex;
    flex-direction: column;
    gap: var(--gap);
    min-height: 0;
    overflow: auto;
  }

  .choices {
    display: grid;
    grid-template-columns: max-content max-content 1fr;
    align-items: center;
    gap: calc(var(--gap) * 0.7) calc(var(--gap) * 2);
  }

  .choice {
    display: contents;
  }

  /* No projector: there all of it moves. */
  @media (max-width: 45rem) {
    dialog {
      overflow: auto;
    }

    .shown {
      flex: none;
      overflow: visible;
    }

    .choice {
      grid-column: 1 / -1;
      display: flex;
      flex-wrap: wrap;
      align-items: center;
      gap: var(--gap);
    }
  }

  wr-hand {
    --tile-width: max(24px, 3.9vw);
  }
`;
