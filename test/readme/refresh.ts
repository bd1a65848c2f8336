/**
 * Writes anew what README.md shows of the program: the plan of Heron, the formats, the keys of the files, and the story,
 * which is played by the compiled program.
 *
 *     npm run compile && npx tsx test/readme/refresh.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withBlocks } from './blocks.js';
import { playStory, withStory } from './story.js';

const page = join(import.meta.dirname, '../../README.md');
const story = await playStory();
writeFileSync(page, withStory(withBlocks(readFileSync(page, 'utf8')), story));
story.clear();
