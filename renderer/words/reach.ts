/** How reach was checked, as the explanation of a reach says it. */
export const reachWords = {
  ask: 'How well does a reach hold?',
  story:
    'Players at a simulated table each aimed at their best hand and stayed with it. We sorted their racks by reach into ten groups. Each mark is one group.',
  onLine: 'A mark on the dashed line means: as many won as the reach had said.',
  gap: (points: string) => `On average the marks lie ${points} beside the line.`,
  racks: (racks: string) => `There are ${racks} racks from three cards. None of them was used to set the numbers.`,
  rate: 'How often hands win with your card comes from simulated games with it. Until these are played, it is taken from many cards together.',
  caution: 'Real players are not these players. A quick table lowers every reach.',
  label: 'Reach, and how many won',
  said: 'reach said',
  won: 'won',
  group: (title: string, place: number) => `${title}, group ${place}`,
};
