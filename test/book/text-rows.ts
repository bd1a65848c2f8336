import type { Block } from '../../src/paper/blocks.js';

/** Words that stand on one base line, from left to right, page order. */
export function rowsOf(blocks: readonly Block[]): readonly (readonly string[])[] {
  return blocks.flatMap((block) => {
    const words = block
      .marks({ x: 0, y: 0 })
      .flatMap((mark) => (mark.kind === 'words' ? [{ text: mark.text, x: mark.at.x, y: mark.at.y }] : []));
    const lines = new Map<string, { text: string; x: number }[]>();
    for (const { text, x, y } of words) {
      const key = y.toFixed(2);
      lines.set(key, [...(lines.get(key) ?? []), { text, x }]);
    }
    return [...lines.values()].map((line) => line.map(({ text }) => text));
  });
}

export const textOf = (blocks: readonly Block[]): string => rowsOf(blocks).flat().join(' ');
