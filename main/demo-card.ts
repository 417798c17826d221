import demoCard from '../assets/demo.card.json' with { type: 'json' };

/** The text of the card that comes with the app. */
export const DEMO_CARD_TEXT = `${JSON.stringify(demoCard, undefined, 2)}\n`;
