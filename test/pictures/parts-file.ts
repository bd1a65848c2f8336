import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/** What the pictures need of `parts.json`, taken from its promise and not from the code that writes it. */
export interface PartsFile {
  readonly stations: readonly { readonly name: string; readonly rear: number }[];
  readonly setups: readonly SetUp[];
  readonly parts: readonly FilePart[];
}

export interface SetUp {
  readonly name: string;
  readonly holder: string;
  readonly orientation: 'upright' | 'lengthwise';
  readonly focusing: boolean;
}

export interface FilePart {
  readonly id: string;
  readonly kind: 'flat' | 'printed' | 'bought';
  readonly role?: string | null;
  readonly thickness?: number;
  readonly outline?: readonly Point[];
  readonly holes?: readonly (readonly Point[])[];
  readonly engraving?: readonly (readonly Point[])[];
  readonly mesh?: string;
  readonly cylinder?: { readonly diameter: number; readonly length: number };
  readonly placements: readonly FilePlacement[];
}

export interface FilePlacement {
  readonly group: string;
  readonly matrix: readonly number[];
  readonly when?: string | readonly string[];
}

type Point = readonly [number, number];

export const readParts = (folder: string): PartsFile =>
  JSON.parse(readFileSync(join(folder, 'parts.json'), 'utf8')) as PartsFile;

/** Where no set-up is asked for: the glass in, the camera upright; else whatever comes first. */
export const usualSetUp = ({ setups }: PartsFile): SetUp | undefined =>
  setups.find(({ focusing, orientation }) => focusing && orientation === 'upright') ?? setups[0];

/** Whether a placement stands in a set-up. A holder that says nothing stands in its own set-ups, focusing ones apart. */
export function stands({ group, when }: FilePlacement, setUp: SetUp): boolean {
  if (when !== undefined) return [when].flat().includes(setUp.name);
  if (MOVING.includes(group) || group === 'front') return true;
  return group === setUp.holder && !setUp.focusing;
}

const MOVING = ['rear', 'back', 'loose'];

/** How far a group has slid along z when the rear has. */
export const slid = (group: string, rear: number): number => (group === 'front' ? 0 : rear);

/** `closest`, `farthest` or how far the rear has slid, mm. */
export function rearAt({ stations }: PartsFile, station: string): number {
  const named = stations.find(({ name }) => name === station);
  const rear = named?.rear ?? Number.parseFloat(station);
  if (Number.isFinite(rear)) return rear;
  throw new Error(`no station ${station}; there are ${stations.map(({ name }) => name).join(', ')}, and millimetres`);
}
