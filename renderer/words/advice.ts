import type { AdviceTime } from '../../core/game/advice.ts';

/** Words about when advice is shown at the Table. */
export const adviceWords = {
  label: 'Advice at the Table',
  names: {
    'at-once': 'At once',
    'after-choice': 'After I have chosen',
    none: 'Not at the table',
  } satisfies Readonly<Record<AdviceTime, string>>,
  about: {
    'at-once': 'The best choice is shown as soon as it is known.',
    'after-choice': 'Once you have made your choice, you see what it costs, and then the best one.',
    none: 'Nothing is shown. You log the game, and the look-back has everything afterwards.',
  } satisfies Readonly<Record<AdviceTime, string>>,
  caution: 'Many clubs and every tournament forbid aids at the table. Use advice only where everyone agrees.',
  note: 'It also counts for the game on the Table, as long as that goes on. Every game keeps how it was played.',
  played: {
    'at-once': 'With advice at once',
    'after-choice': 'With advice after choosing',
    none: 'Without advice',
    unknown: 'Not noted',
  } satisfies Readonly<Record<AdviceTime | 'unknown', string>>,
  season: 'With advice and without',
  wonOf: (played: string, won: number, of: number) => `${played}: you won ${won} of ${of}.`,
  seasonHead: ['Advice', 'Won', 'Of', 'Rate', 'Likely between'],
  ask: 'When would you like advice?',
  askNote: 'You can change this at any time in the Settings.',
};
