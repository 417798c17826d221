import { expect, test } from 'vitest';
import { KEYS, keyList } from '../../renderer/help/keys.ts';
import { RACK_SHORTCUTS, rackKey, type RackKey } from '../../renderer/parts/rack/rack-keys.ts';
import { cardWords } from '../../renderer/words/card.ts';
import { keyNames } from '../../renderer/words/help.ts';

/** What the rack makes of a phrase of the table; letters and digits stand for one of them. */
function meaningOf(phrase: string): RackKey | null {
  const parts = phrase.split('+');
  const key = { 'a-z': 'n', '1-9': '7' }[parts.at(-1) ?? ''] ?? parts.at(-1) ?? '';
  return rackKey({ key, altKey: parts.includes('Alt'), ctrlKey: parts.includes('Control'), metaKey: false });
}

test('CR-K1, CR-K2: every key that the help names for the rack does there what its line says', () => {
  const means = Object.entries(KEYS.rack).map(([name, keys]) => [name, keys.map((key) => meaningOf(key)?.means)]);
  expect(Object.fromEntries(means)).toEqual({
    walk: ['walk', 'walk'],
    climb: ['climb', 'climb'],
    ends: ['end', 'end'],
    jump: ['jump', 'jump'],
    select: ['select'],
    step: ['step', 'step'],
    tier: ['tier', 'tier'],
    gap: ['gap'],
    send: ['send'],
    recall: ['recall'],
    cancel: ['cancel'],
  });
});

test('CR-K1: every shortcut that the rack announces is named in the help', () => {
  const named = Object.values(KEYS.rack).flat();
  expect(RACK_SHORTCUTS.split(' ').filter((key) => !named.includes(key))).toEqual([]);
});

test('every command has its words, and every key a name that people know', () => {
  for (const { title, lines } of keyList()) {
    expect(title).not.toBe('');
    for (const { does, keys } of lines) {
      expect(does, title).not.toBe('');
      for (const key of keys.flatMap((phrase) => phrase.split('+'))) {
        expect(Object.hasOwn(keyNames, key) || /^(?:[a-z0-9]|F\d+)$/.test(key), key).toBe(true);
      }
    }
  }
});

test('CR-K6: the sentence where a line is typed and the list of keys in the help say the same', () => {
  const does = keyList().find(({ title }) => title === 'In the table of your card')?.lines ?? [];
  const said = cardWords.line.keys.split('. ').map((part) => part.replace('.', '').split(': '));
  expect(said.map(([key]) => key)).toEqual(['Enter', 'Tab', keyNames['Escape']]);
  for (const [key = '', what = ''] of said) {
    const line = does.find(({ keys }) => keys.length === 1 && (keyNames[keys[0] ?? ''] ?? keys[0]) === key);
    expect(line?.does, key).toContain(what.replace(/^to /, ''));
  }
});
