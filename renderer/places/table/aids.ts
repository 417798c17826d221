import type { AppContext } from '../../shell/app-context.ts';

type App = Pick<AppContext, 'session'>;

/** Whether anything is said of the rack while it is played: its hands, the chance, and what a choice of one's own costs. */
export function isReadingWelcome({ session }: App): boolean {
  return session.advice !== 'none';
}

/** Whether the best choice, the list of all and the marks of the rack are shown before the player has made hers. */
export function isAdviceWelcome({ session }: App): boolean {
  return session.advice === 'at-once';
}

/** Whether the best choice is said once hers is made. */
export function isAdviceAfterwards({ session }: App): boolean {
  return session.advice === 'after-choice';
}

/** Whether the player's own groups fit no line of her card. */
export function isOwnDead({ session, analysis }: Pick<AppContext, 'session' | 'analysis'>): boolean {
  const { seat } = session.state;
  return seat !== null && analysis.dead.seats.includes(seat);
}
