import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const FOLDER = join(import.meta.dirname, '../../../assets/tiles');
const FILES = readdirSync(FOLDER);
const read = (file: string): string => readFileSync(join(FOLDER, file), 'utf8');

const EXPECTED = [
  ...['bam', 'crak', 'dot'].flatMap((suit) => Array.from({ length: 9 }, (_, at) => `${suit}-${at + 1}.svg`)),
  ...['north', 'east', 'west', 'south'].map((wind) => `wind-${wind}.svg`),
  ...['green', 'red', 'white'].map((dragon) => `dragon-${dragon}.svg`),
  'flower.svg',
  'joker.svg',
  'back.svg',
];

it('there is a drawing for each of the 36 kinds and for the back, and nothing else', () => {
  expect(FILES.toSorted()).toEqual(EXPECTED.toSorted());
});

it('no two drawings are the same', () => {
  expect(new Set(FILES.map(read)).size).toBe(37);
});

it('a drawing is shapes only: no fonts, no styles that the content policy blocks, nothing from elsewhere', () => {
  for (const file of FILES) {
    expect(read(file), file).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" viewBox="0 0 60 80">/);
    expect(read(file).replace('http://www.w3.org/2000/svg', ''), file).not.toMatch(
      /<text|<style|style=|class=|href|url\(|id=|<script|<image|http/,
    );
  }
});

it('every drawing together is small enough to come with the window: under 40 kB', () => {
  expect(FILES.reduce((sum, file) => sum + read(file).length, 0)).toBeLessThan(40_000);
});

it('CR-W3: the number of a suit tile is also the number of its stalks, shards or rings', () => {
  for (let number = 1; number <= 9; number += 1) {
    // A stalk is two strokes from end to end, a shard and a ring are one closed line each.
    const stalks = /<path d="([^"]+)" fill="none" stroke="#27673c"/.exec(read(`bam-${number}.svg`))?.[1]?.split('M');
    const shards = /<path d="([^"]+)" fill="#ab3b25"/.exec(read(`crak-${number}.svg`))?.[1]?.split('z');
    const rings = /<path d="([^"]+)" fill="none" stroke="#1c5a91"/.exec(read(`dot-${number}.svg`))?.[1]?.split('z');
    const counted = [((stalks?.length ?? 0) - 1) / 2, (shards?.length ?? 0) - 1, (rings?.length ?? 0) - 1];
    expect(counted, `number ${number}`).toEqual([number, number, number]);
  }
});

it('a drawing is few shapes, since a hundred tiles are on screen: under four on average, and no groups', () => {
  const shapes = FILES.map((file) => read(file).split('<').length - 3);
  expect(shapes.reduce((sum, each) => sum + each, 0) / FILES.length).toBeLessThan(4);
  expect(Math.max(...shapes)).toBeLessThanOrEqual(7);
  expect(FILES.filter((file) => read(file).includes('<g'))).toEqual([]);
});
