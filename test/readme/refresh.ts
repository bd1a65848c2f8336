/**
 * Writes anew what README.md shows of the program: the plan of Heron, the formats, the keys of the design file.
 *
 *     npx tsx test/readme/refresh.ts
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withBlocks } from './blocks.js';

const page = join(import.meta.dirname, '../../README.md');
writeFileSync(page, withBlocks(readFileSync(page, 'utf8')));
